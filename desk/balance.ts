/** Balance looked at closely: one outing's margins, what-ifs, the tilt test and the block test. */

import { turnFindings, turnOf } from '../engine/answer/chainage.ts';
import { ranked } from '../engine/answer/verdict.ts';
import { GRAVITY } from '../engine/base/constants.ts';
import type { Quantity } from '../engine/base/quantity.ts';
import { type OutingContext, openOuting } from '../engine/outing/open.ts';
import type { Outing } from '../engine/outing/types.ts';
import { windAcross } from '../engine/outing/wind.ts';
import { askBalance, type BalanceData } from '../engine/questions/balance/ask.ts';
import { type Body, leaning, riderPoint } from '../engine/questions/balance/body.ts';
import {
  type BodyDraws,
  drawBodies,
  type People,
  peopleIn,
  tipsOf,
} from '../engine/questions/balance/draws.ts';
import { MOST_UNLOADING, POOREST_TWIST } from '../engine/questions/balance/limits.ts';
import { standing, steppingOff } from '../engine/questions/balance/moved.ts';
import { centreFromTilt, type TiltResult } from '../engine/questions/balance/tilt.ts';
import {
  ballastFor,
  leans,
  lowerSeatsFor,
  momentToLift,
  speedWhileLeaning,
  type Under,
} from '../engine/questions/balance/tipping.ts';
import { type BlockJudgement, type BlockTest, judgeBlock } from '../engine/questions/balance/twist.ts';
import { type AxleLoad, type Push, rollMoment, wheelLoads } from '../engine/questions/balance/wheels.ts';
import { windMoment } from '../engine/questions/balance/wind.ts';
import type { Finding } from '../engine/questions/finding.ts';
import { gridOf } from '../engine/questions/speed/map.ts';

export interface BalanceView {
  readonly context: OutingContext;
  readonly findings: readonly Finding[];
  /** Chainages here are in the running direction; `at` turns them into the line's own. */
  readonly data: BalanceData;
  readonly at: (s: number) => number;
}

export function lookAtBalance(outing: Outing): BalanceView {
  const context = openOuting(outing);
  const { findings, data } = askBalance(context, gridOf(context.line.length), undefined, true);
  return { context, findings: ranked(turnFindings(outing, findings)), data, at: turnOf(outing) };
}

/** A vehicle's cross-section in one motion, with people who lean. */
export interface SectionAsk {
  readonly index: number;
  /** m/s */
  readonly speed: number;
  readonly under: Under;
  /** How far each rider's centre of gravity is shifted to the left, m, by rider id. */
  readonly lean: Readonly<Record<string, number>>;
}

export interface Section {
  readonly body: Body;
  readonly side: number;
  readonly normal: number;
  /** Where the resultant meets the plane of the rails, m to the left of the middle. */
  readonly meets: number;
  /** Load of all wheels of one side, N. */
  readonly left: number;
  readonly right: number;
  /** Every axle, front first, N. */
  readonly axles: readonly AxleLoad[];
  /** Lightest wheel ÷ its load standing level and upright. */
  readonly share: number;
  readonly state: 'all wheels down' | 'a wheel lifts' | 'goes over';
}

/** One draw in a hundred: the people and things of the vehicle as they lift its first wheel. */
const peopleTold = (drawn: BodyDraws): People => peopleIn(drawn, tipsOf(drawn).at);

/** Undefined where nothing bounds the centre of gravity. */
export function sectionOf(context: OutingContext, ask: SectionAsk): Section | undefined {
  const { line, loaded, outing } = context;
  const vehicle = loaded.vehicles[ask.index];
  const drawn = drawBodies(vehicle, line.contactWidth, outing.assumed.riderCentre);
  if (!drawn) return undefined;
  const { body: upright, masses } = peopleTold(drawn);
  const moment = vehicle.riders.reduce((sum, r, i) => sum + masses[i] * (ask.lean[r.rider.id] ?? 0), 0);
  const body = leaning(upright, moment);
  const felt = ask.speed * ask.speed * ask.under.curvature;
  const side = GRAVITY * Math.sin(ask.under.cant) - felt * Math.cos(ask.under.cant);
  const normal = GRAVITY * Math.cos(ask.under.cant) + felt * Math.sin(ask.under.cant);
  const gale = windMoment(vehicle, windAcross(outing.conditions), outing.assumed.wind);
  // The wind blows the worse way.
  const worse = rollMoment(body, { side, normal, rear: 0 }) < 0 ? -gale : gale;
  const wind: Push[] = gale === 0 ? [] : [{ at: 0, height: 1, left: worse, rear: 0 }];
  const axles = wheelLoads(body, { side, normal, rear: 0 }, wind);
  const still = wheelLoads(upright, { side: 0, normal: GRAVITY, rear: 0 });
  const left = axles.reduce((sum, a) => sum + a.left, 0);
  const right = axles.reduce((sum, a) => sum + a.right, 0);
  const share = Math.min(...axles.flatMap((a, i) => [a.left / still[i].left, a.right / still[i].right]));
  return {
    body,
    side,
    normal,
    meets: rollMoment(body, { side, normal, rear: 0 }, wind) / (body.mass * normal),
    left,
    right,
    axles,
    share,
    state: Math.min(left, right) <= 0 ? 'goes over' : share <= 0 ? 'a wheel lifts' : 'all wheels down',
  };
}

/** Node of the grid where a vehicle is worst off on the run. @param found its place in the list of what is known */
export const worstNode = ({ data }: BalanceView, found: number): number =>
  Math.max(0, data.grid.indexOf(data.vehicles[found].running.at));

/** Curve and cant under it while the train's head is at a node. */
export const underAt = ({ data }: BalanceView, found: number, node: number): Under => ({
  curvature: data.grounds[found].curvature[node],
  cant: data.grounds[found].cant[node],
});

/** What would help one vehicle in the place and motion that is worst for it. */
export interface WhatIf {
  readonly place: Under & { readonly speed: number; readonly at: number };
  /** kg at the height asked for, so that no wheel lifts; undefined: no amount so high up helps. */
  readonly ballast?: number;
  /** m by which all seats must be lower for the same. */
  readonly lowerSeats?: number;
  /** m/s at which a wheel lifts with that lean. */
  readonly speed: number;
  /** Lean that lifts a wheel once the heaviest rider stands up, m. */
  readonly standingUp?: number;
  /** How far out, m from the middle, the heaviest rider may put a foot with all their weight, standing level. */
  readonly stepOff?: number;
}

/** @param lean of the heaviest rider, outward, m @param height of the ballast, m above the rail */
export function whatIf(view: BalanceView, index: number, lean: number, height: number): WhatIf | undefined {
  const { data } = view;
  const found = data.rolling.findIndex((r) => r.index === index);
  if (found < 0) return undefined;
  const { running } = data.vehicles[found];
  const under = underAt(view, found, worstNode(view, found));
  const { body: upright, masses, wind } = peopleTold(data.rolling[found].drawn);
  const heaviest = Math.max(0, ...masses);
  // Leaning to the side that is worse off there.
  const body = [1, -1]
    .map((sign) => leaning(upright, sign * heaviest * lean))
    .reduce((a, b) =>
      momentToLift(a, under, running.speed, false, wind) <= momentToLift(b, under, running.speed, false, wind)
        ? a
        : b,
    );
  const ballast = ballastFor(body, height, under, running.speed, 0, wind);
  const people = masses.reduce((sum, m) => sum + m, 0);
  const lowerSeats = lowerSeatsFor(body, people, under, running.speed, 0, wind);
  const up = leans(
    standing(upright, heaviest, view.context.outing.assumed.standingRise.high),
    masses,
    under,
    running.speed,
    false,
    wind,
  ).one;
  return {
    place: { ...under, speed: running.speed, at: view.at(running.at) },
    speed: speedWhileLeaning(upright, heaviest, lean, under, wind),
    ...(ballast === undefined ? {} : { ballast }),
    ...(lowerSeats === undefined ? {} : { lowerSeats }),
    ...(up === undefined ? {} : { standingUp: up }),
    ...(heaviest > 0 ? { stepOff: steppingOff(upright, heaviest, 0, 0, wind) / heaviest } : {}),
  };
}

/** Height of the centre of gravity from a tilt test, empty or with the people and things of the outing. */
export function tiltTest(
  { context }: BalanceView,
  index: number,
  angle: Quantity,
  base: number,
  loaded: boolean,
): TiltResult | undefined {
  const { vehicle, riders } = context.loaded.vehicles[index];
  const things = vehicle.loads.map((l) => ({ ...l, mass: l.mass.value }));
  const people = loaded ? riders.map((r) => riderPoint(r, context.outing.assumed.riderCentre, 0)) : [];
  return centreFromTilt(vehicle, { angle, base, aboard: [...things, ...people] });
}

export interface BlockAnswer extends BlockJudgement {
  /** Track twist judged against, m/m, and whether the line's own is known. */
  readonly twist: number;
  readonly known: boolean;
  readonly most: number;
}

/** The block test judged against the line's twist, or the poorest published class where it is not known. */
export function blockTest({ context, data }: BalanceView, index: number, test: BlockTest): BlockAnswer {
  const twist = data.trackTwist ?? POOREST_TWIST.value;
  return {
    ...judgeBlock(context.loaded.vehicles[index].vehicle, twist, test),
    twist,
    known: data.trackTwist !== undefined,
    most: MOST_UNLOADING.value,
  };
}
