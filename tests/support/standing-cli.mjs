/** The command line kept standing in a thread of its own: runs one command after the other, and says what each said. */
import { rmSync } from 'node:fs';
import { workerData } from 'node:worker_threads';

const { port, answered, module } = workerData;
const { main } = await import(module);
// It is loaded, and a run of tests that is broken off leaves nothing behind.
rmSync(new URL('.', module), { recursive: true, force: true });

port.on('message', async (argv) => {
  const said = { stdout: '', stderr: '' };
  for (const stream of ['stdout', 'stderr'])
    process[stream].write = (text) => {
      said[stream] += text;
      return true;
    };
  process.exitCode = 0;
  try {
    await main(argv);
  } catch (error) {
    said.stderr += error.stack;
    process.exitCode = 1;
  }
  port.postMessage({ status: process.exitCode, ...said });
  Atomics.store(answered, 0, 1);
  Atomics.notify(answered, 0);
});
