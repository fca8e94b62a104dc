/** Everything that balance computes about one outing, before anything is said about it. */

import { GRAVITY } from '../../base/constants.ts';
import type { OutingContext } from '../../outing/open.ts';
import { windAcross } from '../../outing/wind.ts';
import { trainBrakes } from '../../things/brake/force.ts';
import { bodyOf, centreHeight, tareCentre } from './body.ts';
import { type Derailing, lookAtFlanges } from './climbing.ts';
import { drawBodies } from './draws.ts';
import { carefulLeans, leastTogether, shareAtRest, type Together } from './lean.ts';
import { LEAST_WHEEL_SHARE } from './limits.ts';
import {
  type Ground,
  groundUnder,
  type Margins,
  marginsAlong,
  type Rolling,
  rollingOf,
  type SpeedLine,
  speedsLeaving,
} from './margins.ts';
import { type Sides, sidesOf } from './pull.ts';
import type { Leans } from './tipping.ts';
import { layTrack, type Track } from './track.ts';
import { checkTwist, type TwistCheck } from './twist.ts';
import { type AxleLoad, wheelLoads } from './wheels.ts';
import { windMoment } from './wind.ts';

/** One vehicle, standing and along the line. */
export interface VehicleBalance {
  readonly index: number;
  readonly vehicle: string;
  /** kg, likely */
  readonly mass: number;
  /** Centre of gravity of all above the rail, m: likely and highest reckoned with. */
  readonly centre: number;
  readonly highest: number;
  readonly centreKnown: boolean;
  /** Likely wheel loads standing level, N. */
  readonly axles: readonly AxleLoad[];
  /** Lightest wheel ÷ mean wheel of its truck, and lightest truck ÷ its even share. */
  readonly evenAcross: number;
  readonly evenAlong: number;
  /** Standing level: leans that lift a wheel, and that tip the vehicle. */
  readonly lift: Leans;
  readonly over: Leans;
  /** At the worst place at permitted speed, and at the worst place standing. */
  readonly running: Thinnest;
  readonly standing: Thinnest;
  /** All its people leaning together, where it goes over first; none: nobody rides there. */
  readonly together?: Together;
  readonly twist?: TwistCheck;
}

export interface Thinnest {
  /** Chainage of the train's head, m. */
  readonly at: number;
  readonly speed: number;
  /** Share of standing wheel load left, and of all wheels of the lighter side. */
  readonly share: number;
  readonly upright: number;
  /** Leans that lift a wheel there. */
  readonly lift: Leans;
}

export interface LightestWheel {
  /** Share of its load standing level that the train's lightest wheel keeps; Infinity: nothing is known. */
  readonly share: Float64Array;
  /** Vehicle that it is under, −1: none. */
  readonly by: Int16Array;
}

export interface BalanceLook {
  readonly track: Track;
  readonly grid: Float64Array;
  /** Speed run at where balance does not limit, and where it does, m/s. */
  readonly wanted: Float64Array;
  readonly permitted: Float64Array;
  readonly required: { readonly value: number; readonly source: string; readonly host: boolean };
  readonly trackTwist?: number;
  readonly rolling: readonly Rolling[];
  readonly grounds: readonly Ground[];
  /** What pulls do sideways. */
  readonly sides: Sides;
  readonly ceiling: SpeedLine;
  /** The lightest wheel of the train by place, at permitted speed. */
  readonly lightest: LightestWheel;
  readonly vehicles: readonly VehicleBalance[];
  /** Vehicles whose centre of gravity cannot even be bounded. */
  readonly unbounded: readonly number[];
  readonly flanges: Derailing;
}

/** @param all look also at what the answer does not need: the train pulled and pushed */
export function lookAtBalance(
  context: OutingContext,
  grid: Float64Array,
  wanted: Float64Array,
  all: boolean,
): BalanceLook {
  const { line, loaded, outing } = context;
  const track = layTrack(line, grid[0] - loaded.length, grid[grid.length - 1]);
  const rolling = rollingIn(context);
  const grounds = rolling.map((r) => groundUnder(track, r, grid));
  const rule = outing.host.leastWheelShare;
  const required = { ...(rule ?? LEAST_WHEEL_SHARE), host: rule !== undefined };
  const ceiling = speedsLeaving(rolling, grounds, grid.length, required.value, required.host);
  const permitted = wanted.map((v, j) => Math.min(v, ceiling.speed[j]));
  const trackTwist = twistOf(context, track);
  const still = new Float64Array(grid.length);
  const along = rolling.map((r, v) => ({
    running: marginsAlong(r, grounds[v], permitted),
    standing: marginsAlong(r, grounds[v], still),
  }));
  const sides = sidesOf(context, grid);
  const { air } = context;
  const brakes = trainBrakes(loaded, outing.assumed, air.pressure, air.seaLevel);
  return {
    track,
    grid,
    wanted,
    permitted,
    required,
    ...(trackTwist === undefined ? {} : { trackTwist }),
    rolling,
    grounds,
    sides,
    ceiling,
    lightest: lightestOf(
      rolling,
      along.map((a) => a.running),
      grid.length,
    ),
    vehicles: rolling.map((r, v) => ofVehicle(r, grounds[v], along[v], grid, permitted, trackTwist)),
    unbounded: loaded.vehicles.flatMap((_, i) => (rolling.some((r) => r.index === i) ? [] : [i])),
    flanges: lookAtFlanges(context, track, grid, permitted, rolling, grounds, sides, brakes.groups, all),
  };
}

/** All vehicles, or one, whose centre of gravity is known or bounded, at their places in the train. */
export const rollingIn = ({ line, loaded, outing }: OutingContext, only?: string): Rolling[] =>
  loaded.vehicles.flatMap((v) => {
    if (only !== undefined && v.vehicle.id !== only) return [];
    const { assumed, conditions } = outing;
    const drawn = drawBodies(
      v,
      line.contactWidth,
      assumed.riderCentre,
      windMoment(v, windAcross(conditions), assumed.wind),
    );
    const likely = bodyOf(v, line.contactWidth, assumed.riderCentre, 0);
    return drawn && likely ? [rollingOf(drawn, likely)] : [];
  });

function lightestOf(rolling: readonly Rolling[], all: readonly Margins[], points: number): LightestWheel {
  const share = new Float64Array(points).fill(Infinity);
  const by = new Int16Array(points).fill(-1);
  all.forEach((m, v) => {
    for (let j = 0; j < points; j++) {
      if (m.share[j] >= share[j]) continue;
      share[j] = m.share[j];
      by[j] = rolling[v].index;
    }
  });
  return { share, by };
}

/** Worst twist, m/m: measured or admitted, and never below that of the cant as designed. */
function twistOf({ line }: OutingContext, track: Track): number | undefined {
  let designed = 0;
  for (let j = 4; j < track.count; j++) {
    const change = Math.abs(track.cant[j] - track.cant[j - 4]) * line.contactWidth;
    designed = Math.max(designed, change / (4 * track.step));
  }
  return line.twist === undefined ? undefined : Math.max(line.twist, designed);
}

function ofVehicle(
  rolling: Rolling,
  ground: Ground,
  along: { readonly running: Margins; readonly standing: Margins },
  grid: Float64Array,
  permitted: Float64Array,
  trackTwist: number | undefined,
): VehicleBalance {
  const { body, likely, index, drawn, wind, highest } = rolling;
  const axles = wheelLoads(likely, { side: 0, normal: GRAVITY, rear: 0 });
  const level = { curvature: 0, cant: 0 };
  const thinnest = (m: Margins, speed: Float64Array | undefined): Thinnest => {
    const j = leastAt(m.share);
    const under = { curvature: ground.curvature[j], cant: ground.cant[j] };
    const v = speed?.[j] ?? 0;
    return {
      at: grid[j],
      speed: v,
      // At rest as the draws have it there: whether it stands at all hangs on that.
      share: speed ? m.share[j] : shareAtRest(drawn, under),
      upright: m.upright[j],
      lift: carefulLeans(drawn, under, v),
    };
  };
  const lightest = Math.min(...axles.flatMap((a) => [a.left, a.right]));
  const together = leastTogether(drawn, { body, wind }, ground, grid, permitted);
  const twist = trackTwist === undefined ? undefined : checkTwist(body.vehicle, trackTwist, lightest);
  return {
    index,
    vehicle: body.vehicle.id,
    mass: likely.mass,
    centre: centreHeight(likely),
    highest,
    centreKnown: tareCentre(body.vehicle)?.known ?? false,
    axles,
    evenAcross: Math.min(...axles.map((a) => Math.min(a.left, a.right) / ((a.left + a.right) / 2))),
    evenAlong: Math.min(...likely.groupMass.map((m, i) => m / likely.mass / likely.rollShare[i])),
    lift: carefulLeans(drawn, level, 0, false, true),
    over: carefulLeans(drawn, level, 0, true, true),
    running: thinnest(along.running, permitted),
    standing: thinnest(along.standing, undefined),
    ...(together ? { together } : {}),
    ...(twist ? { twist } : {}),
  };
}

function leastAt(values: Float64Array): number {
  let j = 0;
  for (let i = 1; i < values.length; i++) if (values[i] < values[j]) j = i;
  return j;
}
