/** The check off the page's thread; in a second copy of the same worker the ladder, measured tests and the builder's questions. */
import type { BuildAsk } from './building.ts';
import type { LadderAsk } from './laddering.ts';
import type { MeasureAsk } from './measuring.ts';
import { type Ask, reckoner } from './reckoning.ts';

const work = reckoner((message) => postMessage(message));

addEventListener('message', ({ data }: MessageEvent<Ask | LadderAsk | BuildAsk | MeasureAsk>) => {
  if ('ladder' in data)
    void import('./laddering.ts').then(({ look }) => look(data, (message) => postMessage(message)));
  else if ('build' in data) void import('./building.ts').then(({ build }) => postMessage(build(data)));
  else if ('measure' in data)
    void import('./measuring.ts').then(({ measure }) => measure(data, (message) => postMessage(message)));
  else void work(data);
});
