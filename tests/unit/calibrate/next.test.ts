/** What to measure next: what is assumed is ranked, what is measured is not asked for. */
import { beforeAll, describe, expect, it } from 'vitest';
import { type Candidate, candidates } from '../../../desk/measured/candidates.ts';
import { whatToMeasure } from '../../../desk/measured/next.ts';
import { carefulStop, longestOf } from '../../../desk/measured/stop-parts.ts';
import { countCars, leastCars } from '../../../engine/answer/counts.ts';
import { inquire } from '../../../engine/answer/inquiry.ts';
import { exact } from '../../../engine/base/quantity.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import type { SpeedMap } from '../../../engine/questions/speed/types.ts';
import { readOuting } from '../../../papers/index.ts';
import { type CarefulStop, longWords } from '../../../words/measured/stop-parts.ts';
import { type CarsAfter, type Worth, worthLines, worthWords } from '../../../words/measured/worth.ts';
import { examplePaper } from '../../support/papers.ts';
import { full, runs } from '../../support/tier.ts';

/** A rough look: few draws, a coarse grid. */
const quick = { counts: false, samples: 60, step: 2 };

async function example(name: string): Promise<Outing> {
  const content = JSON.stringify(await examplePaper(name));
  const read = await readOuting({ path: 'outing.json', content }, async () => undefined);
  if (!read.ok) throw new Error(name);
  return read.value;
}

describe('of an outing in which much is assumed', () => {
  let ranked: readonly Worth[] = [];
  let outing: Outing;
  let stop: CarefulStop | undefined;
  beforeAll(async () => {
    outing = await example('battery-vacuum');
    ({ stop, worths: ranked } = whatToMeasure(outing, { ...quick, counts: full }));
  });

  it('ranks the tests, best first', () => {
    if (process.env['SAY']) console.log(ranked);
    expect(ranked.map((w) => w.kind)).toContain('coast-down');
    for (const w of ranked) {
      expect(w.changesWord).toBeGreaterThanOrEqual(w.bettersWord);
      expect(w.minutes).toBeGreaterThan(0);
      expect(Number.isFinite(w.faster)).toBe(true);
    }
    const each = ranked.map((w) => w.changesWord / w.minutes);
    expect(each).toEqual([...each].sort((a, b) => b - a));
  });

  it('says what the careful stop is so long for, what does most first', () => {
    if (!stop) throw new Error('no stop');
    expect(stop.careful).toBeGreaterThan(stop.likely);
    // Half a second later at that speed, and more: nothing else of a train with good brakes does as much.
    expect(stop.parts[0].key).toBe('reaction');
    expect(stop.parts[0].adds).toBeGreaterThan(0.5 * stop.speed);
    // Where it is longest as it may run, no faster than the speed that is meant.
    expect(stop.speed).toBeLessThanOrEqual(outing.plannedSpeed as number);
    for (const { adds } of stop.parts) expect(adds).toBeLessThan(stop.careful - stop.likely + 1e-9);
    const said = longWords(stop, { system: 'imperial', wording: 'us' });
    expect(said.parts[0]).toMatch(/^\d+ ft for the driver's reaction \(stop test from a signal/);
  });

  it('a reaction that was timed is not asked for', () => {
    const timed = { ...outing.conditions, reaction: exact(1.5, 'measured') };
    const known = { ...outing, conditions: timed };
    const { find } = candidates.find((c) => c.kind === 'stop-test') as Candidate;
    expect(ranked.map((w) => w.kind)).toContain('stop-test');
    expect(find(known, (q) => q, new Set(), new Map())).toBeUndefined();
    const at = { at: 100, speed: 2 };
    expect(carefulStop(inquire(known, quick), at)?.parts.map((part) => part.key)).not.toContain('reaction');
  });

  it('does not ask for what is measured', () => {
    const vehicles = outing.train.vehicles.map((v) => ({
      ...v,
      resistance: { ...v.resistance, rolling: exact(v.resistance.rolling.value, 'measured') },
    }));
    const known = { ...outing, train: { ...outing.train, vehicles } };
    expect(whatToMeasure(known, quick).worths.map((w) => w.kind)).not.toContain('coast-down');
  });
});

describe('argued by hand', () => {
  /** Nobody limits the speed but how far the train takes to stop; of its couplers nobody measured the slack. */
  async function byStop(): Promise<Outing> {
    const outing = await example('battery-vacuum');
    const { speed: _speed, ...host } = outing.host;
    const vehicles = outing.train.vehicles.map((v) => {
      const [{ slack: _f, ...front }, { slack: _r, ...rear }] = [v.front, v.rear];
      return { ...v, front, rear };
    });
    return { ...outing, host, plannedSpeed: 6, train: { ...outing.train, vehicles } };
  }

  let ranked: readonly Worth[] = [];
  beforeAll(async () => {
    ranked = whatToMeasure(await byStop(), quick).worths;
  });

  it('what stops the train is worth more than the slack between its cars', () => {
    if (process.env['SAY']) console.log(ranked);
    const place = (kind: string): number => ranked.findIndex((w) => w.kind === kind);
    expect(place('brake-pull')).toBeGreaterThanOrEqual(0);
    expect(place('slack')).toBeGreaterThan(place('brake-pull'));
    expect(ranked[place('brake-pull')].faster).not.toBe(0);
    expect(ranked[place('slack')].faster).toBe(0);
  });

  it('each sort of vehicle by itself, and each of them takes its own time', () => {
    const [cars, ...more] = ranked.filter((w) => w.kind === 'brake-pull');
    expect(more).toEqual([]);
    expect(cars).toMatchObject({ of: ['Vacuum car 1', 'Vacuum car 2', 'Vacuum car 3'], minutes: 30 });
    const coasts = ranked.filter((w) => w.kind === 'coast-down');
    expect(coasts.map((w) => w.of?.length).sort()).toEqual([1, 3]);
  });
});

it('asks first for what the answer cannot do without', async () => {
  const [first] = whatToMeasure(await example('brake-not-measured'), quick).worths;
  expect(first).toMatchObject({ kind: 'brake-pull' });
  expect(first.asked).toBeGreaterThan(0);
});

it('the longest stop is that of a running train, at the speed that it may have there', () => {
  const map = (limit: number[], stops: number[]) =>
    ({
      at: Float64Array.of(0, 10, 20),
      limit: Float64Array.from(limit),
      cautiousStop: Float64Array.from(stops),
    }) as SpeedMap;
  expect(longestOf(map([3, 2, 3], [20, 30, 25]))).toEqual({ at: 10, speed: 2 });
  expect(longestOf(map([3, 2, 3], [20, Infinity, 25]), 1)).toEqual({ at: 20, speed: 1 });
  expect(longestOf(map([0, 0, 0], [20, 30, 25]))).toBeUndefined();
  expect(longestOf(null)).toBeUndefined();
});

describe('the number of cars', () => {
  const said = (cars: CarsAfter): string =>
    worthWords(
      { kind: 'coast-down', minutes: 10, asked: 0, changesWord: 0, bettersWord: 0, faster: 0, cars },
      { system: 'imperial', wording: 'us' },
    );
  const told = [
    [
      { now: 3, likely: 5, least: 3, most: 6, mean: 4.6 },
      'let you take five cars instead of three (three to six).',
    ],
    [
      { now: 3, likely: 2, least: 1, most: 3, mean: 2 },
      'no more than two cars instead of three (one to three).',
    ],
    [{ now: 1, likely: 0, least: 0, most: 1, mean: 0.4 }, 'that you may take no car instead of one'],
    [{ now: 4, likely: 4, least: 3, most: 5, mean: 4 }, 'four cars as now, but it may be three or five'],
    [{ now: 4, likely: 4, least: 4, most: 4, mean: 4 }, 'hardly change the answer'],
  ] as const;
  it('what hardly changes anything stands in one line', () => {
    const none = { kind: 'slack', minutes: 5, asked: 0, changesWord: 0, bettersWord: 0, faster: 0 } as const;
    const voice = { system: 'imperial', wording: 'us' } as const;
    const lines = worthLines(
      [
        { ...none, kind: 'tilt', faster: 1, of: ['Car 1'] },
        { ...none, of: ['Car 2'] },
      ],
      voice,
    );
    expect(lines.told.map(({ worth }) => worth.kind)).toEqual(['tilt']);
    expect(lines.hardly).toBe('It would hardly change the answer to make: slack of Car 2.');
    expect(worthLines([], voice)).toEqual({ told: [] });
  });
  it.each(told)('%j', (cars, words) => expect(said(cars)).toContain(words));
});

it.each(['battery-vacuum', 'too-long-wet'].slice(0, runs(1, 2)))(
  'the number of cars of %s is that of all counts',
  async (name) => {
    const inquiry = inquire(await example(name), { samples: 60, step: 2 });
    const { railState } = inquiry.context.outing.conditions;
    expect(leastCars(inquiry, railState)).toBe(countCars(inquiry, [railState])[0].least);
  },
  60_000,
);
