/** What the brakes still do without their supply: how often they can be put on, how long they hold, which are lost. */
import { amount } from '../../base/quantity.ts';
import type { OutingContext } from '../../outing/open.ts';
import type { SupplyLoss } from '../../things/brake/kinds/kind.ts';
import type { Reserve } from '../../things/brake/reserve.ts';
import { gearStates } from '../../things/brake/system.ts';
import type { BrakeGear } from '../../things/vehicle/types.ts';
import type { Finding } from '../finding.ts';
import { makeFinding } from '../make.ts';
import type { Standing } from './standing.ts';
import { idOf } from './vehicle-id.ts';

export interface WithoutSupply {
  readonly reserves: readonly Reserve[];
  readonly standing: Standing;
  readonly losses: readonly {
    readonly vehicle: number;
    readonly gear: BrakeGear;
    readonly loss: SupplyLoss;
  }[];
}

export const withoutSupplyFindings = (context: OutingContext, left: WithoutSupply): Finding[] => [
  ...few(context, left.reserves),
  ...leaks(context, left.standing),
  ...losses(context, left),
];

/** Fewer full applications than are wanted of a reservoir. */
function few(context: OutingContext, kept: readonly Reserve[]): Finding[] {
  const { value, source } = context.outing.assumed.practice.applications;
  const least = (r: Reserve): number => (r.gear ? 1 : value);
  const low = kept.filter((r) => r.full < least(r)).sort((a, b) => a.full - b.full);
  const worst = low[0];
  if (!worst) return [];
  return [
    makeFinding('few-applications', 'limits', 'brakes', {
      where: { vehicle: idOf(context, worst.vehicle) },
      found: amount(worst.full, 'count'),
      required: amount(least(worst), 'count'),
      margin: worst.full / least(worst) - 1,
      facts: { kind: worst.kind, useful: worst.useful, reservoirs: low.length },
      source,
    }),
  ];
}

/** Held by brakes that leak: how long. Whether it holds at all is holding's question. */
function leaks(
  context: OutingContext,
  { time, pull, at, sum, tight, parking, unmeasured }: Standing,
): Finding[] {
  if (pull <= parking || tight < pull || time === Infinity) return [];
  const stand = context.outing.assumed.practice.stand.value;
  const where = { from: at, to: at };
  if (time === 0 && unmeasured.length > 0) {
    const { vehicle, gear } = unmeasured[0];
    return [
      makeFinding('leak-unknown', 'limits', 'brakes', {
        where: { ...where, vehicle: idOf(context, vehicle) },
        required: amount(stand, 'time'),
        facts: { gear: gear.name, kind: gear.kind, gears: unmeasured.length },
        sum,
        measure: `vehicle.brakes.${gear.id}.rigging.leakRate`,
        source: 'vehicle',
        sure: 'assumed',
      }),
    ];
  }
  return [
    makeFinding('leaks-off-before-time', time < stand ? 'limits' : 'notes', 'brakes', {
      where,
      found: amount(time, 'time'),
      required: amount(stand, 'time'),
      margin: time / stand - 1,
      facts: { pull: amount(pull, 'force'), unmeasured: unmeasured.length },
      sum,
      source: 'leak test and straight-line loss',
    }),
  ];
}

/** Brakes that answer today but are lost with the hose or the engine. */
function losses(context: OutingContext, { losses: all, reserves: kept }: WithoutSupply): Finding[] {
  const answers = new Set(gearStates(context.outing).flatMap((s) => (s.answers ? [s.gear] : [])));
  const bad = all.filter(
    ({ gear, loss }) => answers.has(gear) && (loss.parted === 'lost' || loss.parted === 'unknown'),
  );
  const kinds = [...new Set(bad.map((b) => b.gear.kind))];
  return kinds.map((kind) => {
    const first = bad.find((b) => b.gear.kind === kind);
    const unknown = first?.loss.parted === 'unknown';
    const held = kept.find((r) => r.kind === kind && !r.gear);
    return makeFinding(
      unknown ? 'supply-loss-unknown' : 'brake-lost-with-hose',
      unknown ? 'limits' : 'notes',
      'brakes',
      {
        where: first ? { vehicle: idOf(context, first.vehicle) } : {},
        facts: {
          kind,
          cars: bad.filter((b) => b.gear.kind === kind).length,
          engineFails: first?.loss.engineFails ?? 'unknown',
          ...(held ? { applications: held.full } : {}),
        },
        ...(unknown && first ? { measure: `vehicle.brakes.${first.gear.id}.onSupplyLoss` } : {}),
        source: 'common practice, no source',
      },
    );
  });
}
