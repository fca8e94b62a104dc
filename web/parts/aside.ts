/** A second copy of the worker that reckons, for what is asked beside the answer. */

/** Kept for the next question so long, ms: to start one takes a phone a moment. */
const KEPT = 20_000;
let idle: Worker | undefined;
let tired: ReturnType<typeof setTimeout> | undefined;

function rest(worker: Worker): void {
  idle?.terminate();
  idle = worker;
  clearTimeout(tired);
  tired = setTimeout(() => {
    idle?.terminate();
    idle = undefined;
  }, KEPT);
}

function start(): Worker {
  const one = idle ?? new Worker(new URL('../worker.ts', import.meta.url), { type: 'module' });
  idle = undefined;
  return one;
}

/**
 * @param failed there is no worker here, or it has died
 * @returns what stops it, whether or not it has answered
 */
export function aside<Reply extends { readonly last: boolean }>(
  ask: object,
  hear: (reply: Reply) => void,
  failed: () => void,
): () => void {
  let worker: Worker;
  const listening = new AbortController();
  const { signal } = listening;
  try {
    worker = start();
  } catch {
    failed();
    return () => {};
  }
  const died = (): void => {
    listening.abort();
    worker.terminate();
    failed();
  };
  const told = ({ data }: MessageEvent<Reply>): void => {
    if (data.last) {
      listening.abort();
      rest(worker);
    }
    hear(data);
  };
  worker.addEventListener('message', told, { signal });
  worker.addEventListener('error', died, { signal });
  worker.addEventListener('messageerror', died, { signal });
  worker.postMessage(ask);
  return () => {
    if (signal.aborted) return;
    listening.abort();
    worker.terminate();
  };
}
