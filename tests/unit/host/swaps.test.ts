/** Where too many ride on a car: the heaviest of them to a free seat of another car, and what else is tried. All made up. */
import { expect, it } from 'vitest';
import { exact } from '../../../engine/base/quantity.ts';
import type { Finding } from '../../../engine/questions/finding.ts';
import { fewerOnBoard, hostRemedies } from '../../../engine/questions/host/remedies.ts';
import { plain, rider } from '../../support/rules.ts';

const train = plain(3);
const ids = train.train.vehicles.map((v) => v.id);
const on = { code: 'too-many-riders-on-car', where: { vehicle: 'car1' } } as Finding;
const heavy = rider('b', '2', { mass: exact(90) });
const people = [
  rider('a', '1'),
  heavy,
  rider('guard', '3', { mass: exact(120), duty: 'guard' }),
  rider('c', '1', { vehicle: 'car2' }),
];
const moves = (riders = people) =>
  fewerOnBoard({ ...train, riders }, on).flatMap(({ changes }) =>
    changes.flatMap((c) => (c.kind === 'seat' ? c.moves : [])),
  );

it('moves the heaviest rider, no guard, to seats of other cars that nobody has, six at the most', () => {
  const found = moves();
  expect(new Set(found.map((m) => m.rider))).toEqual(new Set(['b']));
  expect(found).toHaveLength(6);
  for (const { vehicle, seat } of found) {
    expect(['car2', 'car3']).toContain(vehicle);
    expect([vehicle, seat]).not.toEqual(['car2', '1']);
  }
  expect(ids[0]).toBe('engine');
  expect(moves([people[2]])).toEqual([]);
});

it('counts cars without brakes as those to be left, one more each time', () => {
  const vehicles = train.train.vehicles.map((v, i) => (i > 1 ? { ...v, brakes: [] } : v));
  const outing = { ...train, train: { ...train.train, vehicles } };
  const leaves = (hostRemedies['too-few-cars-braked']?.(outing, on) ?? []).flatMap(({ changes }) =>
    changes.flatMap((c) => (c.kind === 'fewer-cars' ? [c.leave.join(' ')] : [])),
  );
  expect(leaves).toEqual(expect.arrayContaining(['car2', 'car2 car3']));
});
