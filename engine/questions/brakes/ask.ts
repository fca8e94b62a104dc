/**
 * What the brakes have to say: how they fill along the train, whether the reservoirs are large enough, how
 * evenly the train is braked and what slides first, how long it stands, what happens without the supply.
 */

import { GRAVITY } from '../../base/constants.ts';
import { amount } from '../../base/quantity.ts';
import { pick } from '../../base/spread.ts';
import type { SumRef } from '../../base/sum.ts';
import { asWritten, type OutingContext, timesFound } from '../../outing/open.ts';
import { worstRail } from '../../outing/rails.ts';
import { fillTrain, type GearFill, type TrainFill } from '../../things/brake/fill.ts';
import {
  type AirKind,
  airBrakeOf,
  airKinds,
  isAirKind,
  isVacuumKind,
} from '../../things/brake/kinds/index.ts';
import type { SupplyLoss } from '../../things/brake/kinds/kind.ts';
import { Levels } from '../../things/brake/levels.ts';
import { cylinderParts, describesFilling } from '../../things/brake/parts.ts';
import { type Reserve, reserves, whenSupplyIsLost } from '../../things/brake/reserve.ts';
import { brakeRatios, type GroupRatio } from '../../things/brake/slide.ts';
import { gearStates, suppliedKinds } from '../../things/brake/system.ts';
import type { MissingPart } from '../../things/brake/train-air.ts';
import type { BrakeGear } from '../../things/vehicle/types.ts';
import { taken } from '../assumptions/taken.ts';
import type { Finding } from '../finding.ts';
import { makeFinding } from '../make.ts';
import type { Findings } from '../question.ts';
import { type Standing, standing } from './standing.ts';

export interface BrakeData {
  readonly apply: readonly TrainFill[];
  readonly release: readonly TrainFill[];
  /** First to slide first. */
  readonly ratios: readonly GroupRatio[];
  readonly reserves: readonly Reserve[];
  readonly standing: Standing;
  readonly losses: readonly {
    readonly vehicle: number;
    readonly gear: BrakeGear;
    readonly loss: SupplyLoss;
  }[];
}

const SOURCE = 'filling of the brake from its parts';

export function askBrakes(opened: OutingContext): Findings<BrakeData> {
  const context = asWritten(opened);
  const { outing, loaded, air } = context;
  const states = gearStates(outing);
  const answers = new Set(states.flatMap((s) => (s.answers ? [s.gear] : [])));
  const kinds = airKinds.filter((kind) =>
    states.some((s) => s.answers && s.gear.kind === kind && !s.gear.force),
  );
  const fill =
    (action: 'apply' | 'release') =>
    (kind: AirKind): TrainFill =>
      fillTrain(loaded, kind, action, air.pressure, outing.assumed.brakeParts);
  const data: BrakeData = {
    apply: kinds.map(fill('apply')),
    release: kinds.map(fill('release')),
    ratios: brakeRatios(loaded, outing.assumed, air, (gear) => answers.has(gear)),
    reserves: reserves(loaded, air.pressure),
    standing: standing(context),
    losses: states.map(({ vehicle, gear }) => ({ vehicle, gear, loss: whenSupplyIsLost(gear) })),
  };
  return {
    data,
    findings: [
      ...data.apply.flatMap((f) => [
        ...slow(context, f),
        ...short(context, f),
        ...strong(context, f),
        ...missing(context, f),
      ]),
      ...data.release.flatMap((f, i) => [
        ...slowRelease(context, f),
        ...missing(context, { ...f, missing: f.missing.filter((m) => !knownMissing(data.apply[i], m)) }),
      ]),
      ...uneven(context, data.ratios),
      ...slidesFirst(context, data.ratios),
      ...few(context, data.reserves),
      ...leaks(context, data.standing),
      ...losses(context, data),
      ...partsTaken(opened, data),
    ],
  };
}

/** What stands in where parts, and not a stopwatch, tell the times. */
function partsTaken(opened: OutingContext, { apply }: BrakeData): Finding[] {
  const { brakeParts } = opened.outing.assumed;
  const { vehicles } = opened.outing.train;
  const untimed = timesFound(opened).filter((t) => t.gear.deadTime === undefined);
  const names = (electric: boolean): string[] =>
    untimed
      .flatMap((t) =>
        (t.gear.kind === 'electric') === electric ? vehicles.filter((v) => v.id === t.vehicle) : [],
      )
      .map((v) => v.name);
  const byRule = apply.flatMap(({ gears }) => gears.filter((g) => g.assumed.length > 0));
  return [
    ...taken(
      'brake-parts/mechanical',
      'handle, valve and slack before the air counts',
      brakeParts.mechanical,
      names(false),
    ),
    ...taken(
      'brake-parts/electric-dead',
      'dead time of the electric brake',
      brakeParts.electricDead,
      names(true),
    ),
    ...taken(
      'brake-parts/by-rule',
      'volumes of the brake taken by rule',
      brakeParts.byRule,
      byRule.map((g) => vehicles[g.vehicle].name),
    ),
  ];
}

const idOf = ({ outing }: OutingContext, vehicle: number): string => outing.train.vehicles[vehicle].id;

/** Later than the stop reckons with, or the rear much later than the front. */
function slow(context: OutingContext, { gears }: TrainFill): Finding[] {
  const { assumed } = context.outing;
  const spread = assumed.practice['fill-spread'];
  const findings: Finding[] = [];
  for (const { vehicle, gear, t90 } of gears) {
    const dead = gear.deadTime ?? assumed.deadTime[gear.kind];
    const build = gear.buildUp ?? assumed.buildUp[gear.kind];
    const reckoned = dead.high + 0.9 * build.high;
    if (t90 <= reckoned || gear.buildUp === undefined) continue;
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
  const [first, last] = extremes(gears);
  if (first && last && last.t90 - first.t90 > spread.value) {
    findings.push(
      makeFinding('brake-slow-to-fill', 'notes', 'brakes', {
        where: { vehicle: idOf(context, last.vehicle) },
        found: amount(last.t90, 'time'),
        required: amount(first.t90 + spread.value, 'time'),
        facts: { kind: last.gear.kind, first: amount(first.t90, 'time'), t10: amount(last.t10, 'time') },
        source: SOURCE,
      }),
    );
  }
  return findings;
}

function extremes(gears: readonly GearFill[]): readonly [GearFill?, GearFill?] {
  const timed = gears.filter((g) => Number.isFinite(g.t90)).sort((a, b) => a.t90 - b.t90);
  return [timed[0], timed[timed.length - 1]];
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

/** Vehicles braked much more strongly than others for their weight. */
function uneven(context: OutingContext, ratios: readonly GroupRatio[]): Finding[] {
  if (ratios.length < 2) return [];
  const [strong, weak] = [ratios[0], ratios[ratios.length - 1]];
  const { value: most, source } = context.outing.assumed.practice.uneven;
  if (strong.vehicle === weak.vehicle || strong.loaded <= most * weak.loaded) return [];
  return [
    // Design advice: nothing is used up, so it carries no margin.
    makeFinding('brake-ratio-uneven', 'notes', 'brakes', {
      where: { vehicle: idOf(context, strong.vehicle) },
      found: amount(strong.loaded, 'ratio'),
      required: amount(most * weak.loaded, 'ratio'),
      facts: { weak: idOf(context, weak.vehicle), least: amount(weak.loaded, 'ratio') },
      sum: ratioSum(strong),
      source,
    }),
  ];
}

function slidesFirst(context: OutingContext, ratios: readonly GroupRatio[]): Finding[] {
  const first = ratios[0];
  if (!first) return [];
  const { outing } = context;
  const adhesion = outing.assumed.adhesion[worstRail(context, outing.conditions.railState)];
  const vehicle = outing.train.vehicles[first.vehicle];
  const low = pick(adhesion, -1);
  if (first.empty <= low && first.loaded <= low) return [];
  return [
    makeFinding('slides-first', 'notes', 'brakes', {
      where: { vehicle: vehicle.id },
      found: amount(first.loaded, 'ratio'),
      required: amount(low, 'ratio'),
      margin: low / first.loaded - 1,
      facts: {
        group: vehicle.groups[first.group].name,
        empty: amount(first.empty, 'ratio'),
        order: ratios
          .map((r) => `${outing.train.vehicles[r.vehicle].name}: ${groupName(context, r)}`)
          .join(', '),
      },
      sum: ratioSum(first),
      source: adhesion.source ?? 'rail state',
      sure: 'assumed',
    }),
  ];
}

/** Brake ratio of one group, loaded as today. */
const ratioSum = ({ force: { value }, loaded }: GroupRatio): SumRef => ({
  id: 'brake-ratio',
  inputs: { force: value, mass: value / loaded / GRAVITY },
});

const groupName = ({ outing }: OutingContext, r: GroupRatio): string =>
  outing.train.vehicles[r.vehicle].groups[r.group].name;

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
function losses(context: OutingContext, { losses: all, reserves: kept }: BrakeData): Finding[] {
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
