/** Loads against ratings, riders against seats, curves and grades, on both sides of each bound. */

import { describe, expect, it } from 'vitest';
import { GRAVITY } from '../../../engine/base/constants.ts';
import { exact } from '../../../engine/base/quantity.ts';
import type { Line } from '../../../engine/things/line/types.ts';
import type { Ratings, Vehicle } from '../../../engine/things/vehicle/types.ts';
import { factOf } from '../../support/facts.ts';
import { altered, party, plain, ratingsSay, rider } from '../../support/rules.ts';

const mass = (si: number) => ({ si, kind: 'mass' });
const length = (si: number) => ({ si, kind: 'length' });
const rated = (code: string, more: object) => ({
  code,
  severity: 'forbids',
  question: 'balance',
  where: { vehicle: 'car1' },
  source: 'rating of the vehicle',
  ...more,
});

const goods = { name: 'ballast', mass: exact(20), at: 1.2, across: 0, height: 0.3 };
/** Three riders of 70 kg and 20 kg of goods on the first car. */
const laden = (ratings: Ratings, more: Partial<Vehicle> = {}) =>
  ratingsSay(altered(plain(2, { riders: party(3) }), 1, { ratings, loads: [goods], ...more }));

describe('a train that nothing rates', () => {
  it('is given nothing to mind', () => expect(laden({})).toEqual([]));
});

describe('a train longer than its line', () => {
  const on = (of: number, loop: boolean) => {
    const outing = plain(2);
    const whole = outing.train.vehicles.reduce((sum, v) => sum + v.length, 0);
    const long = whole * of;
    const heights = [
      { at: 0, height: 0 },
      { at: long, height: 0 },
    ];
    const found = ratingsSay({ ...outing, line: { ...outing.line, loop, length: long, heights, cants: [] } });
    return { whole, found: found.filter((f) => f.code === 'train-longer-than-line') };
  };
  it.each([true, false])('does not run, loop %s; one that fits does', (loop) => {
    const { whole, found } = on(0.9, loop);
    expect(found).toMatchObject([
      {
        severity: 'forbids',
        question: 'fit',
        found: length(whole),
        facts: { loop },
      },
    ]);
    expect(found[0].required?.si).toBeCloseTo(0.9 * whole, 9);
    expect(found[0].margin).toBeCloseTo(0.9 - 1, 1);
    expect(on(1, loop).found).toHaveLength(1);
    expect(on(1.01, loop).found).toEqual([]);
  });
});

describe('a car’s load', () => {
  it('as much as it is rated for', () => expect(laden({ load: 230 })).toEqual([]));
  it('a little more: riders and goods together', () => {
    const found = laden({ load: 229.9 });
    expect(found).toHaveLength(1);
    expect(found[0]).toMatchObject(rated('car-overloaded', { found: mass(230), required: mass(229.9) }));
    expect(found[0].margin).toBeCloseTo(-0.1 / 229.9, 9);
  });
  it('half of what it is rated for leaves nothing to say', () => expect(laden({ load: 460 })).toEqual([]));
});

describe('riders by number', () => {
  const count = (si: number) => ({ si, kind: 'count' });
  it('as many as it is rated for', () => expect(laden({ riders: 3 })).toEqual([]));
  it('one more', () => {
    const found = laden({ riders: 2 });
    expect(found).toHaveLength(1);
    expect(found[0]).toMatchObject(
      rated('car-overloaded', { found: count(3), required: count(2), margin: -0.5 }),
    );
  });
});

describe('load on an axle', () => {
  // The car's own 100 kg in its middle, its rider over the front truck: 50 + 70 kg on two axles, 50 on two.
  const length = 2;
  const car: Partial<Vehicle> = {
    length,
    tare: exact(100),
    groups: [
      { id: 'a', name: 'front truck', at: 0.4, axles: 2, wheelBase: 0.3, driven: false },
      { id: 'b', name: 'rear truck', at: 1.6, axles: 2, wheelBase: 0.3, driven: false },
    ],
    seats: [
      {
        id: '1',
        name: 'first',
        at: 0.4,
        across: 0,
        height: 0.4,
        posture: 'astride',
        facing: 'forward',
        driver: false,
      },
    ],
  };
  const on = (axleLoad: number) =>
    ratingsSay(altered(plain(1, { riders: party(1) }), 1, { ...car, ratings: { axleLoad } }));

  it('as much as it is rated for', () => expect(on(60.000001)).toEqual([]));
  it('a little more, and which truck', () => {
    const found = on(59.9);
    expect(found).toHaveLength(1);
    expect(found[0]).toMatchObject(
      rated('axle-overloaded', { required: mass(59.9), facts: { group: 'front truck' } }),
    );
    expect(found[0].found?.si).toBeCloseTo(60, 9);
    expect(found[0].margin).toBeCloseTo(-0.1 / 59.9, 9);
  });
  it('both trucks where both bear too much', () => {
    expect(on(24.9).map((f) => factOf(f, 'group'))).toEqual(['front truck', 'rear truck']);
  });
  it('is a mass, not a force', () => expect(on(60 * GRAVITY * 0.5)).toEqual([]));
});

describe('a seat', () => {
  const seated = (most: number | undefined) => {
    const o = plain(1, { riders: [rider('a', '2')] });
    const seats = o.train.vehicles[1].seats.map((s) =>
      s.id === '2' ? { ...s, ...(most === undefined ? {} : { most }) } : s,
    );
    return ratingsSay(altered(o, 1, { seats }));
  };
  it('bears its greatest rider', () => expect(seated(70)).toEqual([]));
  it('bears anybody where it is not rated', () => expect(seated(undefined)).toEqual([]));
  it('does not bear a heavier one', () => {
    const found = seated(69);
    expect(found).toHaveLength(1);
    expect(found[0]).toMatchObject(
      rated('seat-overloaded', {
        found: mass(70),
        required: mass(69),
        facts: { rider: 'rider a', seat: '2' },
      }),
    );
    expect(found[0].margin).toBeCloseTo(-1 / 69, 12);
  });
});

describe('a rider without a seat', () => {
  it.each(['vehicle', 'seat'] as const)('no %s: cannot tell', (without) => {
    const { [without]: _, ...unseated } = rider('a', '1');
    const found = ratingsSay(plain(1, { riders: [unseated] }));
    expect(found).toHaveLength(1);
    expect(found[0]).toMatchObject({
      code: 'rider-not-seated',
      severity: 'unknown',
      question: 'balance',
      where: {},
      facts: { rider: 'rider a' },
      measure: 'riders.seat',
      source: 'outing',
    });
  });
});

describe('curves', () => {
  const arc = (from: number, k: number, end = k) => ({
    from,
    to: from + 20,
    startCurvature: k,
    endCurvature: end,
    gaugeWidening: 0,
  });
  const bent = (curves: Line['curves'], ratings: Ratings = { leastRadius: 12 }) => {
    const o = altered(plain(2), 1, { ratings });
    return ratingsSay({ ...o, line: { ...o.line, curves } });
  };

  it('of the least radius is taken', () => expect(bent([arc(50, 1 / 12)])).toEqual([]));
  it('a wider one is taken', () => expect(bent([arc(50, 1 / 20)])).toEqual([]));
  it.each([
    ['to the left', arc(50, 1 / 11)],
    ['to the right', arc(50, -1 / 11)],
    ['at its end', arc(50, 1 / 40, 1 / 11)],
    ['at its beginning', arc(50, -1 / 11, 0)],
  ])('a tighter one is not: %s', (_, curve) => {
    const found = bent([arc(10, 1 / 30), curve, arc(100, -1 / 25)]);
    expect(found).toHaveLength(1);
    expect(found[0]).toMatchObject(
      rated('curve-too-tight', {
        question: 'fit',
        where: { vehicle: 'car1', from: 60, to: 60 },
        required: length(12),
      }),
    );
    expect(found[0].found?.si).toBeCloseTo(11, 9);
    expect(found[0].margin).toBeCloseTo(-1 / 12, 9);
  });
  it('the first of two alike is named', () => {
    expect(bent([arc(50, 1 / 11), arc(100, 1 / 11)])[0].where).toMatchObject({ from: 60 });
  });
  it('an unrated vehicle takes no curve tighter than it is long', () => {
    // Cars of 2.4 m, an engine of 2 m.
    expect(bent([arc(50, 1 / 2.4)], {})).toEqual([]);
    const found = bent([arc(50, 1 / 2.3)], {});
    expect(found.map((f) => f.where.vehicle)).toEqual(['car1', 'car2']);
    expect(found[0]).toMatchObject({
      severity: 'forbids',
      required: length(2.4),
      source: 'a curve tighter than the vehicle is long',
    });
  });
});

describe('grades', () => {
  const steep = (...heights: readonly (readonly [number, number])[]) => {
    const o = plain(1);
    return ratingsSay({
      ...o,
      line: { ...o.line, heights: heights.map(([at, height]) => ({ at, height })) },
    });
  };

  it('to 15 % are within the model', () => {
    expect(steep([0, 0], [100, 15])).toEqual([]);
    expect(steep([0, 15], [100, 0])).toEqual([]);
  });
  it.each([15.1, -15.1])('beyond it, cannot tell: %d in 100', (rise) => {
    const found = steep([0, 5], [100, 5], [200, 5 + rise], [300, 5 + rise]);
    expect(found).toHaveLength(1);
    expect(found[0]).toMatchObject({
      code: 'grade-beyond-range',
      severity: 'unknown',
      question: 'line',
      where: { from: 100, to: 200 },
      required: { si: 0.15, kind: 'grade' },
      measure: 'line.profile',
      source: 'range of the model',
    });
    expect(found[0].found?.si).toBeCloseTo(rise / 100, 12);
    expect(steep([0, 5], [100, 5 + rise])).toHaveLength(1);
  });
});
