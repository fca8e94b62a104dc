/**
 * Whoever reckons: a worker that is watched, or, in a browser without workers, the page itself. A worker that is
 * silent or dead is let go, and the next question starts another.
 */
import type { Outing } from '../../engine/outing/types.ts';
import type { Ask, Reply } from '../reckoning.ts';

/** Silent for as long, ms, it is said to be silent. */
export const PATIENCE = 5000;

interface Hears {
  /** @param id identity of the outing that was asked about */
  readonly reply: (id: string, reply: Reply) => void;
  /** Silent for a while, or heard of again. */
  readonly silent: (silent: boolean) => void;
  /** The worker has died over its question. */
  readonly died: (id: string) => void;
}

export interface Hand {
  readonly ask: (id: string, outing: Outing) => void;
  /** Leave the question unanswered. */
  readonly stop: () => void;
}

export function handWith(hears: Hears): Hand {
  let worker: Worker | undefined;
  let page: ((ask: Ask) => Promise<void>) | undefined;
  let asked: { readonly id: string; readonly ask: Ask } | undefined;
  let count = 0;
  let isSilent = false;
  let watch: ReturnType<typeof setTimeout> | undefined;

  const listen = (working: boolean): void => {
    clearTimeout(watch);
    if (isSilent) hears.silent(false);
    isSilent = false;
    if (working)
      watch = setTimeout(() => {
        isSilent = true;
        hears.silent(true);
      }, PATIENCE);
  };
  const letGo = (): void => {
    worker?.terminate();
    worker = undefined;
    listen(false);
  };
  const heard = (reply: Reply): void => {
    const over = asked;
    if (reply.id !== over?.ask.id) return;
    listen(!reply.last);
    if (reply.last) asked = undefined;
    hears.reply(over.id, reply);
  };
  const died = (): void => {
    const over = asked;
    letGo();
    asked = undefined;
    if (over) hears.died(over.id);
  };
  const start = (): Worker => {
    const one = new Worker(new URL('../worker.ts', import.meta.url), { type: 'module' });
    // What one that was let go has still sent is nobody's any more.
    const mine = (hear: () => void) => () => {
      if (one === worker) hear();
    };
    one.addEventListener('message', ({ data }: MessageEvent<Reply>) => mine(() => heard(data))());
    one.addEventListener('error', mine(died));
    one.addEventListener('messageerror', mine(died));
    return one;
  };
  const onThePage = async (ask: Ask): Promise<void> => {
    if (!page) {
      const { reckoner } = await import('../reckoning.ts');
      page ??= reckoner(heard);
    }
    if (ask === asked?.ask) await page(ask);
  };
  return {
    ask: (id, outing) => {
      const ask = { id: ++count, outing };
      // One that is silent over an old question would not hear the new one.
      if (isSilent) letGo();
      asked = { id, ask };
      try {
        worker ??= start();
      } catch {
        void onThePage(ask).catch(died);
        return;
      }
      listen(true);
      worker.postMessage(ask);
    },
    stop: () => {
      letGo();
      asked = undefined;
    },
  };
}
