/**
 * Does it stand still? The pull of the grade on a standing train against brakes that do not leak off,
 * and against all brakes while they are tight.
 *
 *   pull = max |W′(s)| − Σ m·g·r_low        hold = Σ min(φ₀·B, µ·N)
 *
 * W′ pull of the grade alone (N), r rolling resistance at its low bound, B block force and φ₀ its friction
 * at rest at their low bounds, µ adhesion at its low bound, N load on the braked wheels. Wheels locked at
 * rest hold up to adhesion: they do not slide until it is passed.
 */

import { GRAVITY } from '../../base/constants.ts';
import type { Quantity } from '../../base/quantity.ts';
import { pick } from '../../base/spread.ts';
import type { SumRef } from '../../base/sum.ts';
import type { OutingContext } from '../../outing/open.ts';
import { railsMet, worstUnder } from '../../outing/rails.ts';
import type { AssumedValues } from '../../things/assumed.ts';
import { frictionAt, gearForce } from '../../things/brake/force.ts';
import { gearStates } from '../../things/brake/system.ts';
import type { Potential } from '../../things/line/potential.ts';
import type { RailState } from '../../things/rail.ts';
import { holderOf } from '../../things/train/crew.ts';
import type { LoadedTrain } from '../../things/train/loaded.ts';
import { resistanceTerms } from '../../things/train/resistance.ts';
import type { BrakeGear } from '../../things/vehicle/types.ts';

export interface StandPull {
  /** N, > 0 where the train would roll. */
  readonly pull: number;
  /** N, of the grade alone, before rolling resistance is taken off. */
  readonly ofGrade: number;
  readonly at: number;
  /** Downhill is forward (true) or backward. */
  readonly forward: boolean;
}

/** The sum of the pull of the grade on a standing train. */
export const gradeSum = ({ mass }: LoadedTrain, { ofGrade }: StandPull): SumRef => ({
  id: 'grade-force',
  inputs: { mass, grade: ofGrade / (mass * GRAVITY) },
  differs: 'rolling',
});

/** Hardest place to stand, from a potential of gravity alone. @param counts of a place of the head; absent: all do */
export function standPull(
  loaded: LoadedTrain,
  gravity: Potential,
  length: number,
  counts: (head: number) => boolean = () => true,
): StandPull {
  const free = resistanceTerms(loaded.vehicles, -1).a;
  const count = Math.min(gravity.count, Math.floor((length - gravity.from) / gravity.step) + 1);
  let worst = -1;
  for (let j = 0; j < count; j++) {
    if (worst >= 0 && Math.abs(gravity.slope[j]) <= Math.abs(gravity.slope[worst])) continue;
    if (counts(gravity.from + j * gravity.step)) worst = j;
  }
  if (worst < 0) return { pull: 0, ofGrade: 0, at: gravity.from, forward: true };
  const slope = gravity.slope[worst];
  return {
    pull: Math.max(0, Math.abs(slope) - free),
    ofGrade: Math.abs(slope),
    at: gravity.from + worst * gravity.step,
    forward: slope < 0,
  };
}

/** A rail that the train may stand on with any of its wheels, and the hardest place there; of two rails the worse. */
export interface StandOn extends StandPull {
  readonly rail: RailState;
}

/** @param state that of the rest of the line */
export function standsOnRails(context: OutingContext, gravity: Potential, state: RailState): StandOn[] {
  const { line, loaded } = context;
  const under = worstUnder(context, state, [{ front: 0, rear: loaded.length }], line.length);
  return railsMet(context, state).map((rail) => ({
    ...standPull(loaded, gravity, line.length, (head) => under(head) === rail),
    rail,
  }));
}

/** Where a hold by the rail falls shortest of the pull. */
export function hardestStand(stands: readonly StandOn[], hold: (rail: RailState) => number): StandOn {
  return stands.reduce((a, b) => (hold(b.rail) - b.pull < hold(a.rail) - a.pull ? b : a));
}

/** Holds of the brakes that do not leak off, N, by who puts them on. */
export interface ParkedHold {
  /** What the driver alone can put on. */
  readonly driver: number;
  /** With the brake of a guard on the guard's own vehicle: what may be relied on. */
  readonly crew: number;
  /** With a rider at every other one. */
  readonly everybody: number;
}

/** @param hold of the gears that a test admits, N */
export function parkedHold(
  loaded: LoadedTrain,
  hold: (counts: (gear: BrakeGear, vehicle: number) => boolean) => number,
): ParkedHold {
  const holder = holderOf(loaded);
  return {
    driver: hold((g, v) => g.parking && holder(g, v) === 'driver'),
    crew: hold((g, v) => g.parking && holder(g, v) !== 'riders'),
    everybody: hold((g) => g.parking),
  };
}

/**
 * Gears that the crew put on a standing train: what parks within reach of driver or guard, and what answers the
 * driver while it is tight.
 */
export function crewGears(loaded: LoadedTrain): (gear: BrakeGear, vehicle: number) => boolean {
  const holder = holderOf(loaded);
  const answers = gearStates(loaded).filter((s) => s.answers);
  const at = new Set(answers.map((s) => `${s.vehicle} ${s.gear.id}`));
  return (gear, vehicle) =>
    (gear.parking && holder(gear, vehicle) !== 'riders') || at.has(`${vehicle} ${gear.id}`);
}

/**
 * Holding force at rest of the gears that a test admits, N. Several gears on the same wheels together hold
 * no more than adhesion there.
 *
 * @param position −1: weak brakes and low adhesion; 0: likely
 */
export function holdingForce(
  loaded: LoadedTrain,
  assumed: AssumedValues,
  adhesion: Quantity,
  air: { readonly pressure: number; readonly seaLevel: number },
  counts: (gear: BrakeGear, vehicle: number) => boolean,
  position: number,
): number {
  const mu = pick(adhesion, position);
  let total = 0;
  loaded.vehicles.forEach(({ vehicle, groupLoads }, index) => {
    const byGroup = vehicle.groups.map(() => 0);
    for (const gear of vehicle.brakes) {
      const force = counts(gear, index) ? gearForce(gear, assumed, air.pressure, air.seaLevel) : undefined;
      if (!force) continue;
      const axles = vehicle.groups.reduce((sum, g) => sum + (gear.on.includes(g.id) ? g.axles : 0), 0);
      const atRest =
        pick(force.block, position) * (force.friction ? frictionAt(force.friction, 0, position) : 1);
      vehicle.groups.forEach((g, i) => {
        if (gear.on.includes(g.id)) byGroup[i] += (atRest * g.axles) / axles;
      });
    }
    byGroup.forEach((force, i) => {
      total += Math.min(force, mu * groupLoads[i]);
    });
  });
  return total;
}
