/** The sum behind a finding in words: what it asks, its equation, the numbers put in, what comes out, its source. */
import type { SumDiffers, SumRef } from '../engine/base/sum.ts';
import { letterOf } from '../engine/sums/letters.ts';
import { evaluateSum, findSum } from '../engine/sums/register.ts';
import type { Toward } from '../units/index.ts';
import { equationText, symbolWords } from '../words/sum-letters.ts';
import { sumWords } from '../words/sums.ts';
import type { Voice } from '../words/voice.ts';
import { inUnits } from './sums.ts';
import { said, sayFully } from './understood.ts';

export interface ToldSum {
  readonly id: string;
  readonly title: string;
  readonly asks: string;
  readonly equation: string;
  /** How the finding's own figure differs from the sum's; empty where it is the same. */
  readonly note: string;
  /** "grade i = -2.6 %" */
  readonly inputs: readonly string[];
  /** "distance s = 77.1 ft", rounded toward safety; or why there is none. */
  readonly results: readonly string[];
  readonly source: string;
}

const notes: Readonly<Record<SumDiffers, string>> = {
  even: 'Reckoned along the line; on an even grade like the one there:',
  margin:
    'Reckoned along the line, with a margin ahead added; without it, on an even grade like the one there:',
  rolling: 'Rolling resistance, which helps to hold, is taken off the pull of the grade:',
  metres: 'At the least; the place is sought back along the line, in whole metres:',
  edge: 'Short of this edge, so that every wheel keeps its share of load:',
  throughout:
    'So much in one such curve throughout; where it begins or ends, or another hand follows, it is more:',
  play: 'Without the play of the flanges, which adds to it:',
  part: 'It rests on this part of the reckoning:',
};

/** Which side is safe, by result, where the figure always says the same: up what is needed, down what is borne. */
const safe: Readonly<Record<string, Readonly<Record<string, Toward>>>> = {
  'stopping-distance': { distance: 'up', time: 'up', 'before-brake': 'up' },
  'brake-ratio': { ratio: 'up' },
  'runaway-speed': { speed: 'up', time: 'down' },
  'flag-distance': { distance: 'up', walk: 'up' },
  'grade-force': { force: 'up', 'per-weight': 'up' },
  'small-gauge-resistance': { force: 'up' },
  'adhesion-limit': { force: 'down' },
  'standard-atmosphere': { pressure: 'down' },
  'cylinder-from-reduction': { cylinder: 'down', equalised: 'down', 'full-reduction': 'up' },
  'vacuum-chamber': { left: 'down' },
  'overturning-speed': { speed: 'down' },
  'lean-to-lift': { lean: 'down' },
  'nadal-limit': { limit: 'down' },
  'coupler-angle': { angle: 'up', 'other-angle': 'up' },
  'track-warp': { warp: 'up', 'wheel-off': 'up' },
  'chain-working-load': { 'working-load': 'down', 'breaking-load': 'down' },
  'chain-snatch': { force: 'up', 'speed-at-end': 'up' },
  'chain-energy': { 'must-break-at': 'up', work: 'up', 'work-to-break': 'down' },
};

export function tellSum({ id, inputs, differs }: SumRef, voice: Voice): ToldSum | undefined {
  const sum = findSum(id);
  if (!sum) return undefined;
  const named = (symbol: string, text: string): string =>
    `${symbolWords(symbol, voice.wording)} ${letterOf(sum, symbol)} = ${text}`;
  const outcome = evaluateSum(sum, inputs);
  const { title, asks } = sumWords[id];
  return {
    id,
    title,
    asks,
    equation: equationText(sum),
    note: differs === undefined ? '' : notes[differs],
    inputs: sum.inputs.flatMap(({ symbol, kind }) =>
      inputs[symbol] === undefined ? [] : [named(symbol, sayFully(inputs[symbol], kind, voice.system))],
    ),
    results: outcome.ok
      ? sum.results.map(({ symbol, kind }) =>
          named(symbol, said(outcome.values[symbol], kind, voice.system, safe[id]?.[symbol])),
        )
      : outcome.problems
          .map((p) => inUnits(sum, p, voice.system))
          .map((p) => `no result: ${named(p.symbol, p.found)}, expected ${p.expected}`),
    source: sum.source,
  };
}
