/** The check off the page's thread, and in a worker of its own the ladder. */
import type { LadderAsk } from './laddering.ts';
import { type Ask, reckoner } from './reckoning.ts';

const work = reckoner((message) => postMessage(message));

addEventListener('message', ({ data }: MessageEvent<Ask | LadderAsk>) => {
  if ('ladder' in data)
    void import('./laddering.ts').then(({ look }) => look(data, (message) => postMessage(message)));
  else void work(data);
});
