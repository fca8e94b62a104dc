/**
 * Do the couplers swing as far as the curves ask? Both ends of every gap, along the whole line: what is stated and
 * does not suffice forbids; what is not stated limits beyond what the stiffest usual coupler gives: push the train round by hand first.
 */
import { amount, type Quantity } from '../../base/quantity.ts';
import type { SumRef } from '../../base/sum.ts';
import type { OutingContext } from '../../outing/open.ts';
import type { Bend, EndShape } from '../../things/coupler/bend.ts';
import { type Bends, type Lie, lieAt, type Worst, worstBend } from '../../things/coupler/bends.ts';
import { couplerAngle } from '../../things/coupler/formulas.ts';
import { angleOfPlay } from '../../things/coupler/play.ts';
import { bendsOf, type Joint, jointsOf, pairOf, swingOf } from '../../things/coupler/train-bends.ts';
import { onLine, wideningAt } from '../../things/line/geometry.ts';
import type { Coupling } from '../../things/vehicle/types.ts';
import { playOf } from '../../things/wheel/pair.ts';
import { taken } from '../assumptions/taken.ts';
import type { Finding } from '../finding.ts';
import type { FactsOf } from '../findings.ts';
import { makeFinding, marginOf } from '../make.ts';
import type { Findings } from '../question.ts';

/** One coupler of a gap where it must swing farthest. */
export interface SwingEnd {
  readonly gap: number;
  readonly vehicle: string;
  readonly name: string;
  readonly end: 'rear' | 'front';
  /** Name of the vehicle that it is coupled to. */
  readonly other: string;
  /** Greatest angle on the line, rad, π/2 for a quarter turn or more; the chainage where the two meet then, m. */
  readonly needed: number;
  /** What play of the flanges may add there, rad. */
  readonly play: number;
  /** The wheels of both were measured. */
  readonly playKnown: boolean;
  readonly at: number;
  readonly lie: Lie;
  /** Sharpest under the two there, 1/m. */
  readonly curvature: number;
  /** What it gives, rad; null: not stated. */
  readonly swing: number | null;
  /** Both shanks are stated. */
  readonly shanksKnown: boolean;
  /** What is to be measured before anything is said of it; null: nothing is missing. */
  readonly asks: 'swing' | 'shank' | null;
  readonly own: EndShape;
  readonly its: EndShape;
}

export interface SwingData {
  readonly ends: readonly SwingEnd[];
}

/** Less than a tenth left is told. */
const NEAR = 0.1;
const SOURCE = 'both vehicles placed on the plan of the line: common engineering geometry';

export function askSwing(context: OutingContext): Findings<SwingData> {
  const ends = endsOf(context);
  const least = context.outing.assumed.coupler.swing;
  return {
    findings: [...short(ends), ...unknown(ends, least), ...takenFor(ends, context)],
    data: { ends },
  };
}

/** Vehicle by vehicle from the front: its rear coupler, then the next one's front. */
function endsOf({ line, loaded, outing }: OutingContext): SwingEnd[] {
  const joints = jointsOf(loaded.vehicles.map((v) => v.vehicle));
  // Short shanks bend most: of what nobody stated, the shortest.
  const pairs = joints.map((j) => pairOf(j, outing.assumed.coupler, -1));
  const { plan, gaps } = bendsOf(line, pairs);
  const worst = new Map<Bends, Readonly<Record<keyof Bend, Worst>>>();
  // Equal pairs share their bends, and so their worst.
  for (const { pair, bends } of gaps)
    if (!worst.has(bends))
      worst.set(bends, {
        ahead: worstBend(plan, pair, bends, 'ahead'),
        behind: worstBend(plan, pair, bends, 'behind'),
      });
  const plays = joints.map((joint) => playBetween(joint, line.gauge, outing.assumed.coupler.play.value));
  return joints.flatMap((joint, gap) => {
    const { pair, bends } = gaps[gap];
    const shanksKnown = joint.ahead.rear.shank !== undefined && joint.behind.front.shank !== undefined;
    return (['ahead', 'behind'] as const).map((side): SwingEnd => {
      const other = side === 'ahead' ? 'behind' : 'ahead';
      const coupling = side === 'ahead' ? joint.ahead.rear : joint.behind.front;
      const { angle, at } = (worst.get(bends) as Readonly<Record<keyof Bend, Worst>>)[side];
      const { lie, curvature } = lieAt(plan, pair, at);
      const play = plays[gap].most + wideningAt(line, onLine(line, at));
      return {
        gap,
        vehicle: joint[side].id,
        name: joint[side].name,
        end: side === 'ahead' ? 'rear' : 'front',
        other: joint[other].name,
        needed: angle,
        play: angleOfPlay(pair[side], pair[other], play),
        playKnown: plays[gap].known,
        at: onLine(line, at),
        lie,
        curvature,
        swing: swingOf(coupling) ?? null,
        shanksKnown,
        asks: asksOf(coupling, shanksKnown),
        own: pair[side],
        its: pair[other],
      };
    });
  });
}

/** Of the looser of two vehicles: as its wheels were measured, else the usual. */
function playBetween(
  { ahead, behind }: Joint,
  gauge: number,
  usual: number,
): { readonly most: number; readonly known: boolean } {
  const plays = [ahead, behind].map((v) => playOf(v, gauge));
  return { most: Math.max(...plays.map((p) => p ?? usual)), known: !plays.includes(undefined) };
}

/** With the flanges' play. */
const most = ({ needed, play }: SwingEnd): number => needed + play;

function asksOf(coupling: Coupling, shanksKnown: boolean): SwingEnd['asks'] {
  if (swingOf(coupling) === undefined && coupling.sidePlay === undefined) return 'swing';
  return shanksKnown ? null : 'shank';
}

/** The end that has least left, or lacks most. */
const worstOf = (ends: readonly SwingEnd[], gives: (e: SwingEnd) => number): SwingEnd =>
  ends.reduce((a, b) => (marginOf(most(b), gives(b)) < marginOf(most(a), gives(a)) ? b : a));

const placeOf = ({ gap, vehicle, at }: SwingEnd): Finding['where'] => ({ gap, vehicle, from: at, to: at });

const factsOf = (worst: SwingEnd, others: number): FactsOf<'coupler-swing-short'> => ({
  end: worst.end,
  other: worst.other,
  lie: worst.lie,
  bar: amount(worst.own.shank + worst.its.shank, 'length'),
  play: amount(worst.play, 'angle'),
  others,
});

/** The closed form: of the angle where both stand in one curve, else of one such curve throughout. It knows no play. */
function sumOf({ curvature, own, its, lie }: SwingEnd, play: boolean): { readonly sum?: SumRef } {
  if (curvature === 0) return {};
  const inputs = {
    radius: 1 / curvature,
    'truck-centres': own.guides,
    overhang: own.overhang,
    shank: own.shank,
    'other-truck-centres': its.guides,
    'other-overhang': its.overhang,
    'other-shank': its.shank,
  };
  const angle = couplerAngle(
    inputs.radius,
    { ...own, truckCentres: own.guides },
    { ...its, truckCentres: its.guides },
  );
  if (!Number.isFinite(angle)) return {};
  const differs = lie !== 'curve' ? 'throughout' : play ? 'play' : undefined;
  return { sum: { id: 'coupler-angle', inputs, ...(differs ? { differs } : {}) } };
}

/**
 * One line for what swings too little, one for what does with the play of its flanges, one for what has little left. Play is
 * assumed, and does not forbid.
 */
function short(ends: readonly SwingEnd[]): Finding[] {
  const known = ends.flatMap((end) => (end.asks === null && end.swing !== null ? [end] : []));
  const gives = ({ swing }: SwingEnd): number => swing ?? 0;
  const weighs = (end: SwingEnd): 'forbids' | 'limits' | 'notes' | undefined => {
    if (end.needed > gives(end)) return 'forbids';
    if (most(end) > gives(end)) return 'limits';
    return most(end) > (1 - NEAR) * gives(end) ? 'notes' : undefined;
  };
  return (['forbids', 'limits', 'notes'] as const).flatMap((severity): Finding[] => {
    const of = known.filter((end) => weighs(end) === severity);
    if (of.length === 0) return [];
    const worst = worstOf(of, gives);
    const found = severity === 'forbids' ? worst.needed : most(worst);
    return [
      makeFinding('coupler-swing-short', severity, 'fit', {
        where: placeOf(worst),
        found: amount(found, 'angle'),
        required: amount(gives(worst), 'angle'),
        margin: marginOf(found, gives(worst)),
        facts: factsOf(worst, of.length - 1),
        ...sumOf(worst, severity !== 'forbids'),
        source: SOURCE,
      }),
    ];
  });
}

/**
 * One line for each thing to measure. What some usual coupler gives is found by pushing the train round by hand, and
 * limits; beyond what any gives nobody can tell.
 *
 * @param usual swing of usual couplers, rad
 */
function unknown(ends: readonly SwingEnd[], usual: Quantity): Finding[] {
  const gives = ({ swing }: SwingEnd): number => swing ?? usual.low;
  return (['swing', 'shank'] as const).flatMap((asks) => {
    const silent = ends.filter((e) => e.asks === asks && most(e) > gives(e));
    if (silent.length === 0) return [];
    const worst = worstOf(silent, gives);
    return [
      makeFinding('coupler-swing-unknown', most(worst) > usual.high ? 'unknown' : 'limits', 'fit', {
        where: placeOf(worst),
        found: amount(most(worst), 'angle'),
        required: amount(gives(worst), 'angle'),
        facts: { ...factsOf(worst, silent.length - 1), shanks: worst.shanksKnown ? 'known' : 'assumed' },
        ...sumOf(worst, true),
        sure: 'assumed',
        source: SOURCE,
        measure: asks === 'swing' ? 'coupling.swing' : 'coupling.shank',
      }),
    ];
  });
}

/** What stood in for figures that nobody stated, and sufficed. */
function takenFor(ends: readonly SwingEnd[], { outing }: OutingContext): Finding[] {
  const { swing, shank, play } = outing.assumed.coupler;
  const bent = ends.filter((e) => e.needed > 0);
  const say = (key: string, of: string, value: Quantity, from: readonly SwingEnd[]): Finding[] =>
    taken(
      key,
      of,
      value,
      from.map((e) => e.name),
    );
  return [
    ...say(
      'coupler/swing',
      'swing of couplers, at least',
      swing,
      bent.filter((e) => e.asks === 'swing' && most(e) <= swing.low),
    ),
    ...say(
      'coupler/shank',
      'length of coupler shanks',
      shank,
      bent.filter((e) => !e.shanksKnown),
    ),
    ...say(
      'coupler/play',
      'play of flanges between the rails',
      play,
      bent.filter((e) => !e.playKnown),
    ),
  ];
}
