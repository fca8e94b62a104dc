/** One stop beside the same algorithm in scalar C, where a compiler is present. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { emptyTrace, type StopModel } from '../engine/motion/model.ts';
import { stopInto } from '../engine/motion/stop.ts';
import { RAMP_STEPS, SPEED_NODES } from '../engine/motion/stop-inputs.ts';
import { type BenchRow, quickest } from './row.ts';

export interface StopCase {
  readonly s: number;
  readonly v: number;
}

/** Short stretches, so that many run through without another program between. */
const REPEATS = 50;
const RUNS = 60;
/** No vectors, no fused multiply-add: one double at a time, as here. */
const FLAGS = ['-O3', '-fno-tree-vectorize', '-ffp-contract=off', '-std=c11'];

const numbers = (model: StopModel, cases: readonly StopCase[]): Float64Array => {
  const { potential: p } = model;
  const { massFactor, inertia, stride, reaction, dt, notice, a, b, c, channels } = model;
  return Float64Array.from([
    ...[p.from, p.step, massFactor, inertia, stride, reaction, dt, notice, a, b, c, p.count, channels],
    cases.length,
    ...p.W.subarray(0, p.count),
    ...p.slope.subarray(0, p.count),
    // The model has room for more channels than it uses.
    ...[model.mean, model.lead].flatMap((t) => [...t.subarray(0, channels * RAMP_STEPS)]),
    ...model.node.subarray(0, channels * (RAMP_STEPS + 1)),
    ...model.factor.subarray(0, channels * SPEED_NODES),
    ...model.early,
    ...model.force,
    ...cases.flatMap(({ s, v }) => [s, v]),
  ]);
};

/** @param model on one rail, without a bad spot */
export function stopAgainstC(model: StopModel, cases: readonly StopCase[]): BenchRow[] {
  const folder = mkdtempSync(join(tmpdir(), 'heedway-c-'));
  try {
    const program = join(folder, 'stop');
    const built = spawnSync('cc', [...FLAGS, '-o', program, resolve('bench/c/stop.c'), '-lm'], {
      encoding: 'utf8',
    });
    if (built.status !== 0) {
      process.stdout.write(`one stop against C: left out, no C compiler here${built.stderr ?? ''}\n`);
      return [];
    }
    const run = (of: readonly StopCase[], repeats: number): number[] => {
      const file = join(folder, 'model');
      writeFileSync(file, numbers(model, of));
      const ran = spawnSync(program, [file, String(repeats)], { encoding: 'utf8' });
      if (ran.status !== 0) throw new Error('the C program failed');
      return ran.stdout.trim().split('\n').map(Number);
    };
    // What the engine marches through, or what does not stop, is not compared.
    const [, ...first] = run(cases, 1);
    const own = cases.filter((_, i) => Number.isFinite(first[i]));
    const trace = emptyTrace();
    const distance = ({ s, v }: StopCase): number => {
      stopInto(model, s, v, trace);
      return trace.distance;
    };
    // In turns, so that both meet the same machine.
    let [ours, theirs, told] = [Infinity, Infinity, [] as number[]];
    for (let turn = 0; turn < 5; turn++) {
      const time = quickest(() => {
        for (let r = 0; r < REPEATS; r++) for (const one of own) distance(one);
      }, RUNS);
      ours = Math.min(ours, (time * 1e6) / (REPEATS * own.length));
      const [ns, ...distances] = run(own, REPEATS);
      [theirs, told] = [Math.min(theirs, ns), distances];
    }
    const apart = Math.max(...own.map((one, i) => Math.abs(distance(one) / told[i] - 1)));
    return [
      {
        work: 'one stop, 20 cars',
        ours: `${ours.toFixed(0)} ns`,
        against: 'the same algorithm in scalar C, -O3',
        theirs: `${theirs.toFixed(0)} ns`,
        ratio: theirs / ours,
        ourError: `apart by ${apart.toExponential(1)}`,
        theirError: 'the same',
      },
    ];
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
