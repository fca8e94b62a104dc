/** Every vehicle of a train over the heights of its line: what is left under its low parts, and how far a wheel hangs. */
import type { OutingContext } from '../../outing/open.ts';
import { guidesOf } from '../../things/coupler/bend.ts';
import { heightAt, onLine } from '../../things/line/geometry.ts';
import type { Line } from '../../things/line/types.ts';
import { isSparse } from '../../things/line/vertical.ts';
import type { LoadedVehicle } from '../../things/train/loaded.ts';
import { MIDDLE_BEARS, OUTER_BEAR, wheelHangs } from '../../things/vehicle/hump.ts';
import type { AxleGroup, LowPart, Vehicle } from '../../things/vehicle/types.ts';
import { frameSinks } from '../crests/sinks.ts';

export type Lie = 'crest' | 'sag';

/** One low part where least is left under it. */
export interface PartFit {
  readonly part: string;
  /** From the front end, m. */
  readonly along: number;
  /** Above the rail on the level and empty; what springs give; how far the rail comes up, m. */
  readonly height: number;
  readonly sink: number;
  readonly rise: number;
  readonly left: number;
  readonly at: number;
  readonly lie: Lie;
  readonly sparse: boolean;
}

/** One rigid group of three axles or more where a wheel hangs farthest. */
export interface GroupFit {
  readonly group: string;
  readonly wheelBase: number;
  readonly versine: number;
  /** m; undefined: how far its axles move is not known. */
  readonly travel?: number;
  readonly hangs: number;
  /** With no travel at all. */
  readonly mayHang: number;
  readonly at: number;
  readonly lie: Lie;
  readonly sparse: boolean;
}

export interface HumpFit {
  readonly vehicle: string;
  readonly name: string;
  readonly parts: readonly PartFit[];
  readonly groups: readonly GroupFit[];
  /** How far the rail comes up midway between its guides, or under its ends, at most: what a part nobody measured would lose. */
  readonly most: Omit<PartFit, 'part' | 'along' | 'height' | 'sink' | 'left'> | null;
  readonly flange?: number;
}

export function lookAtHumps({ line, loaded }: OutingContext): HumpFit[] {
  const rise = risesOn(line);
  return loaded.vehicles.map((v) => {
    const { vehicle } = v;
    const [front, rear] = guidesOf(vehicle);
    const flanges = (vehicle.wheelsets ?? []).flatMap((w) => w.flangeHeight ?? []);
    const rises = rear > front ? [(front + rear) / 2, 0, vehicle.length].map((at) => rise(vehicle, at)) : [];
    return {
      vehicle: vehicle.id,
      name: vehicle.name,
      parts: rear > front ? (vehicle.lowParts ?? []).map((p) => partFit(v, p, rise)) : [],
      groups: vehicle.groups
        .filter((g) => g.axles > 2 && g.wheelBase > 0)
        .map((g) => groupFit(line, v, g, vehicle.groups.indexOf(g))),
      most: rises.length === 0 ? null : rises.reduce((a, b) => (b.rise > a.rise ? b : a)),
      ...(flanges.length > 0 ? { flange: Math.min(...flanges) } : {}),
    };
  });
}

type RiseOf = (vehicle: Vehicle, along: number) => Rise;

/** Vehicles of one shape are placed once. */
function risesOn(line: Line): RiseOf {
  const kept = new Map<string, Rise>();
  return (vehicle, along) => {
    const key = [...guidesOf(vehicle), vehicle.length, along].join(' ');
    const found = kept.get(key) ?? worstRise(line, vehicle, along);
    kept.set(key, found);
    return found;
  };
}

/** Places of a vehicle's front end at which a point of it comes over a point of the survey, or it stands at an end of the line. */
function standings(line: Line, vehicle: Vehicle, points: readonly number[]): number[] {
  const ends = line.loop || line.length < vehicle.length ? [] : [vehicle.length, line.length];
  const over = points.flatMap((d) =>
    line.heights.flatMap(({ at }) => {
      const head = line.loop ? onLine(line, at + d) : at + d;
      return line.loop || (head <= line.length && head - vehicle.length >= 0) ? [head] : [];
    }),
  );
  return [...ends, ...over];
}

type Rise = NonNullable<HumpFit['most']>;

/** Rail at a point of the vehicle above the line of its frame, where it comes up most. Straight between points of the survey: exact. */
function worstRise(line: Line, vehicle: Vehicle, along: number): Rise {
  const [front, rear] = guidesOf(vehicle);
  let worst = { rise: 0, head: vehicle.length };
  for (const head of standings(line, vehicle, [front, rear, along])) {
    const [a, b] = [heightAt(line, head - front), heightAt(line, head - rear)];
    const frame = a + ((along - front) / (rear - front)) * (b - a);
    const rise = heightAt(line, head - along) - frame;
    if (rise > worst.rise) worst = { rise, head };
  }
  const at = onLine(line, worst.head - along);
  return {
    rise: worst.rise,
    at,
    lie: along >= front && along <= rear ? 'crest' : 'sag',
    sparse: isSparse(line, at, vehicle.length / 2),
  };
}

function partFit(loaded: LoadedVehicle, { name, at, height }: LowPart, riseOf: RiseOf): PartFit {
  const rise = riseOf(loaded.vehicle, at);
  const sink = Math.max(0, ...frameSinks(loaded, at));
  return { part: name, along: at, height, sink, ...rise, left: height - sink - rise.rise };
}

/** Of its middle axle against the outer two, either way, where a wheel hangs farthest. */
function groupFit(
  line: Line,
  { vehicle, groupLoads }: LoadedVehicle,
  group: AxleGroup,
  index: number,
): GroupFit {
  const { at: middle, wheelBase } = group;
  const offsets = [middle - wheelBase / 2, middle, middle + wheelBase / 2];
  const bears = (versine: number): number | undefined => travelOf(vehicle, group, groupLoads[index], versine);
  let worst = { versine: 0, head: vehicle.length, mayHang: 0 };
  for (const head of standings(line, vehicle, offsets)) {
    const [first, middlemost, last] = offsets.map((d) => heightAt(line, head - d));
    const versine = middlemost - (first + last) / 2;
    const mayHang = wheelHangs(versine, bears(versine) ?? 0);
    if (mayHang > worst.mayHang) worst = { versine, head, mayHang };
  }
  const { versine } = worst;
  const travel = bears(versine);
  const at = onLine(line, worst.head - middle);
  return {
    group: group.name,
    wheelBase,
    versine,
    ...(travel === undefined ? {} : { travel }),
    hangs: travel === undefined ? 0 : worst.mayHang,
    mayHang: wheelHangs(versine, 0),
    at,
    lie: versine > 0 ? 'crest' : 'sag',
    sparse: isSparse(line, at, wheelBase),
  };
}

/** How far an axle comes off the line of the others and still bears: as measured, by springs, or by levers that let it follow. */
function travelOf(
  { suspension }: Vehicle,
  { travel, axles }: AxleGroup,
  load: number,
  versine: number,
): number | undefined {
  if (travel !== undefined) return travel;
  if (suspension?.wheelStiffness && axles === 3)
    return (load / (2 * axles) / suspension.wheelStiffness.high) * (versine > 0 ? OUTER_BEAR : MIDDLE_BEARS);
  return suspension?.equalised ? Infinity : undefined;
}
