/** Every wheelset of a train against the track of its line: what is left of each pair, and where it is least. */
import type { OutingContext } from '../../outing/open.ts';
import { wideningAt } from '../../things/line/geometry.ts';
import type { Flangeway, Line } from '../../things/line/types.ts';
import type { Vehicle } from '../../things/vehicle/types.ts';
import {
  backsOf,
  flangePlay,
  guardCheckOf,
  guardFaceOf,
  treadOnRail,
  wheelCheck,
} from '../../things/wheel/pair.ts';
import type { Wheelset } from '../../things/wheel/types.ts';

/** Where a pair has least left. */
export interface Met {
  /** What the wheelset has there, and what the track bears, m. */
  readonly found: number;
  readonly bears: number;
  /** Less than nothing: it does not pass, m. */
  readonly left: number;
  /** Name of the frog or crossing; empty for the gauge of the line. */
  readonly place: string;
  readonly from: number;
  readonly to: number;
}

/** A check or face that was measured itself, or is the gauge less its gaps. */
export interface Guarded extends Met {
  readonly measured: boolean;
}

/** Gauge where a wheelset stands loosest. */
export interface Tread extends Met {
  readonly gauge: number;
  readonly widening: number;
}

/** One wheelset; null where what it takes was not measured on it or on the line. */
export interface WheelsetFit {
  readonly vehicle: string;
  readonly name: string;
  readonly wheelset: Wheelset;
  readonly backs: { readonly least: number; readonly most: number } | null;
  readonly frog: Guarded | null;
  readonly guard: Guarded | null;
  /** Between the rails where they are narrowest: what it takes, and the gauge. */
  readonly gauge: Met | null;
  readonly mostPlay: number | null;
  readonly tread: Tread | null;
  /** Where nobody measured how wide its wheels are: from how wide on none drops in. Null: nothing to tell it by. */
  readonly width: Tread | null;
  readonly floor: Met | null;
}

/** Gauge along a line, m: of the straight, of each widened curve, of each frog where it was measured. */
interface Spot {
  readonly gauge: number;
  readonly widening: number;
  readonly place: string;
  readonly from: number;
  readonly to: number;
}

export function lookAtWheels({ line, loaded }: OutingContext): WheelsetFit[] {
  const spots = spotsOf(line);
  return loaded.vehicles.flatMap(({ vehicle }) =>
    (vehicle.wheelsets ?? []).map((wheelset) => fitOf(vehicle, wheelset, line, spots)),
  );
}

function spotsOf(line: Line): Spot[] {
  const { gauge, curves, flangeways = [] } = line;
  return [
    { gauge, widening: 0, place: '', from: 0, to: line.length },
    ...curves
      .filter((c) => c.gaugeWidening > 0)
      .map((c) => ({ gauge, widening: c.gaugeWidening, place: '', from: c.from, to: c.to })),
    ...flangeways.flatMap(({ gauge: own, name, at }) =>
      own === undefined ? [] : [{ gauge: own, widening: 0, place: name, from: at, to: at }],
    ),
  ];
}

/**
 * Gauge at a frog, m. Of one that states none and lies in a widened curve nobody knows whether it was laid wide: its guard check is
 * then that of the line's own gauge, its guard face that of the widened one.
 */
const gaugeAt = (
  line: Line,
  { gauge, at }: Flangeway,
): { readonly least: number; readonly most: number } => ({
  least: gauge ?? line.gauge,
  most: gauge ?? line.gauge + wideningAt(line, at),
});
const checkOf = (line: Line, way: Flangeway) => guardCheckOf(way, gaugeAt(line, way).least);
const faceOf = (line: Line, way: Flangeway) => guardFaceOf(way, gaugeAt(line, way).most);

/** Whether it has anything across the track to hold wheels against; a depth alone tells of no point and no guard rail. */
export const isAcross = (line: Line, way: Flangeway): boolean =>
  checkOf(line, way) !== undefined || faceOf(line, way) !== undefined;

const least = <M extends Met>(of: readonly M[]): M | null =>
  of.reduce<M | null>((a, b) => (a === null || b.left < a.left ? b : a), null);

function fitOf(vehicle: Vehicle, wheelset: Wheelset, line: Line, spots: readonly Spot[]): WheelsetFit {
  const backs = backsOf(wheelset) ?? null;
  const { flangeThickness: flange, flangeHeight: height, width } = wheelset;
  const ways = line.flangeways ?? [];
  const at = (way: Flangeway) => ({ place: way.name, from: way.at, to: way.at });
  const frog = ways.flatMap((way): Guarded[] => {
    const bears = checkOf(line, way);
    if (bears === undefined || !backs || !flange) return [];
    const found = wheelCheck(backs.most, flange.high);
    return [{ ...at(way), found, bears, left: bears - found, measured: way.guardCheck !== undefined }];
  });
  const guard = ways.flatMap((way): Guarded[] => {
    const bears = faceOf(line, way);
    if (bears === undefined || !backs) return [];
    return [
      {
        ...at(way),
        found: backs.least,
        bears,
        left: backs.least - bears,
        measured: way.guardFace !== undefined,
      },
    ];
  });
  const floor = ways.flatMap((way): Met[] =>
    way.depth === undefined || height === undefined
      ? []
      : [{ ...at(way), found: height, bears: way.depth, left: way.depth - height }],
  );
  const rails = backs && flange ? spots.map((spot) => betweenRails(spot, backs.most, flange.high)) : [];
  const loose = (spot: Spot): number =>
    backs && flange ? flangePlay(spot.gauge, spot.widening, backs.least, flange.low) : 0;
  return {
    vehicle: vehicle.id,
    name: vehicle.name,
    wheelset,
    backs,
    frog: least(frog),
    guard: least(guard),
    gauge: least(rails),
    mostPlay: backs && flange ? Math.max(...spots.map(loose)) : null,
    tread:
      backs && flange && width !== undefined
        ? least(spots.map((spot) => treadAt(spot, backs.least, flange.low, width)))
        : null,
    // Of wheels without any width the tread lacks what they need.
    width:
      backs && flange && width === undefined
        ? least(spots.map((spot) => treadAt(spot, backs.least, flange.low, 0)))
        : null,
    floor: least(floor),
  };
}

function betweenRails({ gauge, widening, ...where }: Spot, back: number, flange: number): Met {
  const left = flangePlay(gauge, widening, back, flange);
  return { ...where, found: gauge + widening - left, bears: gauge + widening, left };
}

function treadAt(spot: Spot, back: number, flange: number, width: number): Tread {
  const left = treadOnRail(spot.gauge, spot.widening, back, flange, width);
  return { ...spot, found: left, bears: 0, left };
}

const axlesOf = ({ groups }: Vehicle): number => groups.reduce((sum, g) => sum + g.axles, 0);

export type Measured = 'backToBack' | 'flangeThickness' | 'flangeHeight';

/** Vehicles of which an axle lacks a figure. */
export const without = (vehicles: readonly Vehicle[], of: Measured): Vehicle[] =>
  vehicles.filter(
    (v) =>
      (v.wheelsets ?? []).filter((w) => (of === 'backToBack' ? backsOf(w) : w[of]) !== undefined).length <
      axlesOf(v),
  );

/** What the frogs and crossings of a line give to compare with. */
export function comparedOn(line: Line): ReadonlySet<Measured> {
  const of = new Set<Measured>();
  for (const way of line.flangeways ?? []) {
    const check = checkOf(line, way) !== undefined;
    if (check || faceOf(line, way) !== undefined) of.add('backToBack');
    if (check) of.add('flangeThickness');
    if (way.depth !== undefined) of.add('flangeHeight');
  }
  return of;
}
