/** Words for single failures: one thing fails, the crew do all they can with the rest. */
import type { Failure } from '../../engine/questions/failures/left.ts';
import { brakeKindWords } from './brakes.ts';
import { high, meeting } from './parting.ts';
import type { Teller, Tools } from './teller.ts';

const names: Readonly<Record<Failure, string>> = {
  nothing: 'nothing',
  hose: 'hose or cable off',
  supply: 'supply of the train brake',
  driver: 'nobody at the handle',
  cock: "one vehicle's brake cut out",
  pipe: 'a cock in the pipe left shut',
};

/** As it stands in a table. */
export const failureName = (failure: Failure): string => names[failure];

/** What fails, as the beginning of a sentence. */
const starts: Readonly<Record<string, (t: Tools) => string>> = {
  hose: (t) => `If the hose or cable comes off behind ${t.vehicle}`,
  supply: () => 'If the supply of the train brake fails',
  driver: () => 'If nobody is at the handle',
  cock: (t) => `If the brake of ${t.vehicle} is cut out by its cock`,
  pipe: (t) => `If a cock in the pipe is left shut behind ${t.vehicle}`,
};

/** What a safety officer would answer. */
const answers: Readonly<Record<string, (t: Tools) => string>> = {
  hose: (t) =>
    `Lost with it: ${lost(t)}. A brake that comes on by itself when the hose comes off would stop it.`,
  supply: (t) =>
    `Lost with it: ${lost(t)}. A brake that comes on by itself, or a stronger one on the engine, would stop it.`,
  driver: () =>
    "Nothing comes on by itself, power taken as shut off; so it is on most railways of this kind. A guard with a brake, or a dead man's handle, stops it.",
  cock: () => 'A running brake test before the fall finds it, every time the train is made up.',
  pipe: () => 'A running brake test before the fall finds it, every time the train is made up.',
};

const lost = (t: Tools): string =>
  t.fact('lost') === '' ? 'nothing' : t.fact('lost').split(', ').map(brakeKindWords).join(', ');

const begin = (t: Tools): string => starts[t.fact('failure')]?.(t) ?? t.fact('failure');
const why = (t: Tools): string => answers[t.fact('failure')]?.(t) ?? '';

export const failureWords = {
  'failure-runs-away': (f, t) => ({
    what: `${begin(t)} at ${t.at(f.where.from ?? 0)}, the train ${meeting[t.fact('outcome')]?.(t) ?? 'runs away'}.`,
    why: `${why(t)}${high(t, f)}`,
  }),
  'failure-rolls-back': (f, t) => ({
    what: `${begin(t)} at ${t.at(f.where.from ?? 0)}, the train comes to rest, rolls off again and ends ${t.fact('way', 'up')} ${t.fact('side') === 'back' ? 'behind' : 'ahead of'} there, at up to ${t.found('up')}.`,
    why: why(t),
  }),
  'failure-stops-late': (f, t) => ({
    what: `${begin(t)}, the train stops in ${t.found('up')} from ${t.fact('speed')} at ${t.at(f.where.from ?? 0)}; in order, in ${t.required('up')}.`,
    why: why(t),
  }),
} satisfies Record<string, Teller>;
