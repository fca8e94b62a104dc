/** Times of a stopwatch put into the record of a test, where its readings have times. Pure. */
import type { TestKind } from '../../engine/calibrate/tests/index.ts';

type Json = Readonly<Record<string, unknown>>;

/** What a press is, and what is made of the times; absent: this test has none. */
interface Timed {
  /** "as it passes each mark" */
  readonly press: string;
  readonly put: (test: Json, laps: readonly string[]) => Json;
}

const added = (test: Json, list: string, rows: readonly unknown[]): Json => ({
  ...test,
  [list]: [...((test[list] as readonly unknown[] | undefined) ?? []), ...rows],
});

/** A run over as many marks as the last one takes their places from it, the other way round. */
function coast(test: Json, laps: readonly string[]): Json {
  const runs = (test['runs'] as readonly Json[] | undefined) ?? [];
  const last = runs[runs.length - 1];
  const passes = (last?.['passes'] as readonly Json[] | undefined) ?? [];
  const back =
    passes.length === laps.length ? [last['from'], ...passes.map((p) => p['at'])].reverse() : undefined;
  return added(test, 'runs', [
    {
      way: last?.['way'] === 'forward' ? 'reverse' : 'forward',
      from: back?.[0] ?? '',
      passes: laps.map((time, i) => ({ at: back?.[i + 1] ?? '', time })),
    },
  ]);
}

const timed: { readonly [K in TestKind]?: Timed } = {
  'coast-down': { press: 'Start as the front passes the first mark, then a mark at each', put: coast },
  'curve-resistance': { press: 'Start as the front passes the first mark, then a mark at each', put: coast },
  'leak-down': {
    press: 'Start as you read the gauge, then a mark at each reading',
    put: (test, laps) =>
      added(
        test,
        'readings',
        ['0 s', ...laps].map((time) => ({ time })),
      ),
  },
  'apply-time': {
    press: 'Start at the call, a mark as the blocks touch, stop when they press fully',
    put: (test, [first, full]) => added(test, 'tries', [{ first, ...(full === undefined ? {} : { full }) }]),
  },
  recharge: {
    press: 'Start at one figure of the gauge, stop at the other',
    put: (test, laps) => added(test, 'times', laps.slice(-1)),
  },
};

export const timedBy = (kind: TestKind): string | undefined => timed[kind]?.press;

/** @param laps s since the start */
export function withLaps(record: Json, laps: readonly number[]): Json {
  const test = record['test'] as Json;
  const put = timed[test['kind'] as TestKind]?.put;
  if (!put || laps.length === 0) return record;
  return {
    ...record,
    test: put(
      test,
      laps.map((s) => `${s.toFixed(2)} s`),
    ),
  };
}
