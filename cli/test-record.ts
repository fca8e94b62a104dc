/** Records of tests and the papers that keep them, opened from the disk. */
import type { Command as Program } from 'commander';
import { single } from '../desk/make-up.ts';
import { testKinds } from '../desk/measured/guide.ts';
import { measured } from '../desk/measured/measure.ts';
import { readRecord, tellOutcome, withPapers } from '../desk/measured/record.ts';
import type { Outcome as Made } from '../engine/calibrate/result.ts';
import { type TestKind, tests } from '../engine/calibrate/tests/index.ts';
import type { ReadTest } from '../papers/read-test.ts';
import { type Options, UsageFault } from './command.ts';
import { asksRecords, type Gate } from './gate.ts';
import { fromDisk, jsonIn, refusal } from './open.ts';
import { type ReadingsOptions, recordFromCsv } from './readings.ts';

export type Json = Readonly<Record<string, unknown>>;

/** Nothing is made of it, or something is longer than it should be. */
export const REFUSED = 30;

export interface WithOptions extends Options, ReadingsOptions {
  readonly outing?: string;
  readonly vehicle?: string;
  readonly riders?: boolean;
  readonly out?: string;
}

/** Options of whatever takes a record. */
export const made = (program: Program): Program =>
  asksRecords(program)
    .option(
      '--outing <file>',
      'the train on its line that it was made with, where the record does not hold it',
    )
    .option('--vehicle <id>', 'the vehicle of it that was tested by itself')
    .option('--test <test>', 'the record is a CSV of readings of this test')
    .option('--date <day>', 'the day of those readings')
    .option('--rail <state>', 'the rail as it was')
    .option('--set <field=value...>', 'what else the test needs, as gear="vacuum brake"')
    .option('--frames <rate>', 'frames of a video in each second: a column frame stands for its times')
    .option('--riders', 'the riders of the outing were aboard; the driver alone, if nothing is said');

export function kindNamed(test: string): TestKind {
  if (test in tests) return test as TestKind;
  throw new UsageFault(`found the test ${test}; expected ${testKinds.join(', ')}`);
}

export interface Opened {
  readonly record: Json;
  readonly read: ReadTest;
  readonly outcome: Made;
  readonly lines: readonly string[];
}

export async function recordAt(path: string): Promise<Json> {
  const json = (await jsonIn(path)) as Json | null | undefined;
  if (json?.['heedway'] === 'test') return json;
  throw new UsageFault(
    `${path}: found no test; expected a record with "heedway": "test", or a CSV of readings with --test`,
  );
}

export async function opened(gate: Gate, path: string, options: WithOptions): Promise<Opened> {
  const record =
    options.test === undefined
      ? await recordAt(path)
      : await recordFromCsv(path, kindNamed(options.test), options);
  const outing = options.outing === undefined ? undefined : (await gate.untried(options.outing)).paper;
  if (options.vehicle !== undefined && !outing) throw new UsageFault('--vehicle: expected with --outing');
  const { riders = false, vehicle } = options;
  if (outing && vehicle !== undefined) vehicleIn(outing, vehicle);
  const whole = withPapers(
    record,
    outing && { outing, riders, ...(vehicle === undefined ? {} : { vehicle }) },
  );
  // A path such as {"file": "car.json"} is followed from where the record lies.
  const { entry, load } = fromDisk({ path, content: JSON.stringify(whole) });
  const read = await readRecord(entry, load);
  if (!read.ok) {
    const named = read.problems.map((p) => ({ ...p, file: path }));
    // Rows of a CSV are not those of the record that was made of it.
    throw refusal(
      options.test === undefined ? named : named.map(({ row: _row, column: _column, ...p }) => p),
    );
  }
  const outcome = measured(read.value);
  const lines = tellOutcome(outcome, read.value, { system: options.units, wording: options.wording });
  return { record: whole, read: read.value, outcome, lines };
}

function vehicleIn(outing: Json, id: string): void {
  const ids = single(outing).map((one) => `${one.id}`);
  if (!ids.includes(id)) throw new UsageFault(`--vehicle: found ${id}; expected ${ids.join(', ')}`);
}

export async function paperAt(gate: Gate, path: string): Promise<Json> {
  const json = (await jsonIn(path)) as Json | undefined;
  if (json?.['heedway'] === 'outing') return (await gate.untried(path)).paper;
  if (json?.['heedway'] === 'vehicle' || json?.['heedway'] === 'line') return json;
  throw new UsageFault(`${path}: found none of them; expected an outing, a vehicle or a line`);
}
