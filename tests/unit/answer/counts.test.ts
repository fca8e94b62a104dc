/** How many cars: from the train as it is, up and down, and never a count of a train that nobody can stop. */
import { describe, expect, it } from 'vitest';
import { engineBrakeNote, limitLines, mostWords } from '../../../desk/count-ways.ts';
import { countCars } from '../../../desk/stops.ts';
import { answerOnly } from '../../../engine/answer/answer.ts';
import { countCars as countsOf, reachFrom } from '../../../engine/answer/counts.ts';
import { inquire } from '../../../engine/answer/inquiry.ts';
import type { CarCount } from '../../../engine/answer/types.ts';
import { withCars } from '../../../engine/answer/with-cars.ts';
import { atLatest, brakeTimes, openOuting, timesFound } from '../../../engine/outing/open.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import type { Question } from '../../../engine/questions/question.ts';
import { railStates } from '../../../engine/things/rail.ts';
import { isCar } from '../../../engine/things/train/cars.ts';
import type { Voice } from '../../../words/voice.ts';
import { changedExample } from '../../support/changed-examples.ts';
import { randomOuting } from '../../support/random-outings.ts';
import { runs } from '../../support/tier.ts';

const limit = { what: 'start' } as const;
/** Fails but for the numbers given. */
const only =
  (...good: number[]) =>
  (n: number) =>
    good.includes(n) ? undefined : limit;

describe('counting from the train as it is', () => {
  it('goes up and down: few cars may fail and more do better', () => {
    expect(reachFrom(only(3, 4, 5, 6), 5, 0, 40)).toEqual({ from: 3, to: 6, next: limit, before: limit });
  });
  it('takes fewer where it fails itself, else more', () => {
    expect(reachFrom(only(1, 2), 5, 0, 40)).toEqual({ from: 1, to: 2, next: limit, before: limit });
    expect(reachFrom(only(7, 8), 5, 0, 40)).toEqual({ from: 7, to: 8, next: limit, before: limit });
  });
  it('tries no longer train where nothing holds this one: by its length alone it would stand, and be held by none', () => {
    const holds = (has: number) => (n: number) =>
      n >= 9 ? undefined : { what: 'hold', has: { si: has, kind: 'force' } as const };
    expect(reachFrom(holds(0), 2, 0, 40)).toMatchObject({ never: { what: 'hold' } });
    expect(reachFrom(holds(1), 2, 0, 40)).toMatchObject({ from: 9, to: 40 });
  });
  it('says by what the train itself fails where no number does', () => {
    expect(reachFrom(only(), 5, 0, 40)).toEqual({ never: limit });
  });
  it('knows nothing where nobody can tell for the train as it is', () => {
    expect(reachFrom(() => 'unknown', 5, 0, 40)).toBeNull();
    // Of another number that nobody can tell ends the count.
    expect(reachFrom((n) => (n > 5 ? 'unknown' : undefined), 5, 0, 40)).toMatchObject({ from: 0, to: 5 });
  });
});

const voice = (outing: Outing): Voice => ({ system: 'imperial', wording: 'us', outing });
const todayOf = (outing: Outing, cars: readonly CarCount[]): CarCount =>
  cars.find((c) => c.railState === outing.conditions.railState)!;

const heavyAir = await changedExample('heavy-air', () => undefined);
let heavy: readonly CarCount[] | undefined;
/** Counted once for all that ask. */
const heavyCounts = (): readonly CarCount[] => {
  heavy ??= countCars(heavyAir);
  return heavy;
};

describe('a train without brakes', () => {
  it('is stopped in no number of cars, and no word but hold is said', async () => {
    const outing = await changedExample('steam-light', (paper) => {
      for (const { vehicle } of paper.train.vehicles) vehicle['brakes'] = [];
    });
    const cars = countCars(outing);
    for (const count of cars) {
      expect(count.none).toContain('stopped');
      expect(count.least).toBeNull();
      expect(count.by).toBe('stopped');
    }
    expect(mostWords(todayOf(outing, cars))).toBe('no number may leave');
    expect(limitLines(todayOf(outing, cars), cars, voice(outing)).join()).toContain(
      'no brake answers the driver',
    );
    expect(engineBrakeNote(outing)).toBe('The engine has no brake of its own.');
    const answer = answerOnly(outing);
    expect(answer.verdict).toBe('hold');
    expect(answer.findings.some((f) => f.code === 'no-brake-answers' && f.severity === 'forbids')).toBe(true);
  });

  it('on its engine is told so, and the count is of what the cars stop', async () => {
    const outing = await changedExample('heavy-air', (paper) => {
      for (const { vehicle } of paper.train.vehicles) if (vehicle.role === 'engine') vehicle['brakes'] = [];
    });
    expect(engineBrakeNote(outing)).toBe('The engine has no brake of its own.');
    const [count] = countsOf(inquire(outing), [outing.conditions.railState]);
    // A bare engine cannot be stopped: the least number is of braked cars.
    if (!count.none.includes('stopped')) expect(count.from.stopped).toBeGreaterThan(0);
    expect(engineBrakeNote(await changedExample('heavy-air', () => undefined))).toBe('');
  });
});

describe('the gap', () => {
  it('grows to what the stop needs and takes no car from the count', async () => {
    const rule = { value: 20, source: 'a test' };
    const near = { ...heavyAir, host: { ...heavyAir.host, leastGap: rule } };
    const rails = railStates.slice(0, runs(2, railStates.length));
    const wide = rails.map((rail) => heavyCounts().find((c) => c.railState === rail)?.stopped);
    expect(countsOf(inquire(near), rails).map((c) => c.stopped)).toEqual(wide);
  });
});

describe('more than are stopped from running speed', () => {
  const damp = (): CarCount => heavyCounts().find((c) => c.railState === 'damp')!;

  it('are told where they are stopped slower, and then run with a lower speed and no hold for stopping', () => {
    const { stoppedSlower, none, stopped } = damp();
    expect(none.includes('stopped') ? 0 : stopped).toBeLessThan(stoppedSlower!);
    const asMany = withCars(heavyAir, stoppedSlower!)!;
    const onDamp = { ...asMany, conditions: { ...asMany.conditions, railState: 'damp' as const } };
    const { findings } = answerOnly(onDamp);
    expect(findings.filter((f) => f.severity === 'forbids').map((f) => f.code)).toEqual([]);
    expect(findings.some((f) => f.code === 'speed-limited')).toBe(true);
  });

  it('are not told where there are none', () => {
    const dry = heavyCounts().find((c) => c.railState === 'dry')!;
    expect(dry.stoppedSlower).toBeNull();
    const greasy = heavyCounts().find((c) => c.railState === 'greasy')!;
    expect([greasy.none.includes('stopped'), greasy.stoppedSlower]).toEqual([true, null]);
  });
});

describe('what sets a count', () => {
  it('is told with place, odds, need and what there is, and what the next car would need', async () => {
    const outing = heavyAir;
    const cars = heavyCounts();
    const count = todayOf(outing, cars);
    const lines = limitLines(count, cars, voice(outing));
    expect(lines[0]).toMatch(
      /^starts anywhere \d+ \(1 start in \d+ fails\): the \d+th car would need \d+ lbf more grip: at \d+ ft it needs \d+ lbf to start, and its driving wheels grip \d+ lbf; 1 start in \d+ fails$/,
    );
    expect(lines[1]).toMatch(/^starts where booked .* \(Mill Lane crossing\) /);
    expect(lines[2]).toMatch(/^keeps 3 mph with \d+ .* it needs \d+ lbf at 3 mph, and/);
    expect(lines[3]).toMatch(
      /^stopped \d+: the \d+th car would need \d+ ft more sight: at \d+ ft the stop takes \d+ ft, and \d+ ft is seen$/,
    );
    expect(lines[4]).toMatch(/^held by driver \d+: the \d+\w\w car would need \d+ lbf more parking brake: /);
    // Looser where booked than anywhere, and no more fail than may.
    expect(count.pulledBooked).toBeGreaterThanOrEqual(count.pulled!);
    for (const share of Object.values(count.odds)) expect(share).toBeLessThanOrEqual(0.05);
    // More is never less than what is lacking, as printed.
    for (const line of lines) {
      const [more, need, has] = [
        /need (\d+) /,
        /(?:needs|takes|pulls) (\d+) /,
        /(?:grip|hold|pulls|and) (\d+) (?:lbf|ft)(?!.*\d+ (?:lbf|ft))/,
      ].map((of) => Number(of.exec(line)?.[1]));
      expect(more, line).toBeGreaterThanOrEqual(need - has - 1);
    }
  });

  it('is where most is lacking: with as much more sight there, the next car stops', async () => {
    const outing = await changedExample('steam-light', () => undefined);
    const [{ sets, stopped }] = countsOf(inquire(outing), ['dry']);
    const { at, need, has } = sets.stopped!;
    const more = need!.si - has!.si + 0.01;
    const seen = {
      ...outing,
      line: {
        ...outing.line,
        sights: outing.line.sights.map((s) => ({ ...s, distance: s.distance + more })),
        places: outing.line.places.map((p) => (p.sight ? { ...p, sight: p.sight + more } : p)),
      },
    };
    expect(at).toBeDefined();
    expect(countsOf(inquire(seen), ['dry'])[0].stopped).toBeGreaterThan(stopped!);
  });
});

describe('a longer train of the same cars', () => {
  const cars = heavyAir.train.vehicles.filter(isCar);
  const [first, last] = [cars[0], cars[cars.length - 1]];
  const on = (outing: Outing, vehicle: string) => outing.riders.filter((r) => r.vehicle === vehicle);
  const masses = (outing: Outing, vehicle: string) => on(outing, vehicle).map((r) => r.mass.value);
  /** With this many people on the last car, and all others as they were. */
  const withLast = (people: number): Outing => ({
    ...heavyAir,
    riders: [
      ...heavyAir.riders.filter((r) => r.vehicle !== last.id),
      ...on(heavyAir, last.id).slice(0, people),
    ],
  });
  const added = (outing: Outing): number[] =>
    masses(withCars(outing, cars.length + 1)!, `${last.id}+${cars.length}`);

  it('is laden as its fullest car, whoever sits on the last', () => {
    const weight = (list: readonly number[]): number => list.reduce((a, b) => a + b, 0);
    const heaviest = (outing: Outing): number =>
      Math.max(...cars.map(({ id }) => weight(masses(outing, id))));
    expect(masses(heavyAir, first.id).length).toBeGreaterThan(1);
    for (const outing of [0, 1, 9].map(withLast))
      expect(weight(added(outing))).toBeCloseTo(heaviest(outing), 9);
    expect(weight(masses(withLast(1), last.id))).toBeLessThan(heaviest(withLast(1)));
  });

  it('takes nobody who would find no seat on the car that is copied', () => {
    const [{ seat }] = on(heavyAir, last.id);
    const seats = last.seats.filter(({ id }) => id === seat);
    const vehicles = heavyAir.train.vehicles.map((v) => (v === last ? { ...v, seats } : v));
    const short = { ...withLast(1), train: { ...heavyAir.train, vehicles } };
    expect(added(short)).toEqual(masses(short, last.id));
  });

  it('has its brakes no earlier at the latest, and no stronger, vehicle for vehicle', async () => {
    const outing = await changedExample('battery-vacuum', () => undefined);
    const [own, ...longer] = [4, 6, 10].map((n) => brakeTimes(withCars(outing, n)!));
    expect(own.length).toBeGreaterThan(3);
    for (const times of longer)
      for (const { vehicle, gear, deadTime, buildUp, forceShare } of own) {
        const late = atLatest(times).find((t) => t.vehicle === vehicle && t.gear.id === gear.id)!;
        for (const key of ['low', 'value', 'high'] as const) {
          expect(late.deadTime[key]).toBeGreaterThanOrEqual(deadTime[key]);
          expect(late.deadTime[key] + late.buildUp[key]).toBeGreaterThanOrEqual(deadTime[key] + buildUp[key]);
        }
        expect(late.forceShare).toBeLessThanOrEqual(forceShare * 1.001);
      }
  });

  /** Reckoned with the times of three cars, nineteen would stop; with a pipe filled anew the next of eleven does not. */
  it('stops no more from a short train than from a long one, whose pipe takes three times as long to fill', async () => {
    const outing = await changedExample('battery-vacuum', (paper) => {
      Object.assign(paper['line'] as object, {
        places: [],
        speedLimits: [],
        sights: [{ from: '0 ft', to: '2870 ft', distance: '30 m' }],
      });
      paper['host'] = { heedway: 'host', version: 1, name: 'no rules' };
      paper['plannedSpeed'] = '2.2 m/s';
    });
    const own = outing.train.vehicles.filter(isCar).length;
    const last = (n: number) => brakeTimes(withCars(outing, n)!).at(-1)!;
    const full = (n: number): number => last(n).deadTime.value + last(n).buildUp.value;
    expect(own).toBe(3);
    expect(full(14)).toBeGreaterThan(3 * full(own));
    const stopped = (n: number): number =>
      countsOf(inquire(withCars(outing, n)!, { samples: 300, couplerRuns: 3 }), ['dry'])[0].stopped!;
    expect(stopped(own)).toBeGreaterThan(own);
    expect(stopped(own)).toBeLessThanOrEqual(stopped(14));
  });

  it('is found in what was opened, as it is reckoned', async () => {
    const outing = await changedExample('battery-vacuum', () => undefined);
    expect(timesFound(openOuting(outing))).toEqual(brakeTimes(outing));
  });
});

describe('a question that fails', () => {
  it('is asked once, however many start from its figures', () => {
    let asked = 0;
    const broken: Question<number> = {
      id: 'broken',
      reads: [],
      findings: {},
      ask: () => {
        asked++;
        throw new Error('made to fail');
      },
    };
    const inquiry = inquire(randomOuting(5, 2));
    for (let i = 0; i < 3; i++) expect(() => inquiry.of(broken)).toThrow('made to fail');
    expect(asked).toBe(1);
  });
});

it('whoever is told that no number may leave is told why', () => {
  let none = 0;
  for (let seed = 1; seed <= runs(24, 400); seed++) {
    const inquiry = inquire(randomOuting(seed, undefined, 0.04), { step: 4, samples: 60, couplerRuns: 1 });
    for (const { least, by, leastSets } of countsOf(inquiry, ['dry', 'damp'])) {
      if (least !== null || by === null) continue;
      none++;
      expect(leastSets, `seed ${seed}, by ${by}`).toBeDefined();
    }
  }
  expect(none).toBeGreaterThan(0);
});
