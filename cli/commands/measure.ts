/** heedway measure: which tests there are, how each is made, what its readings say, and what the answer makes of it. */
import type { Command as Program } from 'commander';
import { tellDifference, tellStanding } from '../../desk/figures.ts';
import { single } from '../../desk/make-up.ts';
import { applyToOuting, applyToVehicle, takeBack, testsIn } from '../../desk/measured/apply.ts';
import { outingIn, type Stood, stoodAt } from '../../desk/measured/compare.ts';
import { guideOf, listed, testKinds } from '../../desk/measured/guide.ts';
import { measured } from '../../desk/measured/measure.ts';
import { whatToMeasure } from '../../desk/measured/next.ts';
import { predictedStops } from '../../desk/measured/predicted.ts';
import { kindOf, ofThatName, readRecord, tellOutcome, withPapers } from '../../desk/measured/record.ts';
import { wholeAnswer } from '../../engine/answer/complete.ts';
import { inquire } from '../../engine/answer/inquiry.ts';
import type { Outcome as Made, Result } from '../../engine/calibrate/result.ts';
import { type TestKind, tests } from '../../engine/calibrate/tests/index.ts';
import { writeFile } from '../../papers/index.ts';
import type { ReadTest } from '../../papers/read-test.ts';
import { sheetDocument } from '../../views/measured/sheet.ts';
import { notWrittenWords, takenBackWords, writtenWords } from '../../words/measured/applied.ts';
import { predictedWords, stopWords, withWords } from '../../words/measured/predicted.ts';
import { worthWords } from '../../words/measured/worth.ts';
import type { Voice } from '../../words/voice.ts';
import { cardPdf } from '../card-pdf.ts';
import { type Command, common, type Options, type Outcome, type Run, UsageFault } from '../command.ts';
import { bundleFile, fromDisk, jsonIn, openOutingFile, refusal } from '../open.ts';
import { progressOn } from '../progress.ts';
import { type ReadingsOptions, recordFromCsv } from '../readings.ts';
import { wrap } from '../screen.ts';
import { writeOut } from '../write.ts';

type Json = Readonly<Record<string, unknown>>;

interface WithOptions extends Options, ReadingsOptions {
  readonly outing?: string;
  readonly vehicle?: string;
  readonly riders?: boolean;
  readonly out?: string;
}

export const measureCommand: Command = {
  name: 'measure',
  declare: (program, run) => {
    const measure = program
      .command('measure')
      .description('Measure what is assumed: tests with a stopwatch, a spring balance, a tape or scales.');
    const sub = (call: string, description: string): Program =>
      common(measure.command(call)).description(description);

    sub('list', 'The tests: with what, how long, what each tells.').action((options: Options) =>
      run(async () => list(options), options),
    );
    sub(
      'guide <test>',
      'How a test is made: what for, safety, what is needed, steps, what one writes.',
    ).action((test: string, options: Options) => run(async () => guide(kindNamed(test), options), options));
    sub('sheet <test>', 'A sheet to take along: safety, steps, and room to write the readings by hand.')
      .option('-o, --out <file>', 'write the PDF here; else named after the test')
      .option('--paper <paper>', 'a5 or half-letter', 'half-letter')
      .action((test: string, options: SheetOptions) => run(() => onPaper(kindNamed(test), options), options));
    made(sub('fit <record>', 'What the readings of a test say, with bounds.'))
      .option('-o, --out <file>', 'write the record here, with what it was made with')
      .action((path: string, options: WithOptions) => run(() => readings(path, options), options));
    made(
      sub(
        'apply <record> <paper>',
        'A test written into an outing or a vehicle; before and after of the answer.',
      ),
    )
      .option('-o, --out <file>', 'write the paper here; nothing is written without it')
      .action((record: string, paper: string, options: WithOptions) =>
        run(() => apply(record, paper, options), options),
      );
    made(sub('check <record>', 'A stop test held against what the papers had said of its stops.')).action(
      (path: string, options: WithOptions) => run(() => against(path, options), options),
    );
    sub('kept <paper>', 'The tests that a paper keeps, oldest first.').action(
      (path: string, options: Options) => run(() => keptIn(path), options),
    );
    sub('back <paper> <number>', 'One of them taken back: what stood there before stands there again.')
      .option('-o, --out <file>', 'write the paper here; nothing is written without it')
      .action((path: string, number: string, options: WithOptions) =>
        run(() => back(path, number, options), options),
      );
    next(
      sub('next <outing>', 'What to measure next: the tests that would change the answer most, per minute.'),
      run,
    );
  },
};

const made = (program: Program): Program =>
  program
    .option(
      '--outing <file>',
      'the train on its line that it was made with, where the record does not hold it',
    )
    .option('--vehicle <id>', 'the vehicle of it that was tested by itself')
    .option('--test <test>', 'the record is a CSV of readings of this test')
    .option('--date <day>', 'the day of those readings')
    .option('--rail <state>', 'the rail as it was')
    .option('--set <field=value...>', 'what else the test needs, as gear="vacuum brake"')
    .option('--riders', 'the riders of the outing were aboard; the driver alone, if nothing is said');

function kindNamed(test: string): TestKind {
  if (test in tests) return test as TestKind;
  throw new UsageFault(`found the test ${test}; expected ${testKinds.join(', ')}`);
}

// ---- what there is

function list({ wording }: Options): Outcome {
  const all = testKinds.map((kind) => listed(kind, wording));
  const head = (kind: string, minutes: number): string =>
    `${kind.padEnd(18)}${`${minutes}`.padStart(3)} min  `;
  return {
    text: all
      .flatMap(({ kind, minutes, what }) => wrap(`${head(kind, minutes)}${what}`, ' '.repeat(27)))
      .concat(['', 'heedway measure guide <test> says how each is made.'])
      .join('\n'),
    json: all,
    exit: 0,
  };
}

function guide(kind: TestKind, options: Options): Outcome {
  const told = guideOf(kind, { system: options.units, wording: options.wording });
  const part = (title: string, lines: readonly string[]): string[] =>
    lines.length === 0 ? [] : ['', title, ...lines.flatMap((line) => wrap(`  - ${line}`, '    '))];
  return {
    text: [
      `${told.name.charAt(0).toUpperCase()}${told.name.slice(1)}: about ${told.minutes} minutes, with ${told.needs}`,
      ...wrap(told.what),
      ...part('Safety', told.safety),
      ...part('Needed', told.tools),
      '',
      'Steps',
      ...told.steps.flatMap((step, i) => wrap(`  ${i + 1}. ${step}`, '     ')),
      ...part(
        'To write down',
        told.readings.map(({ name, help }) => `${name}: ${help}`),
      ),
    ].join('\n'),
    json: told,
    exit: 0,
  };
}

interface SheetOptions extends Options {
  readonly out?: string;
  readonly paper: string;
}

async function onPaper(
  kind: TestKind,
  { out = `${kind}.pdf`, paper, units, wording }: SheetOptions,
): Promise<Outcome> {
  if (paper !== 'a5' && paper !== 'half-letter')
    throw new UsageFault(`--paper: found ${paper}; expected a5 or half-letter`);
  const told = guideOf(kind, { system: units, wording });
  await writeOut(out, await cardPdf((has) => sheetDocument(told, paper, wording, has)));
  return { text: `Sheet for the ${told.name} written into ${out}`, json: { test: kind, pdf: out }, exit: 0 };
}

// ---- what readings say

interface Opened {
  readonly record: Json;
  readonly read: ReadTest;
  readonly outcome: Made;
  readonly lines: readonly string[];
}

async function recordAt(path: string): Promise<Json> {
  const json = (await jsonIn(path)) as Json | null | undefined;
  if (json?.['heedway'] === 'test') return json;
  throw new UsageFault(
    `${path}: found no test; expected a record with "heedway": "test", or a CSV of readings with --test`,
  );
}

async function opened(path: string, options: WithOptions): Promise<Opened> {
  const record =
    options.test === undefined
      ? await recordAt(path)
      : await recordFromCsv(path, kindNamed(options.test), options);
  const outing = options.outing === undefined ? undefined : await bundled(options.outing);
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
  if (!read.ok) throw refusal(read.problems.map((p) => ({ ...p, file: path })));
  const outcome = measured(read.value);
  const lines = tellOutcome(outcome, read.value, { system: options.units, wording: options.wording });
  return { record: whole, read: read.value, outcome, lines };
}

function vehicleIn(outing: Json, id: string): void {
  const ids = single(outing).map((one) => `${one.id}`);
  if (!ids.includes(id)) throw new UsageFault(`--vehicle: found ${id}; expected ${ids.join(', ')}`);
}

async function bundled(path: string): Promise<Json> {
  // Its problems are told with their files.
  await openOutingFile(path);
  const bundle = await bundleFile(path);
  if (!bundle.ok) throw refusal(bundle.problems);
  return bundle.value;
}

const REFUSED = 30;

async function readings(path: string, options: WithOptions): Promise<Outcome> {
  const test = await opened(path, options);
  if (options.out) await writeOut(options.out, writeFile(test.record));
  return toldReadings(test);
}

const toldReadings = ({ record, outcome, lines }: Opened): Outcome => ({
  text: [`${record['name']}:`, ...lines.flatMap((line) => wrap(`  ${line}`, '    '))].join('\n'),
  json: { test: record['name'], kind: kindOf(record), ...outcome, words: lines },
  exit: outcome.ok ? 0 : REFUSED,
});

async function against(path: string, options: WithOptions): Promise<Outcome> {
  const { read } = await opened(path, options);
  const { test, outing } = read;
  if (test.kind !== 'stop-test' || !outing)
    throw new UsageFault(
      `${path}: found ${test.kind === 'stop-test' ? 'no train on its line' : `a ${test.kind}`}; expected a stop test with the outing that it was made with`,
    );
  const stops = predictedStops(test, outing);
  const words = [predictedWords(stops), ...[withWords(test.brakes)].filter((line) => line !== undefined)];
  return {
    text: [
      ...stops.map((stop) => stopWords(stop, { system: options.units })),
      ...words.flatMap((line) => wrap(line)),
    ].join('\n'),
    json: { stops, inside: stops.filter((s) => s.inside).length, words },
    exit: stops.every((s) => s.inside) ? 0 : REFUSED,
  };
}

// ---- into a paper and out of it

async function paperAt(path: string): Promise<Json> {
  const json = (await jsonIn(path)) as Json | undefined;
  if (json?.['heedway'] === 'outing') return bundled(path);
  if (json?.['heedway'] === 'vehicle') return json;
  throw new UsageFault(`${path}: found neither; expected an outing or a vehicle`);
}

async function apply(path: string, into: string, options: WithOptions): Promise<Outcome> {
  const paper = await paperAt(into);
  const outing = paper['heedway'] === 'outing';
  const test = await opened(
    path,
    outing && options.outing === undefined ? { ...options, outing: into } : options,
  );
  const { record, outcome, lines } = test;
  if (!outcome.ok) return toldReadings(test);
  const { results } = outcome;
  const applied = outing
    ? applyToOuting(paper, record, results, options.vehicle ?? onlyOne(paper, record, results))
    : applyToVehicle(paper, record, results, options.vehicle);
  const speech = { system: options.units, wording: options.wording };
  const [was, now] = outing ? [await asked(paper, speech), await asked(applied.paper, speech)] : [];
  if (options.out) await writeOut(options.out, writeFile(applied.paper));
  return {
    text: [
      ...lines,
      ...applied.left.map((one) => notWrittenWords(one, options.wording)),
      writtenWords(applied.written.length),
      ...applied.written.map((field) => `  ${field}`),
      ...(was && now
        ? ['', `before: ${tellStanding(was)}`, `now:    ${tellStanding(now)}`, tellDifference(was, now)]
        : []),
      '',
      options.out
        ? `Written into ${options.out}`
        : `Nothing is changed on the disk: --out says where to write it`,
    ]
      .flatMap((line) => wrap(line, '  '))
      .join('\n'),
    json: {
      written: applied.written,
      left: applied.left,
      words: lines,
      before: was,
      now,
      out: options.out,
    },
    exit: applied.written.length > 0 ? 0 : REFUSED,
  };
}

async function asked(paper: Json, speech: Omit<Voice, 'outing'>): Promise<Stood | undefined> {
  const read = await outingIn(paper);
  if (!read.ok) return undefined;
  const answer = wholeAnswer(inquire(read.value), { remedies: false, counts: 'today' });
  return stoodAt(paper, read.value, answer, speech);
}

/** Whichever vehicle of the outing the test was made with, where that is plain. */
function onlyOne(paper: Json, record: Json, results: readonly Result[]): string | undefined {
  if (!results.some((r) => r.belongs.some((b) => b.paper === 'vehicle' && b.vehicle === undefined)))
    return undefined;
  const ids = ofThatName(paper, record);
  if (ids.length === 1) return ids[0];
  const all = ids.length > 0 ? ids : single(paper).map(({ id }) => `${id}`);
  throw new UsageFault(
    `--vehicle: found nothing; expected which vehicle was tested by itself: ${all.join(', ')}`,
  );
}

async function keptIn(path: string): Promise<Outcome> {
  const kept = testsIn(await paperAt(path)).map((test, i) => ({
    number: i + 1,
    name: test['name'],
    date: test['date'],
    kind: kindOf(test),
  }));
  return {
    text:
      kept.length === 0
        ? 'No test is kept here.'
        : kept.map(({ number, date, name }) => `${number}. ${date}  ${name}`).join('\n'),
    json: kept,
    exit: 0,
  };
}

async function back(path: string, number: string, options: WithOptions): Promise<Outcome> {
  const paper = await paperAt(path);
  const tests = testsIn(paper);
  const n = Number(number);
  if (!Number.isInteger(n) || n < 1 || n > tests.length)
    throw new UsageFault(
      tests.length === 0
        ? `${path}: found no test that it keeps`
        : `found test ${number}; expected a number from 1 to ${tests.length}`,
    );
  const { paper: now, stays } = takeBack(paper, n - 1);
  if (options.out) await writeOut(options.out, writeFile(now));
  return {
    text: [
      takenBackWords(`${tests[n - 1]['name']}`, stays),
      options.out
        ? `Written into ${options.out}`
        : 'Nothing is changed on the disk: --out says where to write it',
    ].join('\n'),
    json: { taken: tests[n - 1]['name'], stays, out: options.out },
    exit: 0,
  };
}

// ---- what next

function next(program: Program, run: Run): void {
  program
    .option('--quick', 'without the numbers of cars: some seconds sooner')
    .action((path: string, options: Options & { readonly quick?: boolean }) =>
      run(async () => {
        const outing = await openOutingFile(path);
        const progress = progressOn(process.stderr);
        progress.say('answering as each test might find it');
        const ranked = whatToMeasure(outing, { counts: options.quick !== true });
        progress.end();
        const speech = { system: options.units, wording: options.wording };
        return {
          text:
            ranked.length === 0
              ? 'Nothing that a test here would tell is assumed.'
              : ranked
                  .flatMap((worth, i) => wrap(`${i + 1}. ${worthWords(worth, speech)}`, '   '))
                  .join('\n'),
          json: ranked.map((worth) => ({ ...worth, words: worthWords(worth, speech) })),
          exit: 0,
        };
      }, options),
    );
}
