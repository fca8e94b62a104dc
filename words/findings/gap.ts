/** Words for the gap to the train ahead. */
import type { Tellers } from './teller.ts';

export const gapWords = {
  'gap-needed': (f, t) => ({
    what:
      f.severity === 'limits'
        ? `Keep ${t.found('up')} behind the train ahead, more than the host's ${t.required()}, ${t.where}.`
        : `Keep ${t.found('up')} behind the train ahead.`,
    why: `The longest cautious stop with its margin, at ${t.at(f.facts.at.si)} and ${t.fact('speed')}; never less than the host's own rule.`,
  }),
} satisfies Partial<Tellers>;
