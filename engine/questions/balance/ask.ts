/**
 * Do the cars stay up? Loads on trucks and wheels, leaning, curves, twist and flange climb, said as findings,
 * with the speed ceilings that follow for the speed map.
 */

import type { OutingContext } from '../../outing/open.ts';
import type { Finding } from '../finding.ts';
import type { Ceiling, Findings } from '../question.ts';
import { hostCeilings, runningSpeed } from '../speed/ceilings.ts';
import { type CurveSpeeds, curveSpeeds } from './curves.ts';
import { type BalanceLook, lookAtBalance } from './look.ts';
import type { SpeedLine } from './margins.ts';
import { climbFindings } from './say-climb.ts';
import { centreFindings, loadFindings, twistFindings } from './say-load.ts';
import { curveFindings, leanFindings, standingFindings } from './say-tip.ts';

export interface BalanceData extends BalanceLook {
  readonly curves: readonly CurveSpeeds[];
}

export interface BalanceAnswer extends Findings<BalanceData> {
  readonly ceilings: readonly Ceiling[];
}

/**
 * @param grid head chainages, m, growing
 * @param wanted speed that would be run at without these limits, m/s by place; absent: the host's and the
 *   planned speed
 * @param all look also at what the answer does not need: the train pulled and pushed
 */
export function askBalance(
  context: OutingContext,
  grid: Float64Array,
  wanted: Float64Array = runningSpeed(context, grid, hostCeilings(context, grid)),
  all = false,
): BalanceAnswer {
  const look = lookAtBalance(context, grid, wanted, all);
  const data: BalanceData = { ...look, curves: curveSpeeds(context, look) };
  const findings: Finding[] = [
    ...centreFindings(context, data),
    ...standingFindings(context, data),
    ...curveFindings(context, data),
    ...leanFindings(context, data),
    ...loadFindings(context, data),
    ...twistFindings(context, data),
    ...climbFindings(context, data),
  ];
  return { findings, data, ceilings: balanceCeilings(context, look) };
}

/** One ceiling for each vehicle that sets the speed somewhere. */
export function balanceCeilings(context: OutingContext, look: BalanceLook): Ceiling[] {
  const flange = look.flanges.ceiling;
  return [
    ...split(context, look.ceiling, 'balance', look.required.source),
    ...split(context, flange, 'flange', 'Nadal 1896; 49 CFR 213.333'),
  ];
}

function split(
  { loaded }: OutingContext,
  { speed, by }: SpeedLine,
  kind: 'balance' | 'flange',
  source: string,
): Ceiling[] {
  const setters = [...new Set(by)].filter((i) => i >= 0).sort((a, b) => a - b);
  return setters.map((i) => ({
    reason: { kind, what: loaded.vehicles[i].vehicle.name, source },
    speed: speed.map((v, j) => (by[j] === i ? v : Infinity)),
  }));
}
