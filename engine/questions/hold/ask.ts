/** What holding has to say: does the standing train stay where it stands? */

import { amount } from '../../base/quantity.ts';
import type { SumRef } from '../../base/sum.ts';
import { type Prepared, potentialOf } from '../../motion/prepare.ts';
import type { RailState } from '../../things/rail.ts';
import type { BrakeGear } from '../../things/vehicle/types.ts';
import type { Finding } from '../finding.ts';
import { makeFinding } from '../make.ts';
import type { Findings } from '../question.ts';
import { crewGears, gradeSum, hardestStand, holdingForce, parkedHold, standsOnRails } from './hold.ts';
import type { HoldResult } from './types.ts';

export function askHolding({ context, air }: Prepared): Findings<HoldResult> {
  const { outing, line, loaded } = context;
  const stands = standsOnRails(context, potentialOf(line, loaded, 0, 0.5, 0), outing.conditions.railState);
  const holdOn = (rail: RailState, counts: (gear: BrakeGear, vehicle: number) => boolean): number =>
    holdingForce(loaded, outing.assumed, outing.assumed.adhesion[rail], air, counts, -1);
  const tightOn = (rail: RailState): number => holdOn(rail, crewGears(loaded));
  const loosest = hardestStand(stands, tightOn);
  const stand =
    tightOn(loosest.rail) < loosest.pull
      ? loosest
      : hardestStand(stands, (rail) => parkedHold(loaded, (counts) => holdOn(rail, counts)).crew);
  const hold = (counts: (gear: BrakeGear, vehicle: number) => boolean): number => holdOn(stand.rail, counts);
  const data: HoldResult = {
    pull: stand.pull,
    at: stand.at,
    ...parkedHold(loaded, hold),
    tight: hold(crewGears(loaded)),
  };
  return {
    findings: holdFindings(
      data,
      gradeSum(loaded, stand),
      outing.host.parkingBrakeRequired,
      outing.train.vehicles,
    ),
    data,
  };
}

function holdFindings(
  { pull, at, crew, everybody, tight }: HoldResult,
  sum: SumRef,
  required: { readonly value: boolean; readonly source: string } | undefined,
  vehicles: readonly { readonly brakes: readonly BrakeGear[] }[],
): Finding[] {
  const details = (found: number) => ({
    where: { from: at, to: at },
    found: amount(found, 'force'),
    required: amount(pull, 'force'),
    margin: pull > 0 ? found / pull - 1 : 1,
    facts: { everybody: amount(everybody, 'force'), riders: everybody >= pull ? 'hold' : 'do not hold' },
    sum,
    sure: 'assumed' as const,
    source: 'engine',
  });
  const findings: Finding[] = [];
  if (tight < pull) findings.push(makeFinding('does-not-hold', 'forbids', 'holding', details(tight)));
  else if (crew < pull) {
    findings.push(makeFinding('holds-only-while-brake-is-tight', 'limits', 'holding', details(crew)));
  }
  if (!vehicles.some((v) => v.brakes.some((b) => b.parking))) {
    const forbids = required?.value === true;
    findings.push(
      makeFinding('no-parking-brake', forbids ? 'forbids' : 'limits', 'holding', {
        source: required?.source ?? 'common practice, no source',
      }),
    );
  }
  return findings;
}
