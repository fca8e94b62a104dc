/** The bodies of a train on its line, and how far they reach beside the track: play of flanges and gauge widening in it, lean not. */
import type { Quantity } from '../../base/quantity.ts';
import { speedMeant } from '../../motion/prepare.ts';
import type { OutingContext } from '../../outing/open.ts';
import { reachesAlong } from '../../things/clearance/along.ts';
import { type Aside, farthest, reachAt, type Side, type SweptShape } from '../../things/clearance/swept.ts';
import { guidesOf } from '../../things/coupler/bend.ts';
import { type Even, evenStretches } from '../../things/line/even.ts';
import { cantAt, onLine, wideningAt } from '../../things/line/geometry.ts';
import { layPlan, type Plan } from '../../things/line/plan.ts';
import type { Line } from '../../things/line/types.ts';
import type { LoadedVehicle } from '../../things/train/loaded.ts';
import { playOf } from '../../things/wheel/pair.ts';
import { type Roll, rollOf, type Sway, swayOn } from './sway.ts';

/** Between the places that are looked at along a structure, m; between them the least room is sought. */
export const STEP = 0.25;

/** Farthest along a structure, m, and where. */
export interface Most {
  readonly at: number;
  readonly value: number;
  /** Of it by sway on springs, m; absent: nobody measured them. */
  readonly sway?: number;
}

export interface Way {
  readonly line: Line;
  readonly plan: Plan;
  /** Cars alike reach alike. */
  readonly evens: readonly Even[];
  readonly kept: Map<string, readonly Reached[] | number>;
  readonly mosts: Map<string, Most | number>;
}

export interface Body {
  readonly of: LoadedVehicle;
  readonly shape: SweptShape;
  readonly half: number;
  readonly underside: number;
  readonly top: number;
  /** Top of the highest head and shoulders, m; null: nobody on it. */
  readonly people: { readonly heads: Quantity; readonly shoulders: Quantity } | null;
  readonly play: Quantity;
  /** Absent: nobody measured its springs. */
  readonly roll?: Roll;
  /** Along the line of its outing, as it rolls there. */
  readonly sway?: Sway;
  /** What its train is meant to run at, at most, m/s. */
  readonly fastest: number;
  /** Alike: all that reaches alike, its sway in it. */
  readonly kind: string;
}

/** How high it may stand at its full width, people's shoulders in it, m. */
export const fullWidthTo = ({ top, people }: Body): number => Math.max(top, people?.shoulders.high ?? 0);

/** Of those whose width and height were measured. */
export const bodiesOf = (context: OutingContext): Body[] =>
  context.loaded.vehicles.filter((v) => v.vehicle.envelope).map((v) => bodyOf(v, context));

export function wayFor(line: Line, bodies: readonly Body[]): Way {
  const reach = Math.max(0, ...bodies.map(({ shape }) => farthest(shape)));
  return {
    line,
    plan: layPlan(line, -reach, (line.loop ? 2 : 1) * line.length + reach),
    evens: evenStretches(line),
    kept: new Map(),
    mosts: new Map(),
  };
}

function bodyOf(of: LoadedVehicle, context: OutingContext): Body {
  const { person, coupler } = context.outing.assumed;
  const { vehicle, riders } = of;
  const { width, height, underside = 0 } = vehicle.envelope ?? { width: 0, height: 0 };
  const [front, rear] = guidesOf(vehicle);
  const half = width / 2;
  const play = playOf(vehicle, context.line.gauge);
  const seat = Math.max(0, ...riders.map((r) => r.seat.height));
  const above = (part: Quantity): Quantity => ({
    ...part,
    low: seat + part.low,
    value: seat + part.value,
    high: seat + part.high,
  });
  const shape: SweptShape = {
    guides: rear - front,
    box: { rear: rear - vehicle.length, front: rear, right: -half, left: half },
  };
  const roll = rollOf(context, of);
  return {
    of,
    shape,
    // On springs each rolls as its people sit.
    kind: JSON.stringify([shape, underside, roll?.kind ?? '']),
    ...(roll ? { roll, sway: swayOn(context, roll) } : {}),
    fastest: speedMeant(context.outing),
    half,
    underside,
    top: height,
    people: riders.length === 0 ? null : { heads: above(person.head), shoulders: above(person.shoulder) },
    play: play === undefined ? coupler.play : { value: play, low: play, high: play, how: 'measured' },
  };
}

export interface Reached {
  readonly at: number;
  readonly reach: number;
  /** With the flanges against the rail of that side, and aslant either way; as far as stands a tenth of a metre apart tell. */
  readonly by: readonly number[];
}

export function reachedAlong(
  way: Way,
  body: Body,
  from: number,
  to: number,
  side: Side,
  play: number,
): readonly Reached[] | number {
  const key = JSON.stringify([body.shape, from, to, side, play]);
  const known = way.kept.get(key);
  if (known !== undefined) return known;
  const found = reachedAnew(way, body, from, to, side, play);
  way.kept.set(key, found);
  return found;
}

function reachedAnew(
  way: Way,
  body: Body,
  from: number,
  to: number,
  side: Side,
  play: number,
): readonly Reached[] | number {
  const count = Math.max(1, Math.ceil((to - from) / STEP));
  const places = Array.from({ length: count + 1 }, (_, i) => from + ((to - from) * i) / count);
  const around = farthest(body.shape);
  let near = 0;
  // Places and stretches grow: looked for from the last one on.
  const evenAt = (s: number): Even | undefined => {
    while (near < way.evens.length - 1 && way.evens[near].to < s + around) near++;
    const even = way.evens[near];
    return even.from <= s - around && even.to >= s + around ? even : undefined;
  };
  const widened = places.map((s) => wideningAt(way.line, onLine(way.line, s)));
  const evens = places.map(evenAt);
  // As a step before where the same curve lies all round both: looked at once.
  const alike = (i: number): boolean =>
    i > 0 && evens[i] !== undefined && evens[i] === evens[i - 1] && widened[i] === widened[i - 1];
  const found = reachesAt(
    way,
    body,
    places.filter((_, i) => !alike(i)),
    side,
    play,
  );
  if (typeof found === 'number') return found;
  let next = 0;
  return places.map((at, i) => ({ ...found[alike(i) ? next - 1 : next++], at }));
}

/** At chainages that grow; those of one widening together. */
export function reachesAt(
  way: Way,
  body: Body,
  places: readonly number[],
  side: Side,
  play: number,
): readonly Reached[] | number {
  const widened = places.map((at) => wideningAt(way.line, onLine(way.line, at)));
  const reached: Reached[] = [];
  while (reached.length < places.length) {
    const first = reached.length;
    const next = widened.findIndex((w, i) => i > first && w !== widened[first]);
    const these = places.slice(first, next < 0 ? undefined : next);
    const each: (readonly number[])[] = [];
    for (const aside of asidesOf(play + widened[first], side)) {
      const found = reachesAlong(way.plan, body.shape, these, side, aside);
      if (typeof found === 'number') return these[found];
      each.push(found);
    }
    these.forEach((at, i) => {
      const by = each.map((found) => found[i]);
      reached.push({ at, reach: Math.max(...by), by });
    });
  }
  return reached;
}

/** The flanges against the rail of that side, and aslant. @param play of both flanges and the gauge's widening, m */
function asidesOf(play: number, side: Side): readonly Aside[] {
  const off = (play / 2) * (side === 'left' ? 1 : -1);
  return off === 0
    ? [{ rear: 0, front: 0 }]
    : [
        { rear: off, front: off },
        { rear: -off, front: off },
        { rear: off, front: -off },
      ];
}

/** Reached by less than this, as stands a tenth of a metre apart tell it, a way to stand is not the one that reaches farthest, m. */
const BEHIND = 5e-4;

/**
 * With the flanges against either rail, both ends alike or aslant.
 *
 * @param by what a look along the track found there for each of them: those that it found far behind are not sought again
 */
export function reachWith(
  { plan, line }: Way,
  { shape }: Body,
  s: number,
  side: Side,
  play: number,
  by?: readonly number[],
): number | undefined {
  const all = asidesOf(play + wideningAt(line, onLine(line, s)), side);
  const least = by ? Math.max(...by) - BEHIND : -Infinity;
  const asides = by?.length === all.length ? all.filter((_, i) => by[i] >= least) : all;
  const reaches = asides.map((aside) => reachAt(plan, shape, s, side, aside));
  return reaches.some((r) => r === undefined) ? undefined : Math.max(...(reaches as number[]));
}

/**
 * How far canted track, and a roll on springs, lean what stands between two heights above the rail to a side, m: toward that side
 * its top goes farthest; away from it its foot goes least.
 *
 * @param sway to that side on the springs, rad
 */
export function leanToward(
  line: Line,
  side: Side,
  at: number,
  { low, high }: { readonly low: number; readonly high: number },
  sway = 0,
): number {
  const toward = ((side === 'left' ? 1 : -1) * cantAt(line, at)) / line.contactWidth + sway;
  return toward * (toward > 0 ? high : low);
}
