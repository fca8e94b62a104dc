/** Counts how often each piece of code is run while a large input is read: the same on every machine, however busy. */
import { Session } from 'node:inspector/promises';
import { parentPort, workerData } from 'node:worker_threads';

const session = new Session();
session.connect();
// Before anything is loaded: what was compiled before it is not counted piece by piece.
await session.post('Profiler.enable');
await session.post('Profiler.startPreciseCoverage', { callCount: true, detailed: true });
const { large } = await import(workerData.module);

/** Since it was last asked. */
async function steps() {
  const { result } = await session.post('Profiler.takePreciseCoverage');
  return result
    .filter(({ url }) => url === workerData.module)
    .flatMap(({ functions }) => functions)
    .reduce((sum, { ranges }) => ranges.reduce((s, { count }) => s + count, sum), 0);
}

parentPort.on('message', async ({ index, share }) => {
  const content = large[index].make(share);
  await steps();
  const told = await large[index].read(content);
  parentPort.postMessage({ steps: await steps(), told, letters: content.length });
});
