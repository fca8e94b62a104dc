/** Patterns of incidents, against a closed form of the scan, against chance thrown by another program, and by hand. */
import { describe, expect, it } from 'vitest';
import { isPattern, isWorthALook, type Looked, patterns } from '../../../records/patterns.ts';
import { tellLook } from '../../../words/records/patterns.ts';
import { dayAt, departure, derailed, entriesOf, LENGTH } from '../../support/incidents.ts';
import { runs } from '../../support/tier.ts';

const asked = { within: 20, firstDays: 5 };
const metres = (at: number): string => `${at} m`;
const day = dayAt(0);

/** One run, so that the line is known, and a derailment at each place. */
const at = (...places: readonly number[]) =>
  patterns(
    entriesOf([departure({ day }), ...places.map((s) => derailed(day, { at: metres(s) }))]),
    'derailment',
    asked,
  );
const placeLooks = (found: ReturnType<typeof patterns>) => found.looks.filter((l) => l.at.of === 'place');

describe('at a place', () => {
  it('all N within w of a loop: N (w/L)^(N−1), as Naus gives the scan (J. Am. Stat. Ass. 60, 1965, 532–538)', () => {
    for (const n of [2, 3, 4]) {
      const places = Array.from({ length: n }, (_, i) => 300 + 4 * i);
      const { looks, looked } = at(...places);
      const [look] = looks.filter((l) => l.at.of === 'place');
      expect(look.found).toBe(n);
      // Looked at are the stretches; what was said of no vehicle and no way is no look.
      expect(looked).toBe(n);
      expect(look.anywhere).toBeCloseTo(n * (20 / LENGTH) ** (n - 1), 12);
    }
  });

  it('by throwing them anywhere: what it says of the most in one stretch is never too rare, and not half as rare', () => {
    // Another program: a generator of its own, every stretch counted by brute force.
    let seed = 12345;
    const random = (): number => {
      seed = (Math.imul(seed, 1103515245) + 12345) & 0x7fffffff;
      return (seed >>> 8) / 0x7fffff;
    };
    const most = (places: readonly number[]): number =>
      Math.max(...places.map((a) => places.filter((b) => (b - a + LENGTH) % LENGTH <= 20).length));
    const throws = runs(20_000, 200_000);
    const n = 8;
    const seen = new Array<number>(n + 1).fill(0);
    for (let t = 0; t < throws; t++) seen[most(Array.from({ length: n }, () => LENGTH * random()))]++;
    const told = (k: number): number => {
      const places = [
        ...Array.from({ length: k }, (_, i) => i),
        ...Array.from({ length: n - k }, (_, i) => 60 + 45 * i),
      ];
      return placeLooks(at(...places))[0].anywhere;
    };
    for (const k of [3, 4]) {
      const share = seen.slice(k).reduce((a, b) => a + b, 0) / throws;
      const spread = 4 * Math.sqrt((share * (1 - share)) / throws);
      expect(told(k)).toBeGreaterThan(share - spread);
      expect(told(k)).toBeLessThan(2 * (share + spread));
    }
  });

  it('over the origin of a loop it is one place, told once', () => {
    const found = placeLooks(at(395, 398, 2, 5, 200));
    expect(found[0]).toMatchObject({ found: 4, all: 5, at: { from: 395, to: 405 } });
    expect(found.filter((l) => l.found > 1)).toHaveLength(1);
  });

  it('one alone is no pattern, and what lies beyond the line, or nobody placed, is said', () => {
    const one = at(100);
    expect([one.looked, placeLooks(one)]).toEqual([1, []]);
    const two = at(100, 300);
    expect([two.looked, placeLooks(two)]).toEqual([2, []]);
    expect(at(100, LENGTH + 50).unplaced.place).toBe(1);
    const entries = entriesOf([departure({ day }), derailed(day)]);
    expect(patterns(entries, 'derailment', asked)).toMatchObject({
      found: 1,
      looked: 0,
      unplaced: { place: 1 },
    });
    // No run on that line is recorded: nobody knows how long it is.
    expect(patterns(entriesOf([derailed(day, { at: '3 m' })]), 'derailment', asked).unplaced.place).toBe(1);
  });
});

const of = (found: ReturnType<typeof patterns>, which: Looked['of']) =>
  found.looks.filter((l) => l.at.of === which);

describe('of a vehicle', () => {
  // Car 1 runs in 10 of 20 runs, Car 2 in all; the engine in all: 10, 20 and 20 of 50.
  const ran = Array.from({ length: 20 }, (_, i) =>
    departure({ day: dayAt(i), vehicles: i < 10 ? ['Engine', 'Car 1', 'Car 2'] : ['Engine', 'Car 2'] }),
  );
  const found = patterns(
    entriesOf([...ran, ...Array.from({ length: 4 }, (_, i) => derailed(dayAt(i), { vehicle: 'Car 1' }, i))]),
    'derailment',
    asked,
  );
  it('by its share of the runs: all four of four on what ran a fifth of them', () => {
    const [look] = of(found, 'vehicle');
    expect(look).toMatchObject({ found: 4, all: 4, at: { vehicle: 'Car 1' } });
    expect(look.expected).toBeCloseTo(0.8, 12);
    expect(look.chance).toBeCloseTo(0.2 ** 4, 12);
    // Three vehicles were looked at, whether or not anything was found with them.
    expect(look.anywhere).toBeCloseTo(3 * 0.2 ** 4, 12);
    expect(isPattern(look)).toBe(true);
    expect(found.by).toBe('runs');
    // Two of two: once in 25 by itself, and once in 9 among the three.
    const two = patterns(
      entriesOf([...ran, ...[0, 1].map((i) => derailed(dayAt(i), { vehicle: 'Car 1' }, i))]),
      'derailment',
      asked,
    );
    const [few] = of(two, 'vehicle');
    expect([isPattern(few), isWorthALook(few)]).toEqual([false, true]);
    expect(tellLook(few, two.looked, { system: 'metric' })).toMatchObject({
      word: 'worth a look, may be chance',
      figures: '2 of 2; 0.4 by chance; of so few the true figure may be 0.2 to 7.2',
      odds: 'chance does so there once in 25, and anywhere among the 3 looked at once in 8',
    });
  });
  it('one that never left is not held against any share', () => {
    const other = patterns(entriesOf([...ran, derailed(day, { vehicle: 'Elsewhere' })]), 'derailment', asked);
    expect(other.unplaced.vehicle).toBe(1);
    expect(of(other, 'vehicle')).toEqual([]);
  });
});

describe('in curves of one hand', () => {
  const three = [70, 80, 110].map((s) => ({ at: metres(s) }));
  const found = (direction: 'forward' | 'reverse', says: boolean) =>
    patterns(
      entriesOf([
        departure({ day, direction }),
        ...three.map((where) =>
          derailed(day, { ...where, ...(says ? { direction } : {}) }, says ? undefined : 0),
        ),
      ]),
      'derailment',
      asked,
    );
  it.each([true, false])(
    'as it ran, by what was said or by its departure: 100 of 400 m turn left (%s)',
    (says) => {
      for (const [direction, hand] of [
        ['forward', 'left'],
        ['reverse', 'right'],
      ] as const) {
        const [look] = of(found(direction, says), 'curve');
        expect(look).toMatchObject({ found: 3, all: 3, at: { hand } });
        expect(look.chance).toBeCloseTo((100 / 400) ** 3, 12);
      }
    },
  );
  it('not without the way it ran', () => {
    const silent = patterns(entriesOf([departure({ day }), derailed(day, three[0])]), 'derailment', asked);
    expect(silent.unplaced.curve).toBe(1);
  });
});

describe('in a driver’s first days', () => {
  // One drives from the beginning; another comes on day 20 and drives ten days.
  const old = Array.from({ length: 40 }, (_, i) => departure({ day: dayAt(i), driver: 1 }));
  const fresh = Array.from({ length: 10 }, (_, i) => departure({ day: dayAt(20 + i), driver: 2 }));
  const found = (...on: readonly number[]) =>
    of(
      patterns(
        entriesOf([...old, ...fresh, ...on.map((run) => derailed(dayAt(run), {}, run))]),
        'derailment',
        asked,
      ),
      'first-days',
    );
  it('by their share: 5 runs of a newcomer, against 35 + 5 of who are settled', () => {
    // Runs 40 to 44 are the newcomer's first five days.
    const [look] = found(40, 41, 10);
    expect(look).toMatchObject({ found: 2, all: 3, at: { days: 5 } });
    const p = 5 / 45;
    expect(look.chance).toBeCloseTo(3 * p * p * (1 - p) + p ** 3, 12);
  });
  it('of who drove when the records began nobody knows', () => {
    expect(found(0, 1, 2)).toEqual([]);
    expect(found(0, 40)[0]).toMatchObject({ found: 1, all: 1 });
  });
});
