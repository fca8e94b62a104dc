/** A test's record made into what the fit takes: readings in SI, and how well these instruments read. */
import { instruments } from '../../data/index.ts';
import type { Quantity } from '../../engine/base/quantity.ts';
import type { Instruments } from '../../engine/calibrate/instruments.ts';
import type { Test } from '../../engine/calibrate/tests/index.ts';
import type { BrakeKind } from '../../engine/things/brake/kinds/index.ts';
import { isVacuumKind } from '../../engine/things/brake/kinds/index.ts';
import type { TestFile } from '../schema/index.ts';
import { type Notes, trouble } from './notes.ts';

type Written = TestFile['test'];
/** Of each test by itself. */
type Readings<T = Test> = T extends Test ? Omit<T, 'source' | 'date'> : never;

/** What was written beside the readings. */
export interface TestRecord {
  readonly name: string;
  readonly date: string;
  readonly test: Test;
  readonly instruments: Instruments;
}

export function compileTest(file: TestFile, notes: Notes): TestRecord {
  const { name, date } = file;
  return {
    name,
    date,
    test: { ...readingsOf(file.test, notes), source: name, date } as Test,
    instruments: instrumentsOf(file),
  };
}

function readingsOf(test: Written, notes: Notes): Readings {
  switch (test.kind) {
    case 'coast-down':
    case 'curve-resistance':
      return { ...test, runs: test.runs.map((run) => ({ ...run, passes: run.passes ?? [] })) };
    case 'stop-test':
      return { ...test, begins: test.begins ?? 'action' };
    case 'weighing':
      return { ...test, level: test.level.map((w) => w.loads) };
    case 'leak-down': {
      const { airPressure, readings, ...rest } = test;
      const at = gaugeOf(test.brake, notes);
      return {
        ...rest,
        ...(airPressure === undefined ? {} : { atmosphere: airPressure }),
        readings: readings.map((r, i) => ({ time: r.time, pressure: at(r, ['test', 'readings', i]) })),
      };
    }
    case 'recharge': {
      const { airPressure, from, to, ...rest } = test;
      const at = gaugeOf(test.brake, notes);
      return {
        ...rest,
        ...(airPressure === undefined ? {} : { atmosphere: airPressure }),
        from: at(from, ['test', 'from']),
        to: at(to, ['test', 'to']),
      };
    }
    default:
      return test;
  }
}

interface Gauge {
  readonly pressure?: number;
  readonly vacuum?: number;
}

/** As the gauge of that brake shows it. */
function gaugeOf(brake: BrakeKind, notes: Notes) {
  const field = isVacuumKind(brake) ? 'vacuum' : 'pressure';
  return (read: Gauge, path: readonly (string | number)[]): number => {
    const value = read[field];
    if (
      value !== undefined &&
      Object.keys(read).filter((k) => k === 'vacuum' || k === 'pressure').length === 1
    )
      return value;
    trouble(notes, path, 'not one figure of its gauge', `"${field}", for this kind of brake`);
    return 0;
  };
}

/** Better or worse than is usual: so far to each side. */
function instrumentsOf({ instruments: own = {} }: TestFile): Instruments {
  const about = (middle: number, off: number): Quantity => ({
    value: middle,
    low: middle - off,
    high: middle + off,
    how: 'stated',
  });
  const scale = (key: 'tape' | 'balance' | 'speedometer' | 'scales' | 'gauge'): Partial<Instruments> =>
    own[key] === undefined ? {} : { [key]: about(1, own[key]) };
  return {
    ...instruments,
    ...(own.stopwatch === undefined ? {} : { stopwatch: about(0, own.stopwatch) }),
    ...(own.place === undefined ? {} : { place: about(0, own.place), mark: about(0, own.place) }),
    ...(own.speed === undefined ? {} : { speed: about(0, own.speed) }),
    ...scale('tape'),
    ...scale('balance'),
    ...scale('speedometer'),
    ...scale('scales'),
    ...scale('gauge'),
  };
}
