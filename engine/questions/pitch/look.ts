/** Every bar and link of a train along its line: how far it turns up or down against both vehicles, at the worst. */
import type { OutingContext } from '../../outing/open.ts';
import { endOnTrack } from '../../things/coupler/crest.ts';
import { isLinked } from '../../things/coupler/linked.ts';
import { type PinnedEnd, pitchOf, type Turn, type Turns, turnsOn } from '../../things/coupler/pitch.ts';
import { tiltOver } from '../../things/coupler/tilt.ts';
import { pairOf } from '../../things/coupler/train-bends.ts';
import { onLine } from '../../things/line/geometry.ts';
import type { Line } from '../../things/line/types.ts';
import { isSparse, roundedOff, versineAt } from '../../things/line/vertical.ts';
import type { LoadedVehicle } from '../../things/train/loaded.ts';
import { sinksAt } from '../crests/sinks.ts';

/** One end of a bar where it must turn farthest up or down. */
export interface PitchEnd {
  readonly gap: number;
  readonly vehicle: string;
  readonly name: string;
  readonly end: 'rear' | 'front';
  /** Name of the vehicle that it is coupled to. */
  readonly other: string;
  /** rad, ≥ 0, and whether the bar tips upward from this vehicle or downward. */
  readonly needed: number;
  readonly way: 'up' | 'down';
  /** The same where the track bends evenly between the points of its survey; beyond what some usual bar gives alone reckoned apart. */
  readonly gentle: number;
  /** Of it, rad, positive where it adds: the line, the heights as stated, springs under people, cant and twist. */
  readonly line: number;
  readonly stated: number;
  readonly springs: number;
  readonly cant: number;
  readonly people: 'seated' | 'empty';
  readonly at: number;
  readonly lie: 'crest' | 'sag' | 'level';
  /** No two points of the survey lie as near there as the vehicles are long. */
  readonly sparse: boolean;
  /** From pin to pin, m. */
  readonly bar: number;
  /** What it gives, rad; null: not stated. */
  readonly gives: number | null;
  readonly heightsKnown: boolean;
  readonly shanksKnown: boolean;
  readonly springsUnknown: boolean;
}

export function lookAtPitch(context: OutingContext): PitchEnd[] {
  const kept = new Map<string, Bent>();
  const { line, loaded } = context;
  let even: Line | undefined;
  return loaded.vehicles.slice(1).flatMap((behind, gap) => {
    const ahead = loaded.vehicles[gap];
    const [a, b] = [endOnTrack(ahead.vehicle, 'rear'), endOnTrack(behind.vehicle, 'front')];
    if (!isLinked(ahead.vehicle.rear, behind.vehicle.front) || !a || !b) return [];
    // Short shanks turn most: of what nobody stated, the shortest.
    const pair = pairOf({ ahead: ahead.vehicle, behind: behind.vehicle }, context.outing.assumed.coupler, -1);
    const [front, back] = [
      { ...a, shank: pair.ahead.shank },
      { ...b, shank: pair.behind.shank },
    ];
    const key = JSON.stringify([front, back]);
    // Pins lie in the middle of the ends: of the tilt what they stand aside of the track counts.
    const tilt = tiltOver(line, a, b, 0);
    let evenly: Both | undefined;
    const turns: Bent = kept.get(key) ?? {
      sharp: turnsOn(line, front, back, tilt),
      even: () => {
        even ??= roundedOff(line);
        evenly ??= turnsOn(even, front, back, tilt);
        return evenly;
      },
    };
    kept.set(key, turns);
    const both = { ahead: { loaded: ahead, end: front }, behind: { loaded: behind, end: back } };
    return (['ahead', 'behind'] as const).map((side) => endOf(context, gap, side, both, turns));
  });
}

type Both = ReturnType<typeof turnsOn>;

/** On the line as surveyed, bent at its points; and bent evenly between them. */
interface Bent {
  readonly sharp: Both;
  readonly even: () => Both;
}

interface Side {
  readonly loaded: LoadedVehicle;
  readonly end: PinnedEnd;
}

type Which = 'ahead' | 'behind';

const couplingOf = (side: Which, { vehicle }: LoadedVehicle) =>
  side === 'ahead' ? vehicle.rear : vehicle.front;

function endOf(
  { line, outing }: OutingContext,
  gap: number,
  side: Which,
  both: Readonly<Record<Which, Side>>,
  turns: Bent,
): PitchEnd {
  const other = side === 'ahead' ? 'behind' : 'ahead';
  const [own, its] = [both[side], both[other]];
  const [coupling, partner] = [couplingOf(side, own.loaded), couplingOf(other, its.loaded)];
  const heaviest = Math.max(0, ...outing.riders.map((r) => r.mass.high));
  const bar = own.end.shank + its.end.shank;
  const sunk = { own: sinkOf(side, own, heaviest), its: sinkOf(other, its, heaviest) };
  const heightsKnown = coupling.height !== undefined && partner.height !== undefined;
  const apart = heightsKnown ? (partner.height - coupling.height) / bar : 0;
  const worst = worstOf(turns.sharp[side], apart, sunk, bar);
  const gives = coupling.pitch?.low ?? null;
  const gentle =
    gives === null && worst.needed > outing.assumed.coupler.pitch.low
      ? Math.min(worst.needed, worstOf(turns.even()[side], apart, sunk, bar).needed)
      : worst.needed;
  const reach = Math.max(...[own.end, its.end].flatMap((e) => [...e.near, ...e.far]));
  const at = onLine(line, worst.at);
  return {
    gap,
    vehicle: own.loaded.vehicle.id,
    name: own.loaded.vehicle.name,
    end: side === 'ahead' ? 'rear' : 'front',
    other: its.loaded.vehicle.name,
    ...worst,
    gentle,
    at,
    lie: lieOf(line, at, reach),
    sparse: isSparse(line, at, reach),
    bar,
    gives,
    heightsKnown,
    shanksKnown: coupling.shank !== undefined && partner.shank !== undefined,
    springsUnknown: sunk.own.unknown || sunk.its.unknown,
  };
}

/** A pin, m, and the frame's slope toward its end, on each stiffness that the springs may have. */
interface Sunk {
  readonly at: number;
  readonly slope: number;
}

interface SunkBy {
  readonly seated: readonly Sunk[];
  readonly empty: readonly Sunk[];
  readonly unknown: boolean;
}

/** Sinks are straight along a frame: what it sinks a metre nearer its middle tells the slope. */
function sinkOf(side: Which, { loaded, end }: Side, heaviest: number): SunkBy {
  const { length } = loaded.vehicle;
  const from = (d: number) => sinksAt(loaded, side === 'ahead' ? length - d : d, heaviest);
  const [pin, inner] = [from(end.shank), from(end.shank + 1)];
  const under = (people: 'seated' | 'empty'): Sunk[] =>
    pin[people].map((at, i) => ({ at, slope: inner[people][i] - at }));
  return { seated: under('seated'), empty: under('empty'), unknown: pin.unknown };
}

type Worst = Pick<PitchEnd, 'needed' | 'way' | 'line' | 'stated' | 'springs' | 'cant' | 'people' | 'at'>;

/** @param stated slope of the bar by the heights of both couplers alone */
function worstOf(
  turns: Turns,
  stated: number,
  sunk: { readonly own: SunkBy; readonly its: SunkBy },
  bar: number,
): Worst {
  const of = (way: 'up' | 'down', people: 'seated' | 'empty', own: Sunk, its: Sunk): Worst => {
    const turn: Turn = turns[way];
    const sign = way === 'up' ? 1 : -1;
    const byLine = pitchOf(turn);
    const tilted = pitchOf({ bar: turn.bar + sign * turn.tilt, frame: turn.frame });
    const level = turn.bar + sign * turn.tilt + stated;
    const high = pitchOf({ bar: level, frame: turn.frame });
    const all = pitchOf({ bar: level + (own.at - its.at) / bar, frame: turn.frame + own.slope });
    return {
      needed: Math.max(0, sign * all),
      way,
      line: sign * byLine,
      cant: sign * (tilted - byLine),
      stated: sign * (high - tilted),
      springs: sign * (all - high),
      people,
      at: turn.at,
    };
  };
  const each = (['empty', 'seated'] as const).flatMap((people) =>
    sunk.own[people].flatMap((own) =>
      sunk.its[people].flatMap((its) => [of('up', people, own, its), of('down', people, own, its)]),
    ),
  );
  return each.reduce((a, b) => (b.needed > a.needed ? b : a));
}

/** Less stands off of the straight between two points a reach away: level, m. */
const LEVEL = 1e-5;

function lieOf(line: Line, at: number, reach: number): PitchEnd['lie'] {
  const versine = versineAt(line, at, 2 * reach);
  if (Math.abs(versine) < LEVEL) return 'level';
  return versine > 0 ? 'crest' : 'sag';
}
