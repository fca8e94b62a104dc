/** Words for the flag behind a stopped train. */
import type { Tellers } from './teller.ts';

export const flagWords = {
  'flag-farther-than-rule': (f, t) => ({
    what: f.facts.enough
      ? `With its rear at ${t.at(f.where.from ?? 0)} a stopped train needs its flag ${t.required('up')} behind it; the rule has ${t.found('down')}.`
      : `With its rear at ${t.at(f.where.from ?? 0)} no place on the line is far enough behind a stopped train for its flag; the rule has ${t.found('down')}.`,
    why: `A train like this one follows at ${t.fact('speed', 'up')} and needs ${t.fact('stop', 'up')} to stop from where its driver first sees the flag. So it is on ${t.fact('share', 'up')} of the line.`,
  }),
  'flag-too-late': (f, t) => ({
    what: f.facts.enough
      ? `With its rear at ${t.at(f.where.from ?? 0)} the following train is there in ${t.found('down')}; walking the flag back ${t.fact('way', 'up')} takes ${t.required('up')}.`
      : `With its rear at ${t.at(f.where.from ?? 0)} the following train is there in ${t.found('down')}, and nowhere is far enough back for a flag.`,
    why: 'Whoever carries the flag walks at 3 mph. Keep trains further apart in time, or do not let the second one leave before the first is seen clear.',
  }),
} satisfies Partial<Tellers>;
