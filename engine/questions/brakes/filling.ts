/** How the brakes fill and empty along the train, and whether what feeds them is large enough. */
import { amount } from '../../base/quantity.ts';
import type { SumRef } from '../../base/sum.ts';
import type { OutingContext } from '../../outing/open.ts';
import type { GearFill, TrainFill } from '../../things/brake/fill.ts';
import { airBrakeOf, isAirKind, isVacuumKind } from '../../things/brake/kinds/index.ts';
import { Levels } from '../../things/brake/levels.ts';
import { cylinderParts, describesFilling } from '../../things/brake/parts.ts';
import { suppliedKinds } from '../../things/brake/system.ts';
import { gearTimes } from '../../things/brake/times.ts';
import type { MissingPart } from '../../things/brake/train-air.ts';
import type { BrakeGear } from '../../things/vehicle/types.ts';
import type { Finding } from '../finding.ts';
import { makeFinding } from '../make.ts';
import { idOf } from './vehicle-id.ts';

export interface Filling {
  readonly apply: readonly TrainFill[];
  /** Of the same kinds, in the same order. */
  readonly release: readonly TrainFill[];
}

const SOURCE = 'filling of the brake from its parts';

export const fillingFindings = (context: OutingContext, { apply, release }: Filling): Finding[] => [
  ...apply.flatMap((f) => [
    ...slow(context, f),
    ...short(context, f),
    ...strong(context, f),
    ...missing(context, f),
  ]),
  ...release.flatMap((f, i) => [
    ...slowRelease(context, f),
    ...missing(context, { ...f, missing: f.missing.filter((m) => !knownMissing(apply[i], m)) }),
  ]),
];

/** Later than the stop reckons with, or the rear much later than the front. */
function slow(context: OutingContext, { gears }: TrainFill): Finding[] {
  const { assumed } = context.outing;
  const spread = assumed.practice['fill-spread'];
  const findings: Finding[] = [];
  for (const { vehicle, gear, t90 } of gears) {
    const { deadTime: dead, buildUp: build } = gearTimes(gear, context.outing.train.vehicles, assumed);
    const reckoned = dead.high + 0.9 * build.high;
    // One that never comes on is not late: that it gives nothing is said below.
    if (t90 <= reckoned || t90 === Infinity || gear.buildUp === undefined) continue;
    findings.push(
      makeFinding('brake-slower-than-stated', 'limits', 'brakes', {
        where: { vehicle: idOf(context, vehicle) },
        found: amount(t90, 'time'),
        required: amount(reckoned, 'time'),
        margin: 1 - t90 / reckoned,
        facts: { gear: gear.name, kind: gear.kind },
        source: SOURCE,
      }),
    );
  }
  const timed = gears.filter((g) => Number.isFinite(g.t90)).sort((a, b) => a.t90 - b.t90);
  const last = timed.at(-1);
  if (last && last.t90 - timed[0].t90 > spread.value) {
    findings.push(
      makeFinding('brake-slow-to-fill', 'notes', 'brakes', {
        where: { vehicle: idOf(context, last.vehicle) },
        found: amount(last.t90, 'time'),
        required: amount(timed[0].t90 + spread.value, 'time'),
        facts: { kind: last.gear.kind, first: amount(timed[0].t90, 'time'), t10: amount(last.t10, 'time') },
        source: SOURCE,
      }),
    );
  }
  return findings;
}

/** The parts give more than the working pressure that the force is reckoned with: wheels may slide sooner. */
function strong(context: OutingContext, { gears, kind }: TrainFill): Finding[] {
  const strong = context.outing.assumed.practice['over-pressure'].value;
  const over = gears.filter((g) => g.ofWorking > strong).sort((a, b) => b.ofWorking - a.ofWorking);
  const worst = over[0];
  if (!worst) return [];
  return [
    makeFinding('brake-stronger-than-stated', 'limits', 'brakes', {
      where: { vehicle: idOf(context, worst.vehicle) },
      found: amount(worst.ofWorking, 'ratio'),
      required: amount(strong, 'ratio'),
      margin: strong / worst.ofWorking - 1,
      facts: { kind, cars: over.length, pressure: amount(worst.pressure, pressureKind(worst.gear)) },
      ...pressureSum(context, worst.gear),
      source: SOURCE,
    }),
  ];
}

/** Reservoir or chamber too small for the working pressure that the force is reckoned with: the worst car. */
function short(context: OutingContext, { gears, kind }: TrainFill): Finding[] {
  const enough = context.outing.assumed.practice.reservoir.value;
  const small = gears.filter((g) => g.ofWorking < enough).sort((a, b) => a.ofWorking - b.ofWorking);
  const worst = small[0];
  if (!worst) return [];
  // Where the stop already reckons with what is left, it is worth knowing but limits nothing more.
  const reckoned = small.every((g) => g.gear.forceShare !== undefined);
  return [
    makeFinding('reservoir-too-small', reckoned ? 'notes' : 'limits', 'brakes', {
      where: { vehicle: idOf(context, worst.vehicle) },
      found: amount(worst.ofWorking, 'ratio'),
      required: amount(enough, 'ratio'),
      margin: worst.ofWorking / enough - 1,
      facts: {
        kind,
        cars: small.length,
        pressure: amount(worst.pressure, pressureKind(worst.gear)),
      },
      ...pressureSum(context, worst.gear),
      source: SOURCE,
    }),
  ];
}

/** Where the air of a car's own reservoir or chamber ends up; of other kinds the pipe decides. */
function pressureSum({ outing, air: { pressure: air } }: OutingContext, gear: BrakeGear): { sum?: SumRef } {
  const parts = cylinderParts(gear);
  const { vehicles } = outing.train;
  const charge = vehicles.find((v) => suppliedKinds(v).includes(gear.kind))?.brakeSupply?.pressure;
  const { reservoirVolume: reservoir, chamberVolume: chamber } = gear.rigging ?? {};
  if ('missing' in parts || !isAirKind(gear.kind)) return {};
  const { cylinder } = airBrakeOf(gear.kind);
  const { swept, clearance, strokeAt: spring } = parts.piston;
  if (cylinder === 'triple valve' && charge !== undefined && reservoir !== undefined) {
    const inputs = { reduction: charge, charge, reservoir, swept, clearance, spring, air };
    return { sum: { id: 'cylinder-from-reduction', inputs, differs: 'part' } };
  }
  if (cylinder === 'ball valve' && chamber !== undefined) {
    const vacuum = new Levels(gear.kind, air, vehicles, undefined).working();
    return {
      sum: { id: 'vacuum-chamber', inputs: { vacuum, chamber, swept, spring, air }, differs: 'part' },
    };
  }
  return {};
}

const pressureKind = (gear: BrakeGear): 'vacuum' | 'gaugePressure' =>
  isVacuumKind(gear.kind) ? 'vacuum' : 'gaugePressure';

/** Parts still to be measured, where the owner has begun to describe them; else the assumed ramp stands. */
function missing(context: OutingContext, fill: TrainFill): Finding[] {
  return fill.missing.map(({ vehicle, gear, part }) => {
    const begun = gear !== undefined && describesFilling(gear);
    const field = gear ? `vehicle.brakes.${gear.id}.${part}` : `vehicle.${part}`;
    return makeFinding('brake-part-unknown', begun ? 'unknown' : 'notes', 'brakes', {
      where: { vehicle: idOf(context, vehicle) },
      facts: { part, kind: fill.kind },
      measure: field,
      source: 'vehicle',
      sure: 'assumed',
    });
  });
}

const knownMissing = (fill: TrainFill, part: MissingPart): boolean =>
  fill.missing.some((m) => m.vehicle === part.vehicle && m.part === part.part);

function slowRelease(context: OutingContext, { gears, kind }: TrainFill): Finding[] {
  const time = (g: GearFill): number => Math.max(g.t90, g.recharged ?? 0);
  const worth = context.outing.assumed.practice.release;
  const slowest = [...gears].sort((a, b) => time(b) - time(a))[0];
  if (!slowest || time(slowest) <= worth.value) return [];
  const ends = Number.isFinite(time(slowest));
  return [
    makeFinding('brake-slow-to-release', ends ? 'notes' : 'limits', 'brakes', {
      where: { vehicle: idOf(context, slowest.vehicle) },
      ...(ends ? { found: amount(time(slowest), 'time') } : {}),
      required: amount(worth.value, 'time'),
      facts: { kind, ends },
      source: SOURCE,
    }),
  ];
}
