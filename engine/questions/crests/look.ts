/** Every gap of a train along its line: how far its couplers stand out of line, at the worst. */
import type { OutingContext } from '../../outing/open.ts';
import { endOnTrack, leastVerticalRadius, type Rise, risesOn } from '../../things/coupler/crest.ts';
import { isLinked } from '../../things/coupler/linked.ts';
import { tiltOver } from '../../things/coupler/tilt.ts';
import { heightAt } from '../../things/line/geometry.ts';
import type { Line } from '../../things/line/types.ts';
import { isSparse, roundedOff } from '../../things/line/vertical.ts';
import { sinksOf } from './sinks.ts';

/** Height of the lower face, m, and how much of it holds the other: nothing or less, they slip by. */
export interface Hold {
  readonly face: number;
  /** Mean of both. */
  readonly mean: number;
  readonly held: number;
}

export interface CrestGap {
  readonly gap: number;
  readonly vehicle: string;
  readonly name: string;
  readonly other: string;
  /** Height of the coupler ahead less that behind as stated; null: one of them is not. */
  readonly stated: number | null;
  /** What heights that nobody stated may differ by besides, as far as the trade couples, m; nothing where both are stated. */
  readonly doubt: number;
  /** What the line and the springs add where it is worst, m. */
  readonly line: number;
  readonly springs: number;
  /** What cant and twist tilt the faces apart at their edge there, m, ≥ 0. */
  readonly tilt: number;
  /** All but the tilt together, m; positive: the one ahead stands higher. */
  readonly apart: number;
  /** How far they stand out of line with the tilt, m, where the track bends evenly between the points of its survey; of faces and heights that are not stated alone reckoned apart. */
  readonly gentle: number;
  readonly at: number;
  readonly lie: 'crest' | 'sag';
  /** No two points of the survey lie as near there as the vehicles are long: how sharp it bends is not known. */
  readonly sparse: boolean;
  /** What of the two faces holds; null: one is not stated. Empty or as seated, whichever holds less. */
  readonly hold: Hold | null;
  /** Which of the two that is. */
  readonly people: People;
  /** What holds, m, under each loading; `any`: either vehicle full or empty. */
  readonly under: Readonly<Record<People | 'any', number>> | null;
  /** Least radius of a crest or sag at which half of the lower face still holds, m; infinite: nowhere. Null: a face is not stated. */
  readonly leastRadius: number | null;
  /** One of the two carries people on springs of which nothing is known. */
  readonly springsUnknown: boolean;
}

export type People = 'seated' | 'empty';

export function lookAtCrests({ line, loaded, outing }: OutingContext): CrestGap[] {
  const kept = new Map<string, ReturnType<typeof risesOn>>();
  const usual = 2 * outing.assumed.practice['half-knuckle'].value * line.gauge;
  const heaviest = Math.max(0, ...outing.riders.map((r) => r.mass.high));
  let even: Line | undefined;
  return loaded.vehicles.slice(1).flatMap((behind, gap) => {
    const ahead = loaded.vehicles[gap];
    const [rear, front] = [ahead.vehicle.rear, behind.vehicle.front];
    const [a, b] = [endOnTrack(ahead.vehicle, 'rear'), endOnTrack(behind.vehicle, 'front')];
    if (isLinked(rear, front) || !a || !b) return [];
    // A face is taken as wide as it is high: knuckles are narrower.
    const wide = Math.min(rear.face ?? usual, front.face ?? usual);
    const key = JSON.stringify([a, b, wide]);
    const tilt = tiltOver(line, a, b, wide);
    const rises = kept.get(key) ?? risesOn(line, a, b, tilt);
    kept.set(key, rises);
    const stated =
      rear.height === undefined || front.height === undefined ? null : rear.height - front.height;
    const sinks = [sinksOf(ahead, 'rear', heaviest), sinksOf(behind, 'front', heaviest)] as const;
    const [of, next] = sinks;
    const under = (ofAhead: readonly number[], ofBehind: readonly number[]): Worst =>
      worstOf(stated ?? 0, rises, ofAhead, ofBehind);
    const [seated, empty] = [under(of.seated, next.seated), under(of.empty, next.empty)];
    const people: People = total(empty) > total(seated) ? 'empty' : 'seated';
    const worst = people === 'empty' ? empty : seated;
    const any = under([...of.empty, ...of.seated, ...of.full], [...next.empty, ...next.seated, ...next.full]);
    const held = (w: Worst): number => holdOf(rear.face, front.face, total(w))?.held ?? Number.NaN;
    const hold = holdOf(rear.face, front.face, total(worst));
    const level = { rise: 0, tilt: Math.max(rises.most.tilt, rises.least.tilt), at: 0 };
    const flat = Math.max(
      ...(['seated', 'empty'] as const).map((p) =>
        total(worstOf(stated ?? 0, { most: level, least: level }, of[p], next[p])),
      ),
    );
    const gentle = (): number => {
      even ??= roundedOff(line);
      const bent = risesOn(even, a, b, tilt);
      const of = (p: People): number => total(worstOf(stated ?? 0, bent, sinks[0][p], sinks[1][p]));
      return Math.min(total(worst), Math.max(of('seated'), of('empty')));
    };
    const doubt = stated === null ? outing.assumed.coupler.heightDifference.value : 0;
    const asked = (hold === null || stated === null) && total(worst) + doubt >= missesBy(hold, usual).half;
    const room = hold && hold.mean - flat - hold.face / 2;
    const reach = Math.max(...a.near, ...a.far, ...b.near, ...b.far);
    return [
      {
        gap,
        vehicle: ahead.vehicle.id,
        name: ahead.vehicle.name,
        other: behind.vehicle.name,
        stated,
        doubt,
        ...worst,
        gentle: asked ? gentle() : total(worst),
        lie: lieOf(line, worst.at, reach),
        sparse: isSparse(line, worst.at, reach),
        hold,
        people,
        under: hold && { seated: held(seated), empty: held(empty), any: held(any) },
        leastRadius: room === null ? null : leastVerticalRadius(a, b, room),
        springsUnknown: of.unknown || next.unknown,
      },
    ];
  });
}

/** How far out of line half of the lower face is lost, and all of it, m. @param usual a knuckle's height, of faces that nobody measured */
export const missesBy = (
  hold: Hold | null,
  usual: number,
): { readonly half: number; readonly all: number } =>
  hold ? { half: hold.mean - hold.face / 2, all: hold.mean } : { half: usual / 2, all: usual };

/** Faces lie evenly about the middle, by which a coupler's height is told. */
function holdOf(a: number | undefined, b: number | undefined, apart: number): Hold | null {
  if (a === undefined || b === undefined) return null;
  const face = Math.min(a, b);
  const mean = (a + b) / 2;
  return { face, mean, held: Math.min(face, mean - apart) };
}

type Worst = Pick<CrestGap, 'line' | 'springs' | 'tilt' | 'apart' | 'at'>;

/** By which the faces miss one another, at the edge where they do most, m. */
const total = ({ apart, tilt }: Worst): number => Math.abs(apart) + tilt;

/** Of the line's two extremes and the springs' bounds, the one that stands farthest out of line, either way. */
function worstOf(
  stated: number,
  { most, least }: { readonly most: Rise; readonly least: Rise },
  ahead: readonly number[],
  behind: readonly number[],
): Worst {
  const all = [most, least].flatMap(({ rise, tilt, at }) =>
    ahead.flatMap((a) =>
      behind.map((b): Worst => ({ line: rise, springs: b - a, tilt, apart: stated + rise + b - a, at })),
    ),
  );
  return all.reduce((a, b) => (total(b) > total(a) ? b : a));
}

/** Above the straight between the two points a reach away: a crest. */
function lieOf(line: Line, at: number, reach: number): CrestGap['lie'] {
  const beside = (heightAt(line, at - reach) + heightAt(line, at + reach)) / 2;
  return heightAt(line, at) >= beside ? 'crest' : 'sag';
}
