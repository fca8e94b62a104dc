/** Warm processes that try mutants; one that hangs is ended and replaced. */
import { type ChildProcess, fork } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { folder } from './bundle.ts';
import type { Report, Task } from './task.ts';

export const HUNG = 'hung';

/** Each load of the bundle stays in memory: after so many a process is started anew. */
const LOADS = 30;

export class Hand {
  #child: ChildProcess | undefined;
  #loads = 0;

  /** What the task reports; `hung` where it takes more than `most` ms of the processor: on a busy machine all is slow. */
  ask(task: Task, most: number): Promise<Report | typeof HUNG> {
    const child = this.#ready();
    if ('anew' in task && task.anew) this.#loads++;
    return new Promise((done) => {
      const before = spent(child);
      const end = (report: Report | typeof HUNG): void => {
        clearInterval(clock);
        child.removeAllListeners();
        done(report);
      };
      const clock = setInterval(
        () => {
          if (spent(child) - before < most) return;
          this.end();
          end(HUNG);
        },
        Math.min(most, 2000),
      );
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
    this.#child ??= fork(join(folder, 'worker.mjs'), { stdio: 'ignore' });
    return this.#child;
  }

  end(): void {
    this.#child?.kill('SIGKILL');
    this.#child = undefined;
    this.#loads = 0;
  }
}

/** Time of the processor that a process has had, ms; where the system does not tell it so, that of the clock. */
function spent({ pid }: ChildProcess): number {
  try {
    const [, fields] = readFileSync(`/proc/${pid}/stat`, 'utf8').split(') ');
    const [user, system] = fields.split(' ').slice(11, 13).map(Number);
    return 10 * (user + system);
  } catch {
    return performance.now();
  }
}
