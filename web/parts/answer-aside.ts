/** The answer to another outing than the one on the screen, counts and all; nothing is looked for that would clear it. */
import type { Answer } from '../../engine/answer/types.ts';
import type { Outing } from '../../engine/outing/types.ts';
import type { Ask, Reply } from '../reckoning.ts';
import { aside } from './aside.ts';

export function answerAside(outing: Outing): Promise<Answer> {
  return new Promise((done, fail) => {
    let best: Answer | undefined;
    let stop = (): void => {};
    const over = (): void => {
      stop();
      if (best) done(best);
      else fail(new Error('the check of it has stopped'));
    };
    const hear = ({ answer, fault, last }: Reply): void => {
      if (fault !== undefined) {
        stop();
        fail(new Error(fault));
        return;
      }
      best = answer ?? best;
      if (last || (answer && answer.cars.length > 0)) over();
    };
    stop = aside<Reply>({ id: 1, outing } satisfies Ask, hear, () => {
      best = undefined;
      over();
    });
  });
}
