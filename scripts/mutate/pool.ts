/** Warm processes that try mutants; one that hangs is ended and replaced. */
import { type ChildProcess, fork } from 'node:child_process';
import { join } from 'node:path';
import { folder } from './bundle.ts';
import type { Report, Task } from './worker.ts';

export const HUNG = 'hung';

/** Each load of a bundle stays in memory: after so many a process is started anew. */
const LOADS = 120;

export class Hand {
  #child: ChildProcess | undefined;
  #loads = 0;

  /** What the task reports; `hung` where it takes longer than `most` ms. */
  ask(task: Task, most: number): Promise<Report | typeof HUNG> {
    const child = this.#ready();
    return new Promise((done) => {
      const end = (report: Report | typeof HUNG): void => {
        clearTimeout(clock);
        child.removeAllListeners();
        done(report);
      };
      const clock = setTimeout(() => {
        this.end();
        end(HUNG);
      }, most);
      child.once('message', (report) => end(report as Report));
      child.once('exit', () => {
        this.#child = undefined;
        end({ failed: { test: 'the process', message: 'ended' } });
      });
      child.send(task);
    });
  }

  #ready(): ChildProcess {
    if (this.#loads >= LOADS) this.end();
    this.#loads++;
    this.#child ??= fork(join(folder, 'worker.mjs'), { stdio: 'ignore' });
    return this.#child;
  }

  end(): void {
    this.#child?.kill('SIGKILL');
    this.#child = undefined;
    this.#loads = 0;
  }
}
