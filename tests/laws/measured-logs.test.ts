/**
 * A coast by satellites, which wander: what the fit makes of it is as unsure as it says. True trains roll by the independent witness;
 * their places are read each second, a metre off and more, drifting slowly as such fixes do.
 */
import { expect, it } from 'vitest';
import { coastFrom } from '../../desk/measured/log.ts';
import { blankRecord } from '../../desk/measured/record.ts';
import { measure } from '../../engine/calibrate/tests/index.ts';
import { newNotes } from '../../papers/compile/notes.ts';
import { compileTest } from '../../papers/compile/test.ts';
import type { LogRow } from '../../papers/import/log.ts';
import { checkTest } from '../../papers/test/check.ts';
import { runs } from '../support/tier.ts';
import { asked, assumedOuting, handOf, luck, type Truth, trueTrain } from '../support/true-trains.ts';
import { groundOf } from '../witness/ground.ts';
import { rollPast } from '../witness/roll.ts';
import { wayAhead } from '../witness/stop.ts';
import { carsOf } from '../witness/train.ts';

const FAR = 80;
/** s that a fix drifts over, and how far, m; and how far each is off by itself. */
const [DRIFTS, DRIFT, EACH] = [15, 1.2, 0.4];

/** Sum of twelve: near enough normal, of deviation 1. */
const normal = (u: () => number): number => Array.from({ length: 12 }, u).reduce((sum, x) => sum + x, -6);

function track(truth: Truth, way: 'forward' | 'reverse', v0: number, u: () => number): LogRow[] {
  const { ran, hand } = handOf(truth, way);
  const from = way === 'forward' ? 110 : ran.line.length - 290;
  const marks = Array.from({ length: FAR * 2 }, (_, i) => (i + 1) / 2);
  const { time, rest, restTime } = rollPast(wayAhead(groundOf(ran), carsOf(ran), from), hand, v0, marks);
  const last = Math.min(restTime, ...time.filter((t) => Number.isFinite(t)).slice(-1));
  let drift = DRIFT * normal(u);
  const keeps = Math.exp(-1 / DRIFTS);
  const rows: LogRow[] = [];
  for (let t = 0; t <= last; t++) {
    const i = time.findIndex((at) => !(at < t));
    const [t0, t1] = [i > 0 ? time[i - 1] : 0, time[i]];
    const before = i > 0 ? marks[i - 1] : 0;
    const there = i < 0 || Number.isNaN(t1) ? Math.min(rest, FAR) : before + ((t - t0) / (t1 - t0)) * 0.5;
    drift = keeps * drift + DRIFT * Math.sqrt(1 - keeps ** 2) * normal(u);
    rows.push({ time: t, way: there + drift + EACH * normal(u) });
  }
  return rows;
}

it('the truth lies within what it says, nineteen times in twenty', { timeout: 300_000 }, () => {
  let [told, inside] = [0, 0];
  for (let seed = 1; seed <= runs(6, 120); seed++) {
    const u = luck(seed + 500);
    const outing = assumedOuting(seed);
    const truth = trueTrain(outing, u);
    const made = (['forward', 'reverse'] as const).flatMap((way) =>
      [3.4, 2.6].flatMap((v0) => {
        const from = way === 'forward' ? 110 : 290;
        const log = { of: 'satellites', rows: track(truth, way, v0, u) } as const;
        const run = coastFrom(log, { from, way, begin: 0 });
        return 'fault' in run ? [] : [run];
      }),
    );
    if (made.length === 0) continue;
    const file = checkTest({
      ...blankRecord('coast-down', '2026-05-31'),
      instruments: made[0].instruments,
      test: { kind: 'coast-down', runs: made.map((m) => m.reading) },
    });
    if (!file.ok) throw new Error(JSON.stringify(file.troubles));
    const { test, instruments } = compileTest(file.value, newNotes());
    const outcome = measure(test, { ...asked(outing), instruments });
    const rolling = outcome.ok ? outcome.results.find((r) => r.key === 'rolling') : undefined;
    if (process.env['SAY']) console.log(seed, outcome.ok ? rolling?.narrowed : outcome);
    if (!rolling) continue;
    told++;
    if (rolling.interval[0] <= truth.rolling && truth.rolling <= rolling.interval[1]) inside++;
  }
  if (process.env['SAY']) console.log('told', told, 'inside', inside);
  // A walk of 80 m by satellites tells something, if less than a stopwatch.
  expect(told).toBeGreaterThan(runs(6, 120) / 3);
  expect(inside / told).toBeGreaterThanOrEqual(told < 30 ? 0.8 : 0.93);
});
