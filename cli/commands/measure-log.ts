/** What a phone wrote down while a train ran, as one run or one stop of a record. */
import type { Command as Program } from 'commander';
import type { Json as AnyJson } from '../../desk/measured/apply.ts';
import type { Felt } from '../../desk/measured/level.ts';
import {
  coastFrom,
  gradeChange,
  type LogAbout,
  stillOf,
  stopFrom,
  withReading,
} from '../../desk/measured/log.ts';
import { blankRecord } from '../../desk/measured/record.ts';
import type { Kind } from '../../engine/base/quantity.ts';
import { importLog, type Log } from '../../papers/import/log.ts';
import { writeFile } from '../../papers/index.ts';
import { mostBytes } from '../../papers/text.ts';
import { parseQuantity } from '../../units/index.ts';
import { gradeWords, logErrors, logFault, readingWords } from '../../words/measured/logs.ts';
import { type Options, type Outcome, type Run, UsageFault } from '../command.ts';
import { openFile, openOutingFile, refusal } from '../open.ts';
import { field } from '../readings.ts';
import { wrap } from '../screen.ts';
import { kindNamed, recordAt } from '../test-record.ts';
import { writeOut } from '../write.ts';

interface LogOptions extends Options {
  readonly test?: string;
  readonly from?: string;
  readonly way?: string;
  readonly begin?: string;
  readonly end?: string;
  readonly level?: string;
  readonly turned?: string;
  readonly into?: string;
  readonly outing?: string;
  readonly date?: string;
  readonly rail?: string;
  readonly set?: readonly string[];
  readonly out?: string;
}

export function logCommand(sub: (call: string, description: string) => Program, run: Run): void {
  sub(
    'log <file>',
    'A track (GPX) or a log of a phone (CSV: time with speed, distance, or x, y, z) as one run or one stop of a record.',
  )
    .option('--test <test>', 'coast-down, curve-resistance or stop-test')
    .option('--from <place>', 'where the front stood at the second of --begin, as "320 ft"')
    .option('--way <way>', 'forward or reverse')
    .option('--begin <time>', 'second of the log: let go; of a stop: the brake put on, or the signal given')
    .option('--end <time>', 'second of the log after which it does not count')
    .option('--level <file>', 'a log of the phone lying on level track: for one of x, y, z')
    .option('--turned <file>', 'and one of it turned half round on the same spot')
    .option('--outing <file>', 'the train on its line: says whether the line rises evenly under the stop')
    .option('--into <record>', 'a record that has runs or stops already: this one is added')
    .option('--date <day>', 'the day of a new record')
    .option('--rail <state>', 'the rail as it was')
    .option('--set <field=value...>', 'what else the test needs, as brakes=automatic-vacuum')
    .option('-o, --out <file>', 'write the record here')
    .action((path: string, options: LogOptions) => run(() => fromLog(path, options), options));
}

async function fromLog(path: string, options: LogOptions): Promise<Outcome> {
  const record = await recordFor(options);
  const kind = kindNamed(`${(record['test'] as AnyJson)['kind']}`);
  if (kind !== 'stop-test' && kind !== 'coast-down' && kind !== 'curve-resistance')
    throw new UsageFault(`--test: found ${kind}; expected coast-down, curve-resistance or stop-test`);
  const { way } = options;
  if (way !== 'forward' && way !== 'reverse')
    throw new UsageFault(`--way: found ${way ?? 'nothing'}; expected forward or reverse`);
  const log = await logAt(path);
  const about: LogAbout = {
    from: figure('--from', options.from, 'length', 'as "320 ft"'),
    way,
    ...(options.begin === undefined ? {} : { begin: figure('--begin', options.begin, 'time', 'as 12.5') }),
    ...(options.end === undefined ? {} : { end: figure('--end', options.end, 'time', 'as 20') }),
    ...(await levelIn('level', options.level)),
    ...(await levelIn('turned', options.turned)),
  };
  const made = (kind === 'stop-test' ? stopFrom : coastFrom)(log, about);
  if ('fault' in made) throw new UsageFault(`${path}: ${logFault(made.fault)}`);
  const words = [logErrors(log.of)];
  if (log.of === 'felt' && options.outing !== undefined) {
    const restAt = Number.parseFloat(`${made.reading['restAt']}`);
    const change = gradeChange(await openOutingFile(options.outing), { way, from: about.from, restAt });
    if (change !== undefined) throw new UsageFault(`${path}: ${gradeWords(change)}`);
  }
  const whole = withReading(record, made);
  if (options.out) await writeOut(options.out, writeFile(whole));
  const lines = [
    ...words,
    readingWords(made.reading, { system: options.units }),
    options.out
      ? `Written into ${options.out}`
      : 'Nothing is changed on the disk: --out says where to write it',
  ];
  return {
    text: lines.flatMap((line) => wrap(line, '  ')).join('\n'),
    json: { ...made, words, record: whole, out: options.out },
    exit: 0,
  };
}

async function recordFor({ into, test, date, rail, set = [] }: LogOptions): Promise<AnyJson> {
  if (into !== undefined) return recordAt(into);
  if (test === undefined)
    throw new UsageFault('--test: found nothing; expected the test, or --into a record');
  if (date === undefined) throw new UsageFault('--date: found nothing; expected the day, as 2026-05-31');
  const blank = blankRecord(kindNamed(test), date, rail);
  return { ...blank, test: { ...(blank['test'] as AnyJson), ...Object.fromEntries(set.map(field)) } };
}

async function logAt(path: string): Promise<Log> {
  const read = importLog((await openFile(path, mostBytes(path))).content, path);
  if ('problems' in read) throw refusal(read.problems);
  return read.log;
}

async function levelIn(
  key: 'level' | 'turned',
  path: string | undefined,
): Promise<{ readonly [K in typeof key]?: Felt }> {
  if (path === undefined) return {};
  const still = stillOf(await logAt(path));
  if (still) return { [key]: still };
  throw new UsageFault(
    `${path}: found a phone that moved, or no log of x, y, z; expected one that lay still`,
  );
}

/** A bare figure is in seconds. */
function figure(option: string, text: string | undefined, kind: Kind, as: string): number {
  const read = parseQuantity(
    kind === 'time' && /^[\d.]+$/.test(text ?? '') ? `${text} s` : (text ?? ''),
    kind,
  );
  if (read.ok) return read.si;
  throw new UsageFault(`${option}: found ${text ?? 'nothing'}; expected ${read.problem.expected}, ${as}`);
}
