/**
 * The running record: every stop test that a paper keeps, each stop beside what the papers had said of it before the test changed
 * them. What was said then is kept with the record and never reckoned anew: figures that were fitted to a stop foretell it well.
 */
import { shareBounds } from '../../engine/base/numerics/binomial.ts';
import type { ReadTest } from '../../papers/read-test.ts';
import { checkTest } from '../../papers/test/check.ts';
import type { RunningRecord } from '../../words/measured/predicted.ts';
import { type Json, kept, testsIn } from './apply.ts';
import { type Predicted, predictedStops } from './predicted.ts';

/** Of so many stops the careful figure promises to be no shorter. */
export const PROMISED = 0.99;

const metres = (si: number): string => `${si.toFixed(3)} m`;

/** The record with what was foretold of its stops; as it is, where there are none. */
export const withForetold = (record: Json, stops: readonly Predicted[] | undefined): Json =>
  stops === undefined || stops.length === 0
    ? record
    : {
        ...record,
        foretold: stops.map(({ speed, measured, likely, careful }) => ({
          speed: `${speed.toFixed(4)} m/s`,
          measured: metres(measured),
          ...(Number.isFinite(likely) ? { likely: metres(likely) } : {}),
          ...(Number.isFinite(careful) ? { careful: metres(careful) } : {}),
        })),
      };

/** The record of a stop test with what the papers that it was made with say of its stops; any other as it is. */
export const foretoldOf = (record: Json, { test, outing }: ReadTest): Json =>
  withForetold(record, test.kind === 'stop-test' && outing ? predictedStops(test, outing) : undefined);

/** Kept with the outing, beside what its papers had said; no figure of them is changed. */
export const keepAsCheck = (paper: Json, record: Json): Json => kept(paper, record, []);

/** Of a record, what was foretold; of any other none. */
export function foretoldIn(record: Json): Predicted[] {
  const read = checkTest(record);
  const { foretold = [] } = read.ok ? read.value : {};
  return foretold.map(({ speed, measured, likely = Infinity, careful = Infinity }) => ({
    speed,
    measured,
    likely,
    careful,
    inside: measured <= careful,
  }));
}

/** The same readings kept twice are one test: the first, for the second time the papers knew them. */
export function checksIn(paper: Json): Predicted[][] {
  const seen = new Set<string>();
  return testsIn(paper).flatMap((record) => {
    const key = JSON.stringify([record['date'], record['test']]);
    const stops = seen.has(key) ? [] : foretoldIn(record);
    seen.add(key);
    return stops.length > 0 ? [stops] : [];
  });
}

/** @param tests stops of each; undefined: there are none */
export function runningRecord(tests: readonly (readonly Predicted[])[]): RunningRecord | undefined {
  const stops = tests.flat();
  if (stops.length === 0) return undefined;
  const inside = stops.filter((s) => s.inside).length;
  const bounds = shareBounds(inside, stops.length);
  return {
    tests: tests.length,
    stops: stops.length,
    inside,
    beyondLikely: stops.filter((s) => s.measured > s.likely).length,
    bounds,
    kept: bounds[1] >= PROMISED,
    shown: bounds[0] >= PROMISED,
  };
}
