/**
 * How far a body rolls to a side on springs that were measured:
 *
 *   φ = (g·(Z·θ + Y) + Z·v²·κ) / (K − g·Z)
 *
 * Z = Σ m·z and Y = Σ m·y of the vehicle with its people, kg·m (z above the rail, y to that side); θ what cant leans the track to it,
 * rad; κ curvature with the outside on it, 1/m; v speed, m/s; K roll stiffness, N·m/rad. It rolls about a line at the rail, so that
 * its top goes farthest. Springs too weak to hold it upright (K ≤ g·Z) are told by balance. Source: common engineering geometry, statics.
 */
import { GRAVITY } from '../../base/constants.ts';

/** rad. @param push v²·κ, m/s² */
export const rollAngle = (stiffness: number, Z: number, Y: number, lean: number, push: number): number =>
  (GRAVITY * (Z * lean + Y) + Z * push) / (stiffness - GRAVITY * Z);
