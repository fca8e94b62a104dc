/** Two or more vehicles with knuckles on a line with crests and sags. All made up. */
import { openOuting } from '../../engine/outing/open.ts';
import type { Outing } from '../../engine/outing/types.ts';
import { askCrests, type CrestsData } from '../../engine/questions/crests/ask.ts';
import type { Finding } from '../../engine/questions/finding.ts';
import type { HeightKnot } from '../../engine/things/line/types.ts';
import type { Coupling, Vehicle } from '../../engine/things/vehicle/types.ts';
import { plain } from './rules.ts';

export interface Shape {
  readonly length: number;
  readonly overhang: number;
  readonly base?: number;
}

export const knuckle = (height: number, changes: Partial<Coupling> = {}): Coupling => ({
  type: 'knuckle',
  height,
  face: 0.03,
  ...changes,
});

/** A vehicle of two trucks. */
export function shaped(v: Vehicle, { length, overhang, base = 0 }: Shape, on: Coupling): Vehicle {
  const truck = (at: number) => ({
    id: `${at}`,
    name: `${at}`,
    at,
    axles: base > 0 ? 2 : 1,
    wheelBase: base,
    driven: false,
  });
  return { ...v, length, groups: [truck(overhang), truck(length - overhang)], front: on, rear: on };
}

export function crested(
  heights: readonly HeightKnot[],
  shapes: readonly Shape[],
  on: readonly Coupling[] = shapes.map(() => knuckle(0.11)),
): Outing {
  const base = plain(shapes.length - 1);
  const vehicles = base.train.vehicles.map((v, i) => shaped(v, shapes[i], on[i]));
  const length = heights[heights.length - 1].at;
  return {
    ...base,
    line: { ...base.line, loop: false, length, heights, curves: [], cants: [], places: [], sights: [] },
    train: { ...base.train, vehicles },
  };
}

export const crestsOf = (outing: Outing): { findings: readonly Finding[]; data: CrestsData } =>
  askCrests(openOuting(outing));
