/** Words for what was assumed. */
import type { Tellers } from './teller.ts';

export const assumptionWords = {
  assumed: (_f, t) => ({
    what: `Taken for ${t.fact('where')}: ${t.fact('of')}.`,
    why: 'Nothing was given; a measurement replaces it.',
  }),
} satisfies Partial<Tellers>;
