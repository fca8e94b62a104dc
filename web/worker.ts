/** The check off the page's thread. */
import { type Ask, reckoner } from './reckoning.ts';

const work = reckoner((message) => postMessage(message));

addEventListener('message', ({ data }: MessageEvent<Ask>) => void work(data));
