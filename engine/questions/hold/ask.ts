/** What holding has to say: does the standing train stay where it stands? */

import { amount } from '../../base/quantity.ts';
import type { SumRef } from '../../base/sum.ts';
import { type Prepared, potentialOf } from '../../motion/prepare.ts';
import type { BrakeGear } from '../../things/vehicle/types.ts';
import type { Finding } from '../finding.ts';
import { makeFinding } from '../make.ts';
import type { Findings } from '../question.ts';
import {
  crewGears,
  gradeSum,
  hardestOf,
  type Puts,
  parkedHold,
  parking,
  type Stand,
  standsOn,
} from './hold.ts';
import type { HoldResult } from './types.ts';

export function askHolding({ context }: Prepared): Findings<HoldResult> {
  const { outing, line, loaded } = context;
  const stands = standsOn(context, potentialOf(line, loaded, 0, 0.5, 0), outing.conditions.railState);
  const tight = (s: Stand): number => s.hold(crewGears(loaded)) - s.pull;
  const loosest = hardestOf(stands, tight);
  const stand =
    tight(loosest) < 0 ? loosest : hardestOf(stands, (s) => s.hold(parking(loaded).crew) - s.pull);
  const data: HoldResult = {
    pull: stand.pull,
    at: stand.at,
    ...parkedHold(loaded, stand.hold),
    tight: stand.hold(crewGears(loaded)),
  };
  const first = (puts: Puts): Unmeasured | undefined => {
    const [one] = stand.unmeasured(puts);
    return one && { vehicle: loaded.vehicles[one.vehicle].vehicle.id, gear: one.gear.id };
  };
  return {
    findings: holdFindings(
      data,
      { tight: first(crewGears(loaded)), parked: first(parking(loaded).crew) },
      gradeSum(loaded, stand),
      outing.host.parkingBrakeRequired,
      outing.train.vehicles,
    ),
    data,
  };
}

/** A brake whose force nobody knows. */
interface Unmeasured {
  readonly vehicle: string;
  readonly gear: string;
}

function holdFindings(
  { pull, at, crew, everybody, tight }: HoldResult,
  unmeasured: Readonly<Record<'tight' | 'parked', Unmeasured | undefined>>,
  sum: SumRef,
  required: { readonly value: boolean; readonly source: string } | undefined,
  vehicles: readonly { readonly brakes: readonly BrakeGear[] }[],
): Finding[] {
  const details = (found: number) => ({
    where: { from: at, to: at },
    found: amount(found, 'force'),
    required: amount(pull, 'force'),
    margin: pull > 0 ? found / pull - 1 : 1,
    facts: {
      everybody: amount(everybody, 'force'),
      riders: everybody >= pull ? ('hold' as const) : ('do not hold' as const),
    },
    sum,
    sure: 'assumed' as const,
    source: 'engine',
  });
  /** What nobody has measured may hold. */
  const asks = (one: Unmeasured | undefined) =>
    one && {
      where: { vehicle: one.vehicle, from: at, to: at },
      measure: `vehicle.brakes.${one.gear}.force`,
    };
  const findings: Finding[] = [];
  if (tight < pull) {
    const severity = unmeasured.tight ? 'unknown' : 'forbids';
    findings.push(
      makeFinding('does-not-hold', severity, 'holding', { ...details(tight), ...asks(unmeasured.tight) }),
    );
  } else if (crew < pull) {
    findings.push(
      makeFinding('holds-only-while-brake-is-tight', 'limits', 'holding', {
        ...details(crew),
        ...asks(unmeasured.parked),
      }),
    );
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
