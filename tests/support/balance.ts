/** Made-up cars and people for tests of balance and seating. */

import { between, exact } from '../../engine/base/quantity.ts';
import { type Body, bodyFrom } from '../../engine/questions/balance/body.ts';
import type { Line } from '../../engine/things/line/types.ts';
import type { Rider } from '../../engine/things/train/types.ts';
import type { Seat, Vehicle } from '../../engine/things/vehicle/types.ts';
import { type Draw, randomOuting, randomVehicle } from './random-outings.ts';

export const adultCentre = between(0.23, 0.25, 0.27, 'assumed', 'made up');

/** 200 m of level 7¼-in line, its middle in a curve to the left. @param radius m */
export const bentLine = (radius: number): Line => ({
  ...randomOuting(1).line,
  loop: false,
  length: 200,
  gauge: 0.184,
  contactWidth: 0.2,
  heights: [
    { at: 0, height: 0 },
    { at: 200, height: 0 },
  ],
  curves: [{ from: 80, to: 120, startCurvature: 1 / radius, endCurvature: 1 / radius, gaugeWidening: 0 }],
  cants: [],
});

export const seatAt = (id: string, at: number, height = 0.38, across = 0): Seat => ({
  id,
  name: id,
  at,
  across,
  height,
  posture: 'astride',
  facing: 'forward',
  driver: false,
});

export interface CarChanges {
  readonly id?: string;
  readonly length?: number;
  readonly tare?: number;
  readonly centre?: number;
  readonly trucks?: readonly [number, number];
  readonly axles?: number;
  readonly seats?: readonly Seat[];
}

/** A symmetric sit-astride car of four seats on two trucks, or as changed. */
export function car(draw: Draw, changes: CarChanges = {}): Vehicle {
  const { id = 'car', length = 2.2, tare = 110, centre = 0.24, axles = 2 } = changes;
  const trucks = changes.trucks ?? [0.45, length - 0.45];
  return {
    ...randomVehicle(draw, id, false),
    length,
    tare: exact(tare),
    centreHeight: exact(centre),
    groups: trucks.map((at, i) => ({
      id: `${i}`,
      name: i === 0 ? 'front truck' : 'rear truck',
      at,
      axles,
      wheelBase: axles > 1 ? 0.25 : 0,
      driven: false,
    })),
    seats: changes.seats ?? [0.14, 0.38, 0.62, 0.86].map((share, i) => seatAt(`${i + 1}`, length * share)),
    front: { type: 'link', height: 0.11 },
    rear: { type: 'link', height: 0.11 },
    flange: { angle: (70 * Math.PI) / 180, frictionHigh: 0.35 },
  };
}

export const person = (id: string, mass: number, changes: Partial<Rider> = {}): Rider => ({
  id,
  name: id,
  mass: exact(mass),
  ageGroup: mass < 40 ? 'child' : 'adult',
  duty: 'rider',
  ...changes,
});

/** A random body: two trucks, some people, not necessarily in the middle. */
export function randomBody(draw: Draw, offset = 0.02): Body {
  const length = draw(1.6, 3);
  const vehicle = car(draw, {
    length,
    tare: draw(50, 200),
    trucks: [draw(0.25, 0.5), length - draw(0.25, 0.5)],
    axles: draw(0, 1) < 0.5 ? 1 : 2,
  });
  const people = Math.floor(draw(0, 6));
  const points = Array.from({ length: people }, () => ({
    mass: draw(20, 110),
    at: draw(0.25, 0.75) * length,
    across: draw(-offset, offset),
    height: draw(0.45, 0.75),
  }));
  return bodyFrom(vehicle, draw(0.14, 0.4), vehicle.tare.value, draw(0.15, 0.35), points);
}
