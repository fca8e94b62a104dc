/** A test's record, measured. */
import { assumedValues } from '../../data/index.ts';
import type { Outcome } from '../../engine/calibrate/result.ts';
import { measure } from '../../engine/calibrate/tests/index.ts';
import { openOuting } from '../../engine/outing/open.ts';
import type { ReadTest } from '../../papers/read-test.ts';

export function measured({ test, instruments, outing, vehicle }: ReadTest): Outcome {
  return measure(test, {
    instruments,
    assumed: outing?.assumed ?? assumedValues,
    ...(outing ? { outing: openOuting(outing) } : {}),
    ...(vehicle ? { vehicle } : {}),
  });
}
