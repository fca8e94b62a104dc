/** Stops held against what had been said of them, and measurements as a club publishes them. */
import type { Command as Program } from 'commander';
import { sheetRows, sumUp } from '../../desk/measured/data-sheet.ts';
import { checksIn, runningRecord } from '../../desk/measured/foretold.ts';
import { type Predicted, predictedStops } from '../../desk/measured/predicted.ts';
import { readSheet, type SheetRow, sheetText } from '../../papers/import/data-sheet.ts';
import { sheetWords } from '../../words/measured/data-sheet.ts';
import { predictedWords, recordWords, stopWords, withWords } from '../../words/measured/predicted.ts';
import { finite, type Options, type Outcome, type Run, UsageFault } from '../command.ts';
import { asksRecords, type Gate } from '../gate.ts';
import { jsonIn, openFile, refusal } from '../open.ts';
import { wrap } from '../screen.ts';
import { type Json, made, opened, paperAt, REFUSED, type WithOptions } from '../test-record.ts';
import { writeOut } from '../write.ts';

type Sub = (call: string, description: string) => Program;

export function checkCommands(sub: Sub, run: Run): void {
  made(
    sub(
      'check <files...>',
      'Stop tests held against what the papers had said of their stops; of papers, those that they keep.',
    ),
  ).action((paths: string[], options: WithOptions) => run((gate) => against(gate, paths, options), options));
  asksRecords(
    sub(
      'share <papers...>',
      'The tests that papers keep as a data sheet to publish: CSV, no names, no places.',
    ),
  )
    .option('-o, --out <file>', 'write the sheet here', 'data-sheet.csv')
    .action((paths: string[], options: Options & { readonly out: string }) =>
      run((gate) => share(gate, paths, options), options),
    );
  sub('shared <sheets...>', 'What data sheets of one or several clubs say together.').action(
    (paths: string[], options: Options) => run(() => shared(paths, options), options),
  );
}

interface Held {
  readonly stops: readonly Predicted[];
  readonly brakes?: readonly string[];
}

async function heldIn(gate: Gate, path: string, options: WithOptions): Promise<readonly Held[]> {
  const json = options.test === undefined ? ((await jsonIn(path)) as Json | undefined) : undefined;
  if (json?.['heedway'] === 'outing') return checksIn(json).map((stops) => ({ stops }));
  const { read } = await opened(gate, path, options);
  const { test, outing } = read;
  if (test.kind !== 'stop-test' || !outing)
    throw new UsageFault(
      `${path}: found ${test.kind === 'stop-test' ? 'no train on its line' : `a ${test.kind}`}; expected a stop test with the outing that it was made with`,
    );
  return [{ stops: predictedStops(test, outing), ...(test.brakes ? { brakes: test.brakes } : {}) }];
}

async function against(gate: Gate, paths: readonly string[], options: WithOptions): Promise<Outcome> {
  const held = (await Promise.all(paths.map((path) => heldIn(gate, path, options)))).flat();
  const stops = held.flatMap((one) => one.stops);
  const record = runningRecord(held.map((one) => one.stops));
  const brakes = held.length === 1 ? withWords(held[0].brakes) : undefined;
  const words = [
    ...(held.length === 1 ? [predictedWords(stops)] : []),
    ...(brakes === undefined ? [] : [brakes]),
    ...(record ? recordWords(record) : ['No stop test is kept here.']),
  ];
  return {
    text: [
      ...stops.map((stop) => stopWords(stop, { system: options.units })),
      ...words.flatMap((line) => wrap(line)),
    ].join('\n'),
    json: {
      stops: stops.map((s) => ({ ...s, likely: finite(s.likely), careful: finite(s.careful) })),
      inside: stops.filter((s) => s.inside).length,
      record,
      words,
    },
    exit: stops.every((s) => s.inside) ? 0 : REFUSED,
  };
}

async function share(
  gate: Gate,
  paths: readonly string[],
  { out }: { readonly out: string },
): Promise<Outcome> {
  const rows: SheetRow[] = [];
  for (const path of paths) rows.push(...sheetRows(await paperAt(gate, path), (rows.at(-1)?.test ?? 0) + 1));
  if (rows.length === 0) throw new UsageFault(`${paths.join(', ')}: found no test that is kept there`);
  await writeOut(out, sheetText(rows));
  const tests = new Set(rows.map((r) => r.test)).size;
  return {
    text: `${tests === 1 ? 'One test' : `${tests} tests`}, ${rows.length} rows, written into ${out}. No name, place or day is in it: look through it before you publish it.`,
    json: { tests, rows, out },
    exit: 0,
  };
}

async function shared(paths: readonly string[], options: Options): Promise<Outcome> {
  const sheets: (readonly SheetRow[])[] = [];
  for (const path of paths) {
    const { rows, problems } = readSheet((await openFile(path)).content, path);
    if (problems.length > 0) throw refusal(problems);
    sheets.push(rows);
  }
  const sum = sumUp(sheets);
  const words = sheetWords(sum, { system: options.units, wording: options.wording });
  return { text: words.flatMap((line) => wrap(line)).join('\n'), json: { ...sum, words }, exit: 0 };
}
