/** Readings of a test from a CSV as its record, with what a row does not hold said beside it. */
import { blankRecord } from '../desk/measured/record.ts';
import type { TestKind } from '../engine/calibrate/tests/index.ts';
import { importReadings } from '../papers/import/readings.ts';
import { UsageFault } from './command.ts';
import { openFile, refusal } from './open.ts';

type Json = Readonly<Record<string, unknown>>;

export interface ReadingsOptions {
  readonly test?: string;
  readonly date?: string;
  readonly rail?: string;
  /** `gear=vacuum brake`, each a field of the test. */
  readonly set?: readonly string[];
  /** Frames of a video in each second: a column `frame` in the place of times. */
  readonly frames?: string;
}

export async function recordFromCsv(
  path: string,
  kind: TestKind,
  { date, rail, set = [], frames }: ReadingsOptions,
): Promise<Json> {
  if (date === undefined)
    throw new UsageFault('--date: found nothing; expected the day of the readings, as 2026-05-31');
  const { content } = await openFile(path);
  const rate = frames === undefined ? undefined : Number(frames);
  if (rate !== undefined && !(rate >= 1 && rate <= 1000))
    throw new UsageFault(`--frames: found ${frames}; expected the frames of a second, as 30`);
  const { test, problems } = importReadings(content, path, kind, rate);
  if (!test) throw refusal(problems);
  const blank = blankRecord(kind, date, rail);
  return {
    ...blank,
    name: named(path),
    ...(rate === undefined ? {} : { instruments: { stopwatch: `${(1 / rate).toFixed(4)} s` } }),
    test: { ...(blank['test'] as Json), ...test, ...Object.fromEntries(set.map(field)) },
  };
}

const named = (path: string): string => path.replace(/^.*[/\\]/, '').replace(/\.[^.]*$/, '');

/** `brakes=automatic-vacuum,mechanical` is a list. */
export function field(text: string): readonly [string, unknown] {
  const [, key, value] = /^(\w+)=(.+)$/.exec(text) ?? [];
  if (key === undefined || value === undefined)
    throw new UsageFault(`--set: found ${text}; expected a field and its value, as gear="vacuum brake"`);
  return [key, key === 'brakes' ? value.split(',').map((v) => v.trim()) : value];
}
