/**
 * Weight that moves: between trucks by braking, grade and jerk; sideways when a rider stands up, or puts
 * all their weight on one side to get off.
 */
import { GRAVITY } from '../../base/constants.ts';
import { type Body, raised } from './body.ts';
import { momentToLift } from './tipping.ts';
import { type AxleLoad, type Push, wheelLoads } from './wheels.ts';

/** Load of each group, N, with a deceleration (positive when braking) on a grade (uphill positive). */
export function groupLoadsMoving(
  body: Body,
  deceleration: number,
  grade: number,
  pushes: readonly Push[] = [],
): number[] {
  const slope = Math.hypot(1, grade);
  const felt = { side: 0, normal: GRAVITY / slope, rear: (GRAVITY * grade) / slope - deceleration };
  return byGroup(body, wheelLoads(body, felt, pushes));
}

const byGroup = (body: Body, loads: readonly AxleLoad[]): number[] =>
  body.vehicle.groups.map((_, i) =>
    loads.filter((a) => a.group === i).reduce((sum, a) => sum + a.left + a.right, 0),
  );

/**
 * Highest acceleration when a moving part of the train takes up the slack of a coupling, m/s²:
 * a = Δv·√(k/m) for a vehicle of mass m on a spring k (mass and spring, no damping).
 */
export const jerk = (speedDifference: number, stiffness: number, mass: number): number =>
  speedDifference * Math.sqrt(stiffness / mass);

/** The body with one rider standing up on the spot. @param rise of the centre of gravity, m */
export const standing = (body: Body, riderMass: number, rise: number): Body => raised(body, riderMass * rise);

/**
 * Moment to spare, kg·m, when a rider steps off with all their weight at the side of the vehicle, the
 * others sitting still: below 0 a wheel lifts while they do.
 *
 * @param across where the rider sat, and @param step where the foot is put, m from the middle
 */
export function steppingOff(body: Body, riderMass: number, across: number, step: number, wind = 0): number {
  const moved = Math.max(Math.abs(step - across), Math.abs(-step - across));
  return momentToLift(body, { curvature: 0, cant: 0 }, 0, false, wind) - riderMass * moved;
}
