/** Words for single failures: one thing fails, the crew do all they can with the rest. */
import type { Failure } from '../../engine/questions/failures/left.ts';
import { brakeKindWords } from './brakes.ts';
import { high, inItsWay, meets, wanders } from './part.ts';
import type { Tellers, Tools } from './teller.ts';

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
const starts: Readonly<Record<Failure, (t: Tools) => string>> = {
  nothing: () => 'If nothing fails',
  hose: (t) => `If the hose or cable comes off behind ${t.vehicle}`,
  supply: () => 'If the supply of the train brake fails',
  driver: () => 'If nobody is at the handle',
  cock: (t) => `If the brake of ${t.vehicle} is cut out by its cock`,
  pipe: (t) => `If a cock in the pipe is left shut behind ${t.vehicle}`,
};

/** What a safety officer would answer. */
const answers: Readonly<Record<Failure, (lost: string) => string>> = {
  nothing: () => '',
  hose: (lost) =>
    `Lost with it: ${lost}. A brake that comes on by itself when the hose comes off would stop it.`,
  supply: (lost) =>
    `Lost with it: ${lost}. A brake that comes on by itself, or a stronger one on the engine, would stop it.`,
  driver: () =>
    "Nothing comes on by itself, power taken as shut off; so it is on most railways of this kind. A guard with a brake, or a dead man's handle, stops it.",
  cock: () => 'A running brake test before the fall finds it, every time the train is made up.',
  pipe: () => 'A running brake test before the fall finds it, every time the train is made up.',
};

/** @param kinds of brakes, by comma */
const lostWords = (kinds: string): string =>
  kinds === '' ? 'nothing' : kinds.split(', ').map(brakeKindWords).join(', ');

export const failureWords = {
  'failure-runs-away': ({ facts, where }, t) => ({
    what: `${starts[facts.failure](t)} at ${t.at(where.from ?? 0)}, the train ${meets(facts, t)}.`,
    why: `${answers[facts.failure](lostWords(facts.lost))}${high(facts)}`,
  }),
  'failure-rolls-back': ({ facts, where }, t) => ({
    what: `${starts[facts.failure](t)} at ${t.at(where.from ?? 0)}, the train ${wanders(facts, t, 'there')}.`,
    why: `${answers[facts.failure](lostWords(facts.lost))}${inItsWay(facts)}`,
  }),
  'failure-stops-late': ({ facts, where }, t) => ({
    what: `${starts[facts.failure](t)}, the train stops in ${t.found('up')} from ${t.fact('speed')} at ${t.at(where.from ?? 0)}; in order, in ${t.required('up')}.`,
    why: answers[facts.failure](''),
  }),
} satisfies Partial<Tellers>;
