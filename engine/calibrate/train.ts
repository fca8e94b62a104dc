/** The train of a test: which way it ran, what its vehicles share, which of them are alike. */
import type { Quantity } from '../base/quantity.ts';
import { reverseLine } from '../things/line/geometry.ts';
import type { Stretch } from '../things/line/potential.ts';
import type { Line } from '../things/line/types.ts';
import type { LoadedTrain, LoadedVehicle } from '../things/train/loaded.ts';

export type Sense = 'forward' | 'reverse';

/** The line as a train sees it, and a chainage of the line in it. */
export function runningLine(line: Line, way: Sense): { line: Line; at: (chainage: number) => number } {
  return way === 'forward' ? { line, at: (c) => c } : { line: reverseLine(line), at: (c) => line.length - c };
}

export const stretchesOf = ({ vehicles }: LoadedTrain): Stretch[] =>
  vehicles.map((v) => ({ behind: v.behind, length: v.vehicle.length, mass: v.mass }));

/** What all parts share as a factor on each: bounds of all moved together ÷ likely, weighted. */
export function pooled<T>(
  parts: readonly T[],
  of: (part: T) => Quantity,
  weight: (part: T) => number = () => 1,
): Quantity {
  const sum = (end: 'low' | 'value' | 'high'): number =>
    parts.reduce((total, p) => total + weight(p) * of(p)[end], 0);
  const value = sum('value');
  return { value: 1, low: sum('low') / value, high: sum('high') / value, how: 'assumed' };
}

/** Parts of which the same was assumed, together; each told once. */
export function alike<T>(parts: readonly T[], of: (part: T) => Quantity): readonly (readonly T[])[] {
  const groups = new Map<string, T[]>();
  for (const part of parts) {
    const { value, low, high } = of(part);
    const key = `${value} ${low} ${high}`;
    groups.set(key, [...(groups.get(key) ?? []), part]);
  }
  return [...groups.values()];
}

/** A key by itself where it stands alone, numbered where there are several. */
export const numbered = (key: string, i: number, of: number): string => (of === 1 ? key : `${key}/${i + 1}`);

export const rollingOf = (vehicles: readonly LoadedVehicle[]): Quantity =>
  pooled(
    vehicles,
    (v) => v.vehicle.resistance.rolling,
    (v) => v.mass,
  );

/** Inertia of the wheels. */
export const wheelsOf = (vehicles: readonly LoadedVehicle[]): Quantity =>
  pooled(
    vehicles,
    (v) => v.vehicle.rotatingShare,
    (v) => v.vehicle.tare.value,
  );

/** The rolling resistance of vehicles that are alike is one unknown; of others, another. */
export interface Rollers {
  readonly key: string;
  readonly vehicles: readonly LoadedVehicle[];
  readonly rolling: Quantity;
}

export function rollersOf(vehicles: readonly LoadedVehicle[]): readonly Rollers[] {
  const groups = alike(vehicles, (v) => v.vehicle.resistance.rolling);
  return groups.map((of, i) => ({
    key: numbered('rolling', i, groups.length),
    vehicles: of,
    rolling: of[0].vehicle.resistance.rolling,
  }));
}
