/**
 * Outings on which nearly every finding with a sum appears, and each such finding beside what its sum gives.
 * Runs by itself in a bundle too (tests/support/bundled.ts).
 */

import { exact } from '../../engine/base/quantity.ts';
import type { SumDiffers, SumOutcome } from '../../engine/base/sum.ts';
import { brakeForce, type StopModel } from '../../engine/motion/model.ts';
import { prepare } from '../../engine/motion/prepare.ts';
import { stopDistance, telling } from '../../engine/motion/stop.ts';
import { type OutingContext, openOuting, stopMargin } from '../../engine/outing/open.ts';
import type { Outing } from '../../engine/outing/types.ts';
import type { Finding } from '../../engine/questions/finding.ts';
import { evaluateSum, findSum } from '../../engine/sums/register.ts';
import { trainPull } from '../../engine/things/traction/pull.ts';
import { resistanceTerms } from '../../engine/things/train/resistance.ts';
import type { BrakeGear, Vehicle } from '../../engine/things/vehicle/types.ts';
import { brakedTrain } from './braked-trains.ts';
import { dressed, quickAnswer } from './dressed-outings.ts';
import { type Draw, drawer } from './random-outings.ts';

export interface FindingSum {
  readonly code: string;
  readonly id: string;
  readonly differs?: SumDiffers;
  readonly inputs: Readonly<Record<string, number>>;
  readonly outcome: SumOutcome;
  readonly finding: Finding;
  /** Cautious stop from the sum's speed where the finding says, m; of stops at a stated place alone. */
  readonly stop?: number;
  /** Deceleration by full brake alone on that scenario's own rail, before or after it is eased: least and most, m/s². */
  readonly brake?: readonly [number, number];
  /** Pull of the engines on a bad day at the speed found, N; of slow climbs alone. */
  readonly pull?: number;
  /** Margin kept ahead, m. */
  readonly margin: number;
  /** Rolling resistance that helps the standing train, N. */
  readonly free: number;
}

/** The cautious stop from there, and what full brake alone does of it. */
function stopBeside(
  cautious: StopModel,
  mass: number,
  at: number,
  speed: number,
): { stop: number; brake: [number, number] } {
  const model = telling(cautious, at, speed);
  const by = (force: Float64Array): number =>
    brakeForce(force, speed * Math.SQRT1_2) / (mass * model.massFactor);
  const [eased, early] = [by(model.force), by(model.early)];
  const brake: [number, number] = [Math.min(eased, early), Math.max(eased, early)];
  return { stop: stopDistance(model, at, speed), brake };
}

/** Sums left out have defaults that change nothing. */
export const neutral = ({ id, inputs }: Pick<FindingSum, 'id' | 'inputs'>): boolean =>
  (findSum(id)?.inputs ?? []).every(
    (s) => inputs[s.symbol] !== undefined || s.default === 0 || s.default === 1,
  );

export function sumsOf(
  outing: Outing,
  findings = everyFinding(outing),
  step = 1,
  samples = 40,
): FindingSum[] {
  const ready = prepare(openOuting(outing), step, samples);
  const { context } = ready;
  return findings.flatMap((finding): FindingSum[] => {
    const { sum, facts } = finding;
    if (!sum) return [];
    const formula = findSum(sum.id);
    if (!formula) throw new Error(`no sum ${sum.id}`);
    const at = 'at' in facts ? facts.at : undefined;
    return [
      {
        code: finding.code,
        ...sum,
        outcome: evaluateSum(formula, sum.inputs),
        finding,
        ...(sum.id === 'stopping-distance' && at
          ? stopBeside(
              ready.models(outing.conditions.railState).cautious,
              context.loaded.mass,
              at.si,
              sum.inputs['speed'],
            )
          : {}),
        ...(finding.code === 'slow-on-grade' ? { pull: pullAt(context, finding.found?.si ?? 0) } : {}),
        margin: stopMargin(context),
        free: resistanceTerms(context.loaded.vehicles, -1).a,
      },
    ];
  });
}

/** Engines here are driven on all wheels, so that their adhesion does not ask how steep it is. */
function pullAt({ outing: { assumed, conditions }, loaded }: OutingContext, speed: number): number {
  const adhesion = assumed.adhesion[conditions.railState];
  const ask = { speed: Math.max(speed, 0.05), adhesion, grade: 0, position: -1 };
  return trainPull(loaded, ask, assumed.engineHeight) ?? NaN;
}

/** What the answer finds, by its quickest way. */
const everyFinding = (outing: Outing): readonly Finding[] => quickAnswer(outing).findings;

/** @param kind of chain: 0 to 0.1 of unknown strength, to 0.2 very weak, above 0.85 hung far too loose, else good */
const chain = (draw: Draw, kind: number) => ({
  count: 2,
  ...(kind < 0.1 ? {} : { size: draw(0, 1) < 0.5 ? 0.00635 : 0.0047625 }),
  slack: draw(0, kind > 0.85 ? 3 : 0.06),
  ...(kind < 0.2
    ? { weakestPart: exact(draw(50, 500)), weakestPartName: 'hook' }
    : draw(0, 1) < 0.5
      ? { weakestPart: exact(draw(2000, 9000)), weakestPartName: 'hook' }
      : {}),
});

/** Couplers that swing little, on some; nobody measured the others. */
const stiff = (kind: number) => (kind < 0.6 ? { shank: 0.15, swing: exact(0.09) } : {});

/** Cylinders whose leak was measured, on some. */
const leaking = (draw: Draw, gear: BrakeGear): BrakeGear =>
  gear.rigging && draw(0, 1) < 0.7 ? { ...gear, rigging: { ...gear.rigging, leakRate: draw(5, 100) } } : gear;

function furnishedVehicle(draw: Draw, vehicle: Vehicle): Vehicle {
  const kind = draw(0, 1);
  const lift = draw(0, 1) < 0.15 ? draw(0.2, 0.8) : 0;
  return {
    ...vehicle,
    seats: vehicle.seats.map((s) => ({ ...s, height: s.height + lift, across: draw(-0.06, 0.06) })),
    front: { type: 'link', ...stiff(kind), chain: chain(draw, kind) },
    rear: { type: 'link', ...stiff(kind), chain: chain(draw, kind) },
    brakes: vehicle.brakes.map((gear) => leaking(draw, gear)),
    flange: { angle: draw(1, 1.25) },
    suspension: { equalised: false, twistFreedom: draw(0.002, 0.02), rollStiffness: exact(draw(4e4, 1e5)) },
    // Strong at starting, weak at speed.
    ...(vehicle.traction
      ? {
          traction: {
            kind: 'drawbar' as const,
            curve: [
              { speed: 0, force: draw(1, 3) * vehicle.tare.value },
              { speed: 0.6, force: draw(0.1, 0.6) * vehicle.tare.value },
              { speed: 1, force: 0 },
            ],
            how: 'stated' as const,
          },
        }
      : {}),
  };
}

/** Trains whose reservoirs or chambers are too small for their cylinders, or give more than is stated. */
export const unequalTrains = (altitude: number): Outing[] =>
  [
    brakedTrain('automatic-air', 2, { reservoirVolume: 1.2e-4 }),
    brakedTrain('automatic-air', 2, { reservoirVolume: 1e-3, workingPressure: exact(200_000) }),
    brakedTrain('automatic-vacuum', 2, { chamberVolume: 8e-4 }),
  ].map((train) => {
    const outing = dressed(3);
    return { ...outing, train, riders: [], conditions: { ...outing.conditions, altitude } };
  });

/** A dressed outing with chains, flags, a following train, altitude, wind, cant, springs and flanges. */
export function furnished(seed: number): Outing {
  const draw = drawer(seed + 4000);
  const outing = dressed(seed);
  return {
    ...outing,
    line: {
      ...outing.line,
      twist: draw(0.001, 0.01),
      cants: [
        { at: 0, cant: draw(-0.02, 0.02) },
        { at: outing.line.length, cant: draw(-0.02, 0.02) },
      ],
    },
    train: {
      ...outing.train,
      vehicles: outing.train.vehicles.map((v) => furnishedVehicle(draw, v)),
      chainsFastened: draw(0, 1) < 0.7,
    },
    host: {
      ...outing.host,
      flagDistance: { value: draw(5, 60), source: 'made up' },
      ...(draw(0, 1) < 0.5 ? { chainLoad: { value: draw(3000, 9000), source: 'made up' } } : {}),
    },
    following: { after: draw(20, 200), speed: draw(1, 4) },
    conditions: { ...outing.conditions, altitude: draw(500, 2500), crosswind: draw(0, 8) },
  };
}
