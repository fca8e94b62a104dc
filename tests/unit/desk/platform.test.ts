/** How much the cars keep as people sit, who takes most of it, and the one move that helps: each held by asking again. */
import { readFile } from 'node:fs/promises';
import { beforeAll, describe, expect, it } from 'vitest';
import { lookAtPlatform } from '../../../desk/platform.ts';
import { seatOuting } from '../../../desk/seating.ts';
import { applyChange } from '../../../engine/outing/change.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import { readOuting } from '../../../papers/index.ts';

const load = (path: string): Promise<string> =>
  readFile(new URL(`../../../examples/${path}`, import.meta.url), 'utf8');

let outing: Outing;
beforeAll(async () => {
  const read = await readOuting({ path: 'heavy-air.json', content: await load('heavy-air.json') }, load);
  if (!read.ok) throw new Error('the example cannot be read');
  outing = read.value;
});

/** Everybody where they are, but for some. */
const seat = (of: Outing, ...moves: { rider: string; vehicle: string; seat: string }[]): Outing =>
  applyChange(of, { kind: 'seat', moves });

describe('the platform', () => {
  it('names the car that keeps least', () => {
    const { cars, worst, unknown } = lookAtPlatform(outing);
    expect(cars).toHaveLength(5);
    expect(unknown).toEqual([]);
    expect(worst?.keeps).toBe(Math.min(...cars.map((c) => c.keeps)));
  });

  it('says of a move what is so when it is made, whoever changes places', () => {
    const { worst, move } = lookAtPlatform(outing);
    expect(move).toBeDefined();
    const { rider, to, changesWith, keeps } = move!;
    const from = outing.riders.find((r) => r.id === rider)!;
    const moved = seat(
      outing,
      { rider, ...to },
      ...(changesWith ? [{ rider: changesWith, vehicle: from.vehicle!, seat: from.seat! }] : []),
    );
    const after = lookAtPlatform(moved);
    expect(after.worst?.keeps).toBeCloseTo(keeps, 12);
    expect(keeps).toBeGreaterThan(worst!.keeps);
  });

  it('says of the culprit what is so without them', () => {
    const { culprit, worst } = lookAtPlatform(outing);
    expect(culprit).toBeDefined();
    const without = applyChange(outing, { kind: 'fewer-riders', leave: [culprit!.rider] });
    const car = lookAtPlatform(without).cars.find((c) => c.vehicle === worst!.vehicle);
    expect(car?.keeps).toBeCloseTo(culprit!.keepsWithout, 12);
  });

  it('keeps after the found seating what the seating says', async () => {
    const found = await seatOuting(outing);
    if (!('seating' in found)) throw new Error('no seating');
    const { cars, worst } = lookAtPlatform(found.outing);
    expect(worst?.keeps).toBeCloseTo(found.seating.worst, 12);
    for (const { vehicle, margin } of found.seating.cars)
      expect(cars.find((c) => c.vehicle === vehicle)?.keeps).toBeCloseTo(margin.wheel, 12);
  });

  it('parts no child from whoever holds it, and breaks no rule of the host', () => {
    const { move } = lookAtPlatform(outing);
    const held = {
      ...outing,
      riders: outing.riders.map((r) => (r.id === move!.rider ? { ...r, heldBy: 'driver' } : r)),
    };
    expect(lookAtPlatform(held).move?.rider).not.toBe(move!.rider);
    const full: Outing = {
      ...outing,
      host: { ...outing.host, mostRidersPerCar: { value: 1, source: 'Rule 1' } },
    };
    expect(lookAtPlatform(full).move).toBeUndefined();
  });

  it('cannot tell of a car whose height nothing bounds', () => {
    const { centreHeight: _height, envelope: _envelope, ...rest } = outing.train.vehicles[2];
    const vehicles = outing.train.vehicles.with(2, { ...rest, seats: [] });
    const riders = outing.riders.filter((r) => r.vehicle !== rest.id);
    const { unknown, cars } = lookAtPlatform({ ...outing, riders, train: { ...outing.train, vehicles } });
    expect(unknown).toEqual([rest.id]);
    expect(cars.map((c) => c.vehicle)).not.toContain(rest.id);
  });
});
