/** The couplers of a train along its line. */
import { pick } from '../../base/spread.ts';
import type { AssumedValues } from '../assumed.ts';
import { layPlan, type Plan } from '../line/plan.ts';
import type { Line } from '../line/types.ts';
import type { Coupling, Vehicle } from '../vehicle/types.ts';
import { frontEnd, keyOf, type PairShape, rearEnd } from './bend.ts';
import { type Bends, layBends, reachOf } from './bends.ts';

type AssumedCoupler = AssumedValues['coupler'];

export interface GapBends {
  readonly pair: PairShape;
  readonly bends: Bends;
}

export interface TrainBends {
  readonly plan: Plan;
  readonly gaps: readonly GapBends[];
}

/** Where two vehicles meet, each with its coupling there. */
export interface Joint {
  readonly ahead: Vehicle;
  readonly behind: Vehicle;
}

export const jointsOf = (vehicles: readonly Vehicle[]): Joint[] =>
  vehicles.slice(1).map((behind, gap) => ({ ahead: vehicles[gap], behind }));

const shankOf = ({ shank }: Coupling, gauge: number, assumed: AssumedCoupler, position: number): number =>
  shank ?? gauge * pick(assumed.shank, position);

/** @param position of shanks that nobody stated between their bounds, −1 … 1 */
export const pairOf = ({ ahead, behind }: Joint, assumed: AssumedCoupler, position: number): PairShape => ({
  ahead: rearEnd(ahead, shankOf(ahead.rear, ahead.gauge, assumed, position)),
  behind: frontEnd(behind, shankOf(behind.front, behind.gauge, assumed, position)),
});

/** Equal pairs are laid once. */
export function bendsOf(line: Line, pairs: readonly PairShape[]): TrainBends {
  const reach = pairs.reduce((most, p) => Math.max(most, reachOf(p)), 0);
  const plan = layPlan(line, -reach, line.length + reach);
  const laid = new Map<string, Bends>();
  const gaps = pairs.map((pair) => {
    const key = keyOf(pair);
    const bends = laid.get(key) ?? layBends(line, plan, pair);
    laid.set(key, bends);
    return { pair, bends };
  });
  return { plan, gaps };
}

/** How far a coupler swings to one side, rad, at the least; absent: not stated. Side play needs the shank's length. */
export function swingOf({ swing, sidePlay, shank }: Coupling): number | undefined {
  if (swing) return swing.low;
  if (sidePlay === undefined || shank === undefined) return undefined;
  return Math.asin(Math.min(1, sidePlay / shank));
}
