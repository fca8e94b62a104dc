/** Readings that cannot be right: each a clear word, nothing fitted silently. */
import { describe, expect, it } from 'vitest';
import { assumedValues, instruments } from '../../../data/index.ts';
import type { CoastDown, CoastRun } from '../../../engine/calibrate/tests/coast-down.ts';
import { measure, type Test } from '../../../engine/calibrate/tests/index.ts';
import {
  asked,
  assumedOuting,
  coastedDown,
  luck,
  stoppedShort,
  trueTrain,
} from '../../support/true-trains.ts';

const outing = assumedOuting(3);
const truth = trueTrain(outing, luck(3));
const good = coastedDown(truth, luck(33));
const around = asked(outing);
const bare = { instruments, assumed: assumedValues };
const tell = (test: Test) => measure(test, around);

/** The same coasts with one run otherwise. */
const changed = (i: number, change: (run: CoastRun) => CoastRun): CoastDown => ({
  ...good,
  runs: good.runs.map((run, k) => (k === i ? change(run) : run)),
});
const timed =
  (factor: number, pass: number) =>
  (run: CoastRun): CoastRun => ({
    ...run,
    passes: run.passes.map((p, k) => (k === pass ? { ...p, time: (p.time as number) * factor } : p)),
  });

describe('a coast-down', () => {
  it('of good readings tells the rolling resistance', () => {
    const made = tell(good);
    expect(made).toMatchObject({ ok: true, scatter: 1 });
    expect('bad' in made).toBe(false);
  });

  it('with the last time of a run ten times off: found, said, left out', () => {
    const last = good.runs[0].passes.length - 1;
    const made = tell(changed(0, (run) => ({ ...timed(10, last)(run) })));
    const without = tell(good);
    if (!made.ok || !without.ok) throw new Error(JSON.stringify(made));
    expect(made.bad).toMatchObject({ index: last, slip: 'tenfold' });
    expect(made.results[0].quantity.value).toBeCloseTo(without.results[0].quantity.value, 3);
  });

  it('with a mark far off: it would have sped up', () => {
    const feet = changed(1, (run) => ({
      way: run.way,
      from: run.from,
      passes: run.passes.map((p, k) => (k === 1 ? { ...p, at: run.from + (p.at - run.from) * 1.5 } : p)),
    }));
    expect(tell(feet)).toMatchObject({ ok: false, code: 'coast-speeds-up' });
  });

  it('with times that run backwards', () => {
    const back = changed(1, (run) => ({
      ...run,
      passes: run.passes.map((p, k) => (k === 1 ? { ...p, time: 0.5 } : p)),
    }));
    expect(tell(back)).toMatchObject({
      ok: false,
      code: 'runs-backwards',
      facts: { reading: 6 + (good.runs[0].rest ? 1 : 0) },
    });
  });

  it('that speeds up where the line does not fall', () => {
    const faster: CoastRun = {
      way: 'forward',
      from: 110,
      passes: [
        { at: 122, speed: 2 },
        { at: 134, speed: 2.4 },
        { at: 146, speed: 4.1 },
      ],
    };
    expect(tell({ ...good, runs: [faster] })).toMatchObject({
      ok: false,
      code: 'coast-speeds-up',
      facts: { reading: 3 },
    });
  });

  it('of two readings only', () => {
    const few = {
      ...good,
      runs: [{ way: 'forward', from: 110, passes: good.runs[0].passes.slice(0, 2) } as const],
    };
    expect(tell(few)).toMatchObject({ ok: false, code: 'too-few-readings', facts: { found: 2, needed: 3 } });
  });

  it('one way on a line that nobody surveyed: the other way would tell', () => {
    const guessed = { ...outing, line: { ...outing.line, heightQuality: 'assumed' } } as const;
    const oneWay = { ...good, runs: good.runs.filter((r) => r.way === 'forward') };
    expect(measure(oneWay, asked(guessed))).toMatchObject({
      ok: false,
      code: 'not-told-apart',
      facts: { further: 'other-way' },
    });
    expect(measure(good, asked(guessed)).ok).toBe(true);
  });

  it('without a train', () => {
    expect(measure(good, bare)).toMatchObject({ ok: false, code: 'not-stated', facts: { field: 'outing' } });
  });
});

describe('a stop test', () => {
  const stops = stoppedShort(truth, luck(7));
  it('that ends behind where it began', () => {
    const [first, ...rest] = stops.stops;
    const back = { ...stops, stops: [{ ...first, restAt: first.from - 1 }, ...rest] };
    expect(tell(back)).toMatchObject({ ok: false, code: 'runs-backwards', facts: { reading: 1 } });
  });
  it('with a speed in miles per hour among metres per second', () => {
    const [first, ...rest] = stops.stops;
    const made = tell({ ...stops, stops: [{ ...first, speed: first.speed * 2.23694 }, ...rest] });
    expect(made.ok && made.bad).toMatchObject({ index: 0, kind: 'speed', slip: 'mph-m/s' });
  });
});

describe('a tilt', () => {
  const tilt = (angle: number, more: object = {}): Test => ({
    kind: 'tilt',
    source: 'tilt',
    contactWidth: 0.2,
    stopHeight: 0.02,
    rimHeight: 0.06,
    tilts: [
      { side: 'left', angle },
      { side: 'right', angle: 0.33 },
    ],
    ...more,
  });
  it('gives the height of the centre: half the width ÷ the tangent', () => {
    const made = measure(tilt(0.33), bare);
    if (!made.ok) throw new Error(made.code);
    expect(made.results[0].quantity.value).toBeCloseTo(0.1 / Math.tan(0.33), 6);
  });
  it('read by a phone held upside down', () => {
    expect(measure(tilt(0.33 + Math.PI / 2 + 0.2), bare)).toMatchObject({ ok: false, code: 'upside-down' });
  });
  it('against a stop that holds it up', () => {
    expect(measure(tilt(0.33, { stopHeight: 0.05 }), bare)).toMatchObject({
      ok: false,
      code: 'stop-too-high',
    });
  });
  it('the wrong way', () => {
    expect(measure(tilt(-0.3), bare)).toMatchObject({ ok: false, code: 'out-of-range' });
  });
});

describe('the systematic part', () => {
  it('never shrinks with the number of readings', () => {
    const pulls = (n: number): Test => ({
      kind: 'locked-wheels',
      source: 'drag',
      pulls: Array.from(
        { length: n },
        (_, i) => ({ force: 300, way: i % 2 ? 'forward' : 'reverse' }) as const,
      ),
    });
    const vehicle = outing.train.vehicles[1];
    const sureness = [4, 40, 4000].map((n) => {
      const made = measure(pulls(n), { ...bare, vehicle });
      if (!made.ok) throw new Error(made.code);
      const [{ interval, quantity, systematic }] = made.results;
      return { spread: Math.log(interval[1] / interval[0]) / 3.92, value: quantity.value, systematic };
    });
    const scale = Math.log(1.05 / 0.95) / 2 / Math.sqrt(6);
    for (const { spread } of sureness) expect(spread).toBeGreaterThan(0.99 * scale);
    expect(sureness[2].spread).toBeLessThan(1.01 * scale);
    expect(sureness[2].systematic).toBeGreaterThan(0.98);
    expect(sureness[0].systematic).toBeLessThan(sureness[1].systematic);
  });
});
