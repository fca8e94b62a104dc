/** Two bodies that meet: common speed, squeeze of the spring between them, energy. */
import { reducedMass } from '../chain/formulas.ts';

export interface Impact {
  /** Speed when both move as one, m/s. */
  readonly commonSpeed: number;
  /** Greatest squeeze of the spring, m. */
  readonly squeeze: number;
  /** Greatest force, N. */
  readonly force: number;
  /** Energy in the spring then: what is lost if they stay coupled, J. */
  readonly energy: number;
}

/**
 * Two masses meet with a linear spring between them.
 *
 * x = |v₁ − v₂|·√(µ/k), F = k·x, common speed (m₁v₁ + m₂v₂)/(m₁ + m₂), µ = m₁m₂/(m₁+m₂).
 * mass, otherMass kg > 0 · speed, otherSpeed m/s, same direction positive · stiffness k N/m > 0.
 * No damping and no bottoming of the spring: real gear that bottoms gives more force.
 * Source: conservation of momentum and energy.
 */
export function impact(
  mass: number,
  speed: number,
  otherMass: number,
  otherSpeed: number,
  stiffness: number,
): Impact {
  const shared = reducedMass(mass, otherMass);
  const closing = Math.abs(speed - otherSpeed);
  const squeeze = closing * Math.sqrt(shared / stiffness);
  return {
    commonSpeed: (mass * speed + otherMass * otherSpeed) / (mass + otherMass),
    squeeze,
    force: stiffness * squeeze,
    energy: 0.5 * shared * closing * closing,
  };
}
