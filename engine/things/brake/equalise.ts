/**
 * Where pressures end up: reservoir into cylinder, a triple valve's reduction, and what is left after
 * several applications. Boyle's law with the stroke counted in; pressures absolute, Pa, volumes m³.
 */
import { type Piston, pistonState } from './piston.ts';

/**
 * Pressure when a reservoir is opened to a cylinder that stood at atmospheric pressure.
 *
 *   p·(V_r + V₀ + V_s·s(p)) = p_r·V_r + p_a·V₀
 *
 * With the stroke done, p = (p_r·V_r + p_a·V₀)/(V_r + V₀ + V_s). Source: Boyle's law.
 */
export function equalised(reservoir: number, volume: number, piston: Piston, atmosphere: number): number {
  const content = reservoir * volume + atmosphere * piston.clearance;
  const whole = volume + piston.clearance;
  const done = content / (whole + piston.swept);
  if (done - atmosphere >= piston.strokeAt) return done;
  // Stroke not done: a quadratic in q = p − p_a.
  const perPressure = piston.swept / piston.strokeAt;
  const b = whole + atmosphere * perPressure;
  const c = atmosphere * whole - content;
  return atmosphere + (-2 * c) / (b + Math.sqrt(b * b - 4 * perPressure * c));
}

/**
 * Cylinder pressure that a reduction of the pipe gives: the reservoir gives up air until it has fallen as
 * far as the pipe, or both are equal. A deeper reduction (over-reduction) wastes pipe air and gives no more.
 */
export function cylinderPressure(
  reduction: number,
  reservoir: number,
  volume: number,
  piston: Piston,
  atmosphere: number,
): number {
  const given = atmosphere * piston.clearance + reduction * volume;
  const { pressure } = pistonState(piston, given, { pressure: atmosphere });
  return Math.min(pressure, equalised(reservoir, volume, piston, atmosphere));
}

/** Least reduction that gives full application: beyond it lies over-reduction. */
export const fullReduction = (
  reservoir: number,
  volume: number,
  piston: Piston,
  atmosphere: number,
): number => reservoir - equalised(reservoir, volume, piston, atmosphere);

/**
 * Reservoir pressure after each of a number of applications without recharging. Each application fills the
 * cylinder from atmosphere, each release throws that air away.
 *
 * @returns pressures while applied, the first entry after the first application
 */
export function afterApplications(
  reservoir: number,
  volume: number,
  piston: Piston,
  atmosphere: number,
  count: number,
): number[] {
  const pressures: number[] = [];
  let p = reservoir;
  for (let i = 0; i < count; i++) {
    p = equalised(p, volume, piston, atmosphere);
    pressures.push(p);
  }
  return pressures;
}

/**
 * Pressure difference across an automatic vacuum piston with its train side let up to the atmosphere: the
 * chamber is squeezed by the stroke and loses some vacuum.
 *
 * @param vacuum depression in the chamber before, Pa  @param chamber its volume with the piston at rest
 */
export function automaticVacuumDifference(
  vacuum: number,
  chamber: number,
  piston: Piston,
  atmosphere: number,
): number {
  const difference = (s: number): number =>
    atmosphere - ((atmosphere - vacuum) * chamber) / (chamber - piston.swept * s);
  if (difference(1) >= piston.strokeAt) return difference(1);
  let [low, high] = [0, 1];
  for (let i = 0; i < 60; i++) {
    const s = (low + high) / 2;
    if (difference(s) / piston.strokeAt > s) low = s;
    else high = s;
  }
  return difference(low);
}
