/**
 * What is said of hauling, on an incline of 2 in 100 with rolling resistance of 6 N/kN, half as much again at the start, and
 * 1 N/kN more for each m/s. Of the train's weight the start asks for 2.9 in 100, crawling for 2.6.
 */
import { describe, expect, it } from 'vitest';
import { potentialOf } from '../../../engine/motion/prepare.ts';
import { openOuting } from '../../../engine/outing/open.ts';
import { askHauling } from '../../../engine/questions/haul/ask.ts';
import { climb } from '../../../engine/questions/haul/climb.ts';
import { G, laid, type OnClimb } from '../../support/on-a-climb.ts';

const WEIGHT = laid({}).loaded.mass * G;
const said = (share: number, more: OnClimb = {}) => askHauling(laid({ pull: share * WEIGHT, ...more }));
const found = (share: number, more: OnClimb = {}) =>
  said(share, more).findings.filter((f) => f.code !== 'assumed');
const words = (share: number, more: OnClimb = {}) =>
  found(share, more).map((f) => `${f.severity}: ${f.code}`);
const slow = laid({}).outing.assumed.practice['slow-climb'].value;

describe('a start', () => {
  // Of the length along the rail the rise is a little less.
  it('that cannot be made limits; where it would stall on the way too, forbids', () => {
    expect(words(0.0291).filter((w) => w.includes('start'))).toEqual([]);
    expect(words(0.0288)).toEqual(['limits: cannot-start']);
    expect(words(0.0262)).toEqual(['limits: cannot-start']);
    expect(words(0.0258)).toEqual(['forbids: cannot-start']);
  });
  it('tells pull and need, how many fail, and where', () => {
    const [only] = found(0.0275, { climb: [150, 250], signal: 240 });
    expect((only.found?.si ?? 0) / WEIGHT).toBeCloseTo(0.0275, 6);
    expect((only.required?.si ?? 0) / WEIGHT).toBeCloseTo(0.029, 4);
    expect(only.margin).toBeCloseTo(0.0275 / 0.029 - 1, 2);
    expect(only).toMatchObject({ facts: { fails: { si: 1 }, stretches: { si: 1 }, places: 'Signal' } });
    expect(only.sum?.id).toBe('small-gauge-resistance');
    expect(only.where.from).toBeGreaterThan(150);
    expect(only.where.to).toBeLessThan(260);
  });
  it('of an engine whose pull nobody knows is asked for', () => {
    const { written } = laid({});
    const vehicles = written.train.vehicles.map(({ traction: _, ...v }) => v);
    const { findings, data } = askHauling(openOuting({ ...written, train: { ...written.train, vehicles } }));
    expect(findings).toMatchObject([
      {
        code: 'traction-unknown',
        severity: 'unknown',
        where: { vehicle: 'engine' },
        measure: 'vehicle.traction',
      },
    ]);
    expect(data).toBeNull();
  });
});

describe('a climb', () => {
  // The pull falls by a tenth for each m/s: 3.2 · (1 − v/10) = 2.6 + 0.1 · v at 1.43 m/s.
  it('is kept up at the speed at which pull and need are equal', () => {
    const { data } = said(0.032);
    expect(data?.balancingSpeed).toBeCloseTo(0.6 / 0.42, 1);
    expect(data?.hardStretches).toEqual([]);
    expect(data?.startFails).toBe(0);
  });
  it('slower than a walk is a note', () => {
    // p · (1 − v/10) = 2.6 + 0.1 · v
    const pullFor = (v: number): number => (0.026 + 0.001 * v) / (1 - v / 10);
    const starting = 1;
    expect(words(pullFor(slow * 1.05), { starting })).toEqual([]);
    expect(words(pullFor(slow * 0.95), { starting })).toEqual(['notes: slow-on-grade']);
    const [note] = found(pullFor(slow * 0.5), { starting });
    expect(note.found?.si).toBeCloseTo(slow * 0.5, 1);
    expect(note.required?.si).toBe(slow);
  });
  it('that starts and then stands still limits', () =>
    expect(words(0.02602, { starting: 1 })).toEqual(['limits: slow-on-grade']));
});

describe('along a climb under full power', () => {
  const run = (share: number, speed: number) => {
    const { loaded, line, outing } = laid({ pull: share * WEIGHT });
    const potential = potentialOf(line, loaded, 0, 1, 0);
    const { adhesion, engineHeight } = outing.assumed;
    return climb(loaded, potential, 20, 120, speed, adhesion.dry, 0, engineHeight);
  };
  it('it gains speed with pull to spare, and was slowest as it came', () => {
    const fast = run(0.06, 1);
    expect(fast?.endSpeed).toBeGreaterThan(2);
    expect(fast?.leastSpeed).toBe(1);
  });
  it('it loses speed toward that at which pull and need are equal', () => {
    // 3.2 · (1 − v/10) = 2.6 + 0.1 · v at 1.43 m/s.
    const slowed = run(0.032, 3);
    expect(slowed?.endSpeed).toBeLessThan(3);
    expect(slowed?.endSpeed).toBeGreaterThan(0.6 / 0.42);
    expect(slowed?.leastSpeed).toBe(slowed?.endSpeed);
    expect(slowed?.stallsAt).toBeUndefined();
  });
  it('it stalls where its energy is spent on what is lacking', () => {
    const { loaded } = laid({});
    const stalled = run(0.016, 1);
    expect(stalled).toMatchObject({ endSpeed: 0, leastSpeed: 0 });
    // Lacking 1 in 100 of its weight at a crawl, and up to a quarter of that more at 1 m/s.
    const way = loaded.effectiveMass / 2 / (0.01 * WEIGHT);
    expect((stalled?.stallsAt ?? 0) - 20).toBeLessThan(way);
    expect((stalled?.stallsAt ?? 0) - 20).toBeGreaterThan(way / 1.27);
  });
});
