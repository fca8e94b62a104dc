/**
 * Random outings made worse in one way, and what then is better than before: nothing may be. Runs by itself in a
 * bundle too (tests/support/bundled.ts).
 */

import { firstAnswer } from '../../engine/answer/answer.ts';
import { inquire, type OpenInquiry } from '../../engine/answer/inquiry.ts';
import type { Answer } from '../../engine/answer/types.ts';
import type { Quantity } from '../../engine/base/quantity.ts';
import { percentile } from '../../engine/base/spread.ts';
import { ODDS, sampleStops } from '../../engine/motion/sample.ts';
import { stopDistance } from '../../engine/motion/stop.ts';
import type { Outing } from '../../engine/outing/types.ts';
import { speed } from '../../engine/questions/speed/question.ts';
import type { HeightKnot } from '../../engine/things/line/types.ts';
import { dressed } from './dressed-outings.ts';

const scaled = (q: Quantity, by: number): Quantity => ({
  ...q,
  low: q.low * by,
  value: q.value * by,
  high: q.high * by,
});
const later = (q: Quantity, by: number): Quantity => ({
  ...q,
  low: q.low + by,
  value: q.value + by,
  high: q.high + by,
});

/** Riders of cars that have no brake a quarter heavier: what is braked gains no adhesion from them. */
function loaded(outing: Outing): Outing {
  const unbraked = new Set(outing.train.vehicles.filter((v) => v.brakes.length === 0).map((v) => v.id));
  const riders = outing.riders.map((r) =>
    r.vehicle && unbraked.has(r.vehicle) && r.mass ? { ...r, mass: scaled(r.mass, 1.25) } : r,
  );
  return { ...outing, riders };
}

function slippery(outing: Outing): Outing {
  const { adhesion } = outing.assumed;
  const less = Object.fromEntries(Object.entries(adhesion).map(([state, q]) => [state, scaled(q, 0.7)]));
  return { ...outing, assumed: { ...outing.assumed, adhesion: less as typeof adhesion } };
}

const slowWitted = (outing: Outing): Outing => ({
  ...outing,
  conditions: { ...outing.conditions, reaction: later(outing.conditions.reaction, 2) },
});

/** Every fall half as steep again, every rise as it was; a loop would not close any more. */
function steeper(outing: Outing): Outing {
  const { line, direction } = outing;
  if (line.loop) return outing;
  const falls = direction === 'forward' ? -1 : 1;
  const heights: HeightKnot[] = [];
  for (const [i, { at, height }] of line.heights.entries()) {
    const before = line.heights[i - 1];
    const rise = before ? height - before.height : 0;
    const made = rise * falls > 0 ? rise * 1.5 : rise;
    heights.push({ at, height: before ? heights[i - 1].height + made : height });
  }
  return { ...outing, line: { ...line, heights } };
}

const ways = { load: loaded, rail: slippery, reaction: slowWitted, fall: steeper };
export type Way = keyof typeof ways;

interface Better {
  readonly seed: number;
  readonly way: Way;
  readonly what: string;
}

/** Draws that set the caution, as in every answer. */
const SAMPLES = 1000;
const care = { step: 1, samples: SAMPLES, couplerRuns: 2 };
const ranks: Readonly<Record<Answer['verdict'], number>> = { go: 0, limits: 1, unknown: 2, hold: 3 };

const asked = (outing: Outing): { readonly inquiry: OpenInquiry; readonly answer: Answer } => {
  const inquiry = inquire(outing, care);
  return { inquiry, answer: firstAnswer(inquiry) };
};

/** The same outing at no more than the speeds that are left to another. */
function heldTo(outing: Outing, other: OpenInquiry): Outing {
  const { running } = other.of(speed).data;
  const step = outing.line.length / (running.length - 1);
  const forward = outing.direction === 'forward';
  const extraLimits = Array.from({ length: running.length - 1 }, (_, j) => {
    const [a, b] = [j * step, (j + 1) * step];
    return {
      from: forward ? a : outing.line.length - b,
      to: forward ? b : outing.line.length - a,
      speed: Math.min(running[j], running[j + 1]),
    };
  });
  // Where the line ends it stands still of itself.
  return { ...outing, extraLimits: extraLimits.filter((limit) => limit.speed > 0) };
}

const worst = ({ findings }: Answer): string =>
  findings
    .filter((f) => f.severity === 'forbids' || f.severity === 'unknown')
    .map((f) => f.code)
    .join(' ');

/** Places at which a stop is looked at, and stops drawn there. */
const PLACES = 4;
const DRAWN = 300;
/** Share of stops that may pass the told one by what caution promises (tests/laws/caution.test.ts), and by the errors of both draws. */
const MOST_BEYOND = 0.013 + 3 * Math.sqrt(ODDS * (1 - ODDS) * (1 / SAMPLES + 1 / DRAWN));
/** Relative error of one reckoned stop. */
const RECKONING = 2e-3;

interface Compared {
  readonly better: Better[];
  /** Better only because it forces a slower speed, at which the first outing is as good. */
  readonly forced: Better[];
  readonly stops: number;
  /** Told stop of the worse outing over that of the first, the least. */
  readonly least: number;
}

export function compare(seed: number, way: Way): Compared | undefined {
  const outing = dressed(seed);
  const worse = ways[way](outing);
  if (worse === outing) return undefined;
  const [first, second] = [asked(outing), asked(worse)];
  const better: Better[] = [];
  const forced: Better[] = [];
  const say = (what: string): void => void better.push({ seed, way, what });
  if (ranks[second.answer.verdict] < ranks[first.answer.verdict]) {
    const slow = asked(heldTo(outing, second.inquiry));
    const what = `${first.answer.verdict} (${worst(first.answer)}) becomes ${second.answer.verdict} (${worst(second.answer)})`;
    if (ranks[second.answer.verdict] < ranks[slow.answer.verdict])
      say(`${what}; at its speeds ${slow.answer.verdict} (${worst(slow.answer)})`);
    else forced.push({ seed, way, what });
  }
  let least = Infinity;
  let stops = 0;
  for (let i = 0; i < PLACES; i++) {
    const at = (outing.line.length * (i + 0.4)) / PLACES;
    const v = (outing.plannedSpeed ?? outing.host.speed?.value ?? 3) * (i % 2 === 0 ? 1 : 0.6);
    const [was, is] = [first, second].map(({ inquiry }) => stopAt(inquiry, outing, at, v));
    if (way === 'load' && (v * v) / 2 / was.drawn < byItself(first.inquiry, at - 40, at + was.drawn))
      continue;
    stops++;
    const here = `at ${at.toFixed(0)} m, ${v.toFixed(2)} m/s`;
    if (is.drawn < was.drawn * (1 - RECKONING))
      say(`${here}: by odds ${was.drawn.toFixed(2)} m becomes ${is.drawn.toFixed(2)} m`);
    if (is.told < was.atLeast * (1 - RECKONING))
      say(`${here}: told ${is.told.toFixed(2)} m, by odds of the first at least ${was.atLeast.toFixed(2)} m`);
    if (was.told < Infinity) least = Math.min(least, is.told / was.told);
  }
  return { better, forced, stops, least };
}

/** Told stops of an outing along its line, its first car without brakes heavier. @param more kg */
export function heavierBy(seed: number, more: number): readonly number[] {
  const outing = dressed(seed);
  const { vehicles } = outing.train;
  const at = vehicles.findIndex((v) => v.brakes.length === 0);
  const heavier = vehicles.map((v, i) => (i === at && v.tare ? { ...v, tare: later(v.tare, more) } : v));
  const { ready } = inquire({ ...outing, train: { ...outing.train, vehicles: heavier } }, care);
  const { cautious } = ready.models(outing.conditions.railState);
  return Array.from({ length: 10 }, (_, i) =>
    stopDistance(cautious, (outing.line.length * (i + 0.5)) / 10, 3),
  );
}

/** Most by which a car alone may slow on its rise and its bearings, m/s²: a train that slows less is helped by its load. */
function byItself({ context: { line } }: OpenInquiry, from: number, to: number): number {
  const rises = line.heights.slice(1).map((knot, i) => {
    const before = line.heights[i];
    // Round a loop it may lie anywhere.
    const here = line.loop || (knot.at > from && before.at < to);
    return here ? (knot.height - before.height) / (knot.at - before.at) : 0;
  });
  return 9.81 * (Math.max(0, ...rises) + MOST_ROLLING);
}
/** Of the random cars, as a share of their weight. */
const MOST_ROLLING = 0.02;

/** The cautious stop as told, the 99th of a hundred drawn, and as short as that may be by the error of so many draws. */
function stopAt({ ready }: OpenInquiry, { conditions }: Outing, at: number, v: number) {
  const drawn = sampleStops(ready.inputs(conditions.railState), at, v, DRAWN, 1).sort();
  return {
    told: stopDistance(ready.models(conditions.railState).cautious, at, v),
    drawn: percentile(drawn, ODDS),
    atLeast: percentile(drawn, 1 - MOST_BEYOND),
  };
}
