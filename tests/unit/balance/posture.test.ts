/** How people sit on a seat reaches the balance of the car; not stated, the highest plausible counts. */
import { readFile } from 'node:fs/promises';
import { describe, expect, it } from 'vitest';
import { assumedValues } from '../../../data/index.ts';
import { bodyOf, centreHeight } from '../../../engine/questions/balance/body.ts';
import { loadTrain } from '../../../engine/things/train/loaded.ts';
import type { Vehicle } from '../../../engine/things/vehicle/types.ts';
import { readTrain } from '../../../papers/index.ts';
import { person } from '../../support/balance.ts';

const file = new URL('../../../examples/vehicles/light-car.json', import.meta.url).pathname;

async function carWith(posture: string | undefined): Promise<Vehicle> {
  const car = JSON.parse(await readFile(file, 'utf8'));
  const seats = car.seats.map(({ posture: _, ...s }: { posture?: string }) =>
    posture ? { ...s, posture } : s,
  );
  const train = { heedway: 'train', version: 1, name: 't', vehicles: [{ vehicle: { ...car, seats } }] };
  const read = await readTrain({ path: 't.json', content: JSON.stringify(train) }, async () => undefined);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.value.vehicles[0];
}

async function highest(posture: string | undefined): Promise<number> {
  const vehicle = await carWith(posture);
  const riders = vehicle.seats.map((s) => person(s.id, 80, { vehicle: vehicle.id, seat: s.id }));
  const train = { name: 't', vehicles: [vehicle], pipeBrokenAfter: [], chainsFastened: true };
  const [loaded] = loadTrain(train, riders).vehicles;
  const body = bodyOf(loaded, 0.2, assumedValues.riderCentre, 1);
  if (!body) throw new Error('no body');
  return centreHeight(body);
}

describe('posture', () => {
  it('knees up lie higher than legs forward, those than a chair, and not stated is as high as any', async () => {
    const [open, inside, chair, forward, knees] = await Promise.all(
      [undefined, 'sit-in', 'chair', 'legs-forward', 'knees-up'].map(highest),
    );
    expect(knees).toBeGreaterThan(forward + 0.02);
    expect(forward).toBeGreaterThan(chair + 0.02);
    expect(open).toBeCloseTo(knees, 9);
    expect(inside).toBe(open);
  });
});
