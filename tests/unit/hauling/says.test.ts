/**
 * What is said of hauling, on an incline of 2 in 100 with rolling resistance of 6 N/kN, half as much again at the start, and
 * 1 N/kN more for each m/s. Of the train's weight the start asks for 2.9 in 100, crawling for 2.6.
 */
import { describe, expect, it } from 'vitest';
import { openOuting } from '../../../engine/outing/open.ts';
import { askHauling } from '../../../engine/questions/haul/ask.ts';
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

describe('a start that some do not make', () => {
  // Pull by adhesion that varies by half either way about what the start takes.
  const some = (share: number, more: OnClimb = {}) => {
    const { written } = laid({ pull: 1e5, ...more });
    const { assumed } = written;
    const { vehicles, mass } = laid({}).loaded;
    const driven = vehicles[0].mass / mass;
    const value = (share * 0.029) / driven;
    const dry = { low: value * 0.5, value, high: value * 1.5, how: 'measured' } as const;
    const { findings } = askHauling(
      openOuting({ ...written, assumed: { ...assumed, adhesion: { ...assumed.adhesion, dry } } }),
    );
    return findings.filter((f) => f.code === 'cannot-start').map((f) => f.severity);
  };
  it('is a note where fewer than half fail and nobody need start there', () => {
    expect(some(1.25, { climb: [150, 250] })).toEqual(['notes']);
  });
  it('limits where the train is booked to stop, or more than half fail', () => {
    expect(some(1.25, { climb: [150, 250], signal: 240 })).toEqual(['limits']);
    // The run begins on the climb.
    expect(some(1.25)).toEqual(['limits']);
    expect(some(0.97, { climb: [150, 250] })).toEqual(['limits']);
  });
  it('is no matter where hardly one in twenty fails', () => expect(some(1.9)).toEqual([]));
});
