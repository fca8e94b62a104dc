/** Who drives, from where, and how much of the sight that leaves. */
import { describe, expect, it } from 'vitest';
import { firstAnswer } from '../../../engine/answer/answer.ts';
import { inquire } from '../../../engine/answer/inquiry.ts';
import { withRemedies } from '../../../engine/answer/remedies.ts';
import { openOuting } from '../../../engine/outing/open.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import { askDriving } from '../../../engine/questions/sight/driving.ts';
import { availableAlong } from '../../../engine/questions/speed/available.ts';
import type { Line, Sight } from '../../../engine/things/line/types.ts';
import { driverBehind } from '../../../engine/things/train/crew.ts';
import type { Rider } from '../../../engine/things/train/types.ts';
import type { BrakeGear, Vehicle } from '../../../engine/things/vehicle/types.ts';
import { plain, rider } from '../../support/rules.ts';

const base = plain(3);
const [engine, first] = base.train.vehicles;
const drives: Rider = rider('d', engine.seats[0].id, { vehicle: engine.id, duty: 'driver' });
const outing = (vehicles: readonly Vehicle[], riders: readonly Rider[] = [drives]): Outing => ({
  ...base,
  riders,
  train: { ...base.train, vehicles },
});
const ahead = base.train.vehicles;
const pushed = [...ahead.slice(1), engine];
const codes = (o: Outing) => askDriving(openOuting(o)).map((f) => `${f.severity} ${f.code}`);
const eyes = (o: Outing): number => driverBehind(o, openOuting(o).loaded);
const sight = (from: number, to: number, distance: number): Sight => ({
  from,
  to,
  distance,
  direction: 'forward',
});

describe('the driver’s seat', () => {
  it('is as far behind the head as it is on its vehicle and its vehicle in the train', () => {
    const { at } = engine.seats[0];
    expect(eyes(outing(ahead))).toBeCloseTo(at, 12);
    expect(eyes(outing(pushed))).toBeCloseTo(
      ahead.slice(1).reduce((sum, v) => sum + v.length, at),
      9,
    );
  });

  it('nobody’s: the driver’s seat farthest back, or the rear end', () => {
    expect(eyes(outing(ahead, []))).toBeCloseTo(Math.max(...engine.seats.map((s) => s.at)), 12);
    expect(eyes(outing([{ ...engine, seats: [] }, ...ahead.slice(1)], []))).toBeCloseTo(engine.length, 12);
  });
});

describe('sight from there', () => {
  const grid = Float64Array.from({ length: 201 }, (_, j) => j * 0.5);
  const line = (changes: Partial<Line>): Line => ({
    ...base.line,
    loop: true,
    length: 100,
    places: [],
    sights: [],
    ...changes,
  });
  const room = (l: Line, back: number, at: number): number =>
    availableAlong(l, grid, 2, { assumed: 30 }, back).distance[at * 2];

  it('is shorter by the train ahead of the eyes: of a stretch, and where none is stated', () => {
    const stretch = line({ sights: [sight(20, 50, 40)] });
    expect(room(stretch, 0, 30)).toBe(38);
    expect(room(stretch, 8, 30)).toBe(30);
    expect(room(line({}), 8, 30)).toBe(20);
  });

  it('short sight holds until the driver has left it, over a loop’s origin too', () => {
    const stretch = line({ sights: [sight(80, 98, 20)] });
    expect(room(stretch, 8, 79)).toBe(Infinity);
    expect(room(stretch, 8, 5)).toBe(10);
    expect(room(stretch, 8, 7)).toBe(Infinity);
  });

  it('a signal is seen when the eyes are there, and none of the way is left where the head has passed it', () => {
    const signal = (seen: number) =>
      line({
        sights: [sight(0, 1, 90)],
        places: [{ id: 's', name: 's', kind: 'signal', at: 60, sight: seen }] as unknown as Line['places'],
      });
    expect(room(signal(25), 0, 35)).toBe(23);
    expect(room(signal(25), 10, 45)).toBe(13);
    expect(room(signal(25), 10, 35)).toBe(Infinity);
    expect(room(signal(8), 10, 62)).toBe(0);
  });

  it('speeds permitted fall with it, and never rise', () => {
    const sights = [sight(0, base.line.length, 25)];
    const limits = (vehicles: readonly Vehicle[]): Float64Array => {
      const o = { ...outing(vehicles), line: { ...base.line, sights } };
      return firstAnswer(inquire(o)).speeds?.limit ?? new Float64Array();
    };
    const [pulled, propelled] = [limits(ahead), limits(pushed)];
    expect(pulled.length).toBeGreaterThan(10);
    const middle = pulled.length >> 1;
    expect(propelled[middle]).toBeLessThan(pulled[middle] * 0.95);
  });
});

describe('who drives', () => {
  it('nobody: cannot be told', () => {
    expect(codes(outing(ahead, []))).toEqual(['unknown driver-missing']);
    expect(codes(outing(ahead, [{ ...drives, duty: 'rider' }]))).toEqual(['unknown driver-missing']);
    expect(codes(outing(ahead))).toEqual([]);
  });

  it('a tender ahead is no car', () => {
    expect(codes(outing([{ ...first, id: 't', role: 'tender' }, ...ahead]))).toEqual([]);
  });

  it('propelled, or driven from the wrong end: limits', () => {
    expect(codes(outing(pushed))).toEqual(['limits propelled-without-lookout']);
    expect(codes(outing([ahead[1], engine, ...ahead.slice(2)]))).toEqual([
      'limits propelled-without-lookout',
    ]);
    const wrongEnd = rider('d', first.seats[0].id, { vehicle: ahead[3].id, duty: 'driver' });
    expect(codes(outing(ahead, [wrongEnd]))).toEqual(['limits propelled-without-lookout']);
  });

  it('unless a lookout with a brake leads', () => {
    const guard = rider('g', first.seats[0].id, { vehicle: pushed[0].id, duty: 'guard' });
    const led = (brakes: readonly BrakeGear[], at = guard) =>
      codes(outing([{ ...pushed[0], brakes }, ...pushed.slice(1)], [drives, at]));
    const [automatic] = first.brakes;
    expect(led([automatic])).toEqual([]);
    expect(led([])).toEqual(['limits propelled-without-lookout']);
    expect(led([{ ...automatic, kind: 'straight-air' }])).toEqual(['limits propelled-without-lookout']);
    expect(led([{ ...automatic, kind: 'mechanical', workedBy: 'guard' }])).toEqual([]);
    expect(led([automatic], { ...guard, vehicle: pushed[1].id })).toEqual([
      'limits propelled-without-lookout',
    ]);
    expect(led([automatic], { ...guard, duty: 'rider' })).toEqual(['limits propelled-without-lookout']);
  });

  it('cleared by the engine first, or by the guard who is aboard', () => {
    const guard = rider('g', first.seats[0].id, { vehicle: pushed[1].id, duty: 'guard' });
    const inquiry = inquire(outing(pushed, [drives, guard]));
    const answer = withRemedies(inquiry, firstAnswer(inquiry));
    const found = answer.findings.find((f) => f.code === 'propelled-without-lookout');
    const kinds = found?.remedies.map((r) => r.change.kind) ?? [];
    expect(kinds).toContain('order');
    expect(kinds).toContain('seat');
  });
});
