/** Friction between block and wheel by speed. */
import type { Quantity } from '../../base/quantity.ts';
import { pick } from '../../base/spread.ts';

export interface FrictionPoint {
  readonly speed: number;
  readonly friction: Quantity;
}

/** Friction at a speed and position in its spread, linear between points, the end values beyond. */
export function frictionAt(points: readonly FrictionPoint[], speed: number, position: number): number {
  let i = 0;
  while (i < points.length - 1 && points[i + 1].speed <= speed) i++;
  const here = pick(points[i].friction, position);
  if (i === points.length - 1 || speed <= points[i].speed) return here;
  const share = (speed - points[i].speed) / (points[i + 1].speed - points[i].speed);
  return here + share * (pick(points[i + 1].friction, position) - here);
}
