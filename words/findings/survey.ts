/** Words for how good the survey of the line is. */
import type { Tellers } from './teller.ts';

export const surveyWords = {
  'heights-poor': (_f, t) => ({
    what: `The heights of the line are poor (${t.fact('quality')}).`,
    why: 'A satellite height is off by metres, a guessed one by more: the steepest place may be twice as steep. Level the line there at least; until then stops are reckoned as if its grades had been taped.',
  }),
} satisfies Partial<Tellers>;
