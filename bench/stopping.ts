/**
 * Stops, speed limits and sampling, 20 cars on a line of about 2 km, against general integrators on a plain
 * vehicle-by-vehicle right-hand side and, for one stop, on the engine's own tables.
 */
import { createRequire } from 'node:module';
import { acceleration } from '../engine/motion/march.ts';
import { modelOf } from '../engine/motion/model.ts';
import { prepare } from '../engine/motion/prepare.ts';
import { sampleStops, summarise } from '../engine/motion/sample.ts';
import { likely, unsafeBy } from '../engine/motion/scenario.ts';
import { stopDistance } from '../engine/motion/stop.ts';
import { openOuting } from '../engine/outing/open.ts';
import { limitsByStopping } from '../engine/questions/speed/limits.ts';
import { drawer, randomLine, randomOuting } from '../tests/support/random-outings.ts';
import { stopAgainstC } from './against-c.ts';
import { plainForces } from './plain.ts';
import { type BenchRow, ms, quickest, us } from './row.ts';

const require = createRequire(import.meta.url);

type March = (
  y: number[],
  f: (out: number[], y: number[], t: number) => void,
  t: number,
  dt: number,
) => { y: number[]; t: number; step(): void };
const rk4 = require('ode-rk4') as March;
const { Solver } = require('odex') as {
  Solver: new (
    n: number,
  ) => {
    absoluteTolerance: number;
    relativeTolerance: number;
    solve(f: (t: number, y: number[]) => number[], a: number, y: number[], b: number): { y: number[] };
  };
};

type Accelerate = (t: number, s: number, v: number) => number;

/** A stop by ode-rk4 at a step, standstill by linear interpolation. */
function byRk4(a: Accelerate, s0: number, v0: number, dt: number): number {
  const run = rk4(
    [s0, v0],
    (out, y, t) => {
      out[0] = y[1];
      out[1] = a(t, y[0], y[1]);
    },
    0,
    dt,
  );
  let [s, v] = [s0, v0];
  for (let i = 0; i < 1e6; i++) {
    run.step();
    if (run.y[1] <= 0) return s + (v / (v - run.y[1])) * dt * (v / 2) - s0;
    [s, v] = run.y;
  }
  return Number.POSITIVE_INFINITY;
}

/** A stop by odex in one-second stretches, standstill by Newton's rule. */
function byOdex(a: Accelerate, s0: number, v0: number, tolerance: number): number {
  const solver = new Solver(2);
  solver.absoluteTolerance = tolerance;
  solver.relativeTolerance = tolerance;
  const f = (t: number, [s, v]: number[]): number[] => [v, a(t, s, v)];
  let y = [s0, v0];
  let t = 0;
  for (; t < 300; t++) {
    const next = solver.solve(f, t, y, t + 1).y;
    if (next[1] <= 0) break;
    y = next;
  }
  let left = 0;
  for (let i = 0; i < 4; i++) {
    const [s, v] = left > 0 ? solver.solve(f, t, y, t + left).y : y;
    left = Math.min(1, Math.max(0, left - v / a(t + left, s, v)));
  }
  return solver.solve(f, t, y, t + left).y[0] - s0;
}

function setUp() {
  const draw = drawer(11);
  const base = randomOuting(7, 20, 0.02);
  const outing = { ...base, direction: 'forward' as const, line: { ...randomLine(draw, 0.02, true) } };
  const context = openOuting(outing);
  const ready = prepare(context, 0.5, 0);
  const inputs = ready.inputs('dry');
  const model = modelOf(inputs, likely, false);
  const plain = { acceleration: plainForces(context, ready.brakes.groups) };
  const cases = Array.from({ length: 40 }, () => ({
    s: draw(0, context.line.length * 0.9),
    v: draw(1.5, 4.5),
  }));
  const truth = cases.map(({ s, v }) => byRk4(plain.acceleration, s, v, 0.002));
  return { context, ready, inputs, model, plain, cases, truth };
}

type SetUp = ReturnType<typeof setUp>;

const worst = (values: readonly number[], truth: readonly number[]): string =>
  Math.max(...values.map((d, i) => Math.abs(d - truth[i]) / truth[i])).toExponential(1);

function stopRows({ model, plain, cases, truth }: SetUp): BenchRow[] {
  const ours = (): number[] => cases.map(({ s, v }) => stopDistance(model, s, v));
  const time =
    quickest(() => {
      for (let i = 0; i < 200; i++) ours();
    }) / 200;
  const tables: Accelerate = (t, s, v) => acceleration(model, t, s, v);
  const others: [string, () => number[]][] = [
    [
      'ode-rk4 at 0.05 s, plain right-hand side',
      () => cases.map(({ s, v }) => byRk4(plain.acceleration, s, v, 0.05)),
    ],
    [
      'odex at 1e-3, plain right-hand side',
      () => cases.map(({ s, v }) => byOdex(plain.acceleration, s, v, 1e-3)),
    ],
    ['ode-rk4 at 0.1 s, the engine’s tables', () => cases.map(({ s, v }) => byRk4(tables, s, v, 0.1))],
  ];
  return others.map(([against, run]) => {
    const theirs = quickest(run, 3);
    return {
      work: 'one stop, 20 cars',
      ours: us(time, cases.length),
      against,
      theirs: us(theirs, cases.length),
      ratio: theirs / time,
      ourError: worst(ours(), truth),
      theirError: worst(run(), truth),
    };
  });
}

function limitRow({ context, plain, model }: SetUp): BenchRow {
  const states = ['dry', 'wet', 'sanded'] as const;
  const count = Math.floor(context.line.length / 0.5);
  const available = Float64Array.from({ length: count }, (_, j) => 25 + 12 * Math.sin(j / 90));
  const ceiling = new Float64Array(count).fill(4.5);
  const work = (): void => {
    const fresh = prepare(context, 0.5, 0);
    for (const state of states)
      limitsByStopping(modelOf(fresh.inputs(state), unsafeBy(0.6)), 0, 0.5, ceiling, available);
  };
  const time = quickest(work);
  // The reference solves a few points by halving and is scaled up.
  const points = 6;
  const theirs = quickest(() => {
    for (let k = 0; k < points; k++) {
      const s = (k * context.line.length) / points;
      let [low, high] = [0, 4.5];
      for (let i = 0; i < 12; i++) {
        const v = (low + high) / 2;
        if (byRk4(plain.acceleration, s, v, 0.05) <= available[k]) low = v;
        else high = v;
      }
    }
  }, 2);
  const scaled = (theirs / points) * count * states.length;
  const found = limitsByStopping(model, 0, 0.5, ceiling, available).speed;
  const over = Math.max(...Array.from(found, (v, j) => stopDistance(model, j * 0.5, v) / available[j] - 1));
  return {
    work: `limits every 0.5 m of ${(context.line.length / 1000).toFixed(1)} km, 3 rail states, tables included`,
    ours: ms(time),
    against: 'ode-rk4 at 0.05 s with halving (from 6 points)',
    theirs: ms(scaled),
    ratio: scaled / time,
    ourError: `stop over what is available by ${(Math.max(0, over) * 100).toFixed(2)} %`,
    theirError: 'speed to 1e-3',
  };
}

function sampleRow({ inputs, plain }: SetUp): BenchRow {
  const n = 10_000;
  const time = quickest(() => {
    sampleStops(inputs, 200, 3, n, 1);
  }, 3);
  const few = 20;
  const theirs = quickest(() => {
    for (let i = 0; i < few; i++) byRk4(plain.acceleration, 200, 3 + i * 1e-3, 0.05);
  }, 3);
  const [one, other] = [
    summarise(sampleStops(inputs, 200, 3, n, 1)),
    summarise(sampleStops(inputs, 200, 3, 200_000, 2)),
  ];
  return {
    work: '10,000 sampled stops',
    ours: ms(time),
    against: 'ode-rk4 at 0.05 s (from 20 stops)',
    theirs: ms((theirs / few) * n),
    ratio: ((theirs / few) * n) / time,
    ourError: `99th percentile off by ${(Math.abs(one.p99 / other.p99 - 1)).toExponential(1)} against 200,000 samples`,
    theirError: 'not sampled',
  };
}

export function run(): BenchRow[] {
  const all = setUp();
  return [...stopRows(all), ...stopAgainstC(all.model, all.cases), limitRow(all), sampleRow(all)];
}
