/** heedway measure: which tests there are, how each is made, what its readings say, and what the answer makes of it. */
import type { Command as Program } from 'commander';
import { tellDifference, tellStanding } from '../../desk/figures.ts';
import { single } from '../../desk/make-up.ts';
import { keptTests } from '../../desk/measured/ages.ts';
import { builtAlike, withAlike } from '../../desk/measured/alike.ts';
import { applyToLine, applyToOuting, applyToVehicle, takeBack, testsIn } from '../../desk/measured/apply.ts';
import { answersBeside, type BeforeAfter, outingIn, toldBeside } from '../../desk/measured/compare.ts';
import { foretoldIn, foretoldOf, keepAsCheck } from '../../desk/measured/foretold.ts';
import { guideOf, listed, testKinds } from '../../desk/measured/guide.ts';
import { whatToMeasure } from '../../desk/measured/next.ts';
import { kindOf, ofThatName } from '../../desk/measured/record.ts';
import type { Result } from '../../engine/calibrate/result.ts';
import type { TestKind } from '../../engine/calibrate/tests/index.ts';
import { writeFile } from '../../papers/index.ts';
import { sheetDocument } from '../../views/measured/sheet.ts';
import { keptWords } from '../../words/measured/ages.ts';
import { notWrittenWords, takenBackWords, writtenWords } from '../../words/measured/applied.ts';
import { predictedWords } from '../../words/measured/predicted.ts';
import { longWords } from '../../words/measured/stop-parts.ts';
import { worthLines, worthWords } from '../../words/measured/worth.ts';
import type { Voice } from '../../words/voice.ts';
import { cardPdf } from '../card-pdf.ts';
import { type Command, common, type Options, type Outcome, type Run, UsageFault } from '../command.ts';
import { asksRecords, type Gate } from '../gate.ts';
import { progressOn } from '../progress.ts';
import { wrap } from '../screen.ts';
import {
  type Json,
  kindNamed,
  made,
  type Opened,
  opened,
  paperAt,
  REFUSED,
  type WithOptions,
} from '../test-record.ts';
import { writeOut } from '../write.ts';
import { checkCommands } from './measure-checks.ts';
import { logCommand } from './measure-log.ts';

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
      .action((path: string, options: WithOptions) => run((gate) => readings(gate, path, options), options));
    made(
      sub(
        'apply <record> <paper>',
        'A test written into an outing, a vehicle or a line; before and after of the answer.',
      ),
    )
      .option('-o, --out <file>', 'write the paper here; nothing is written without it')
      .option('--alike', 'to the vehicles built alike as well: wider, and not as measured')
      .option('--check-only', 'keep a stop test beside what the papers had said of it, and change no figure')
      .action((record: string, paper: string, options: ApplyOptions) =>
        run((gate) => apply(gate, record, paper, options), options),
      );
    checkCommands(sub, run);
    logCommand(sub, run);
    asksRecords(sub('kept <paper>', 'The tests that a paper keeps, oldest first.')).action(
      (path: string, options: Options) => run((gate) => keptIn(gate, path), options),
    );
    asksRecords(
      sub('back <paper> <number>', 'One of them taken back: what stood there before stands there again.'),
    )
      .option('-o, --out <file>', 'write the paper here; nothing is written without it')
      .action((path: string, number: string, options: WithOptions) =>
        run((gate) => back(gate, path, number, options), options),
      );
    next(
      sub('next <outing>', 'What to measure next: the tests that would change the answer most, per minute.'),
      run,
    );
  },
};

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

async function readings(gate: Gate, path: string, options: WithOptions): Promise<Outcome> {
  const test = await opened(gate, path, options);
  if (options.out) await writeOut(options.out, writeFile(test.record));
  return toldReadings(test);
}

const toldReadings = ({ record, outcome, lines }: Opened): Outcome => ({
  text: [`${record['name']}:`, ...lines.flatMap((line) => wrap(`  ${line}`, '    '))].join('\n'),
  json: { test: record['name'], kind: kindOf(record), ...outcome, words: lines },
  exit: outcome.ok ? 0 : REFUSED,
});

// ---- into a paper and out of it

interface ApplyOptions extends WithOptions {
  readonly checkOnly?: boolean;
  readonly alike?: boolean;
}

async function apply(gate: Gate, path: string, into: string, options: ApplyOptions): Promise<Outcome> {
  const paper = await paperAt(gate, into);
  const outing = paper['heedway'] === 'outing';
  const test = await opened(
    gate,
    path,
    outing && options.outing === undefined ? { ...options, outing: into } : options,
  );
  const { outcome, lines } = test;
  const record = foretoldOf(test.record, test.read);
  const foretold = foretoldIn(record);
  if (options.checkOnly) return keptAsCheck(paper, record, into, options);
  if (!outcome.ok) return toldReadings(test);
  const { results } = outcome;
  const one = outing ? (options.vehicle ?? onlyOne(paper, record, results)) : undefined;
  const likes = options.alike && one !== undefined ? builtAlike(paper, one) : [];
  const ids = likes.map(({ id }) => id);
  const applied = outing
    ? applyToOuting(paper, record, withAlike(results, ids), one, ids)
    : paper['heedway'] === 'line'
      ? applyToLine(paper, record, results)
      : applyToVehicle(paper, record, results, options.vehicle);
  const speech = { system: options.units, wording: options.wording };
  const stood = outing ? await beforeAndAfter(paper, applied.paper, speech) : undefined;
  if (options.out) await writeOut(options.out, writeFile(applied.paper));
  return {
    text: [
      ...lines,
      ...(foretold.length > 0 ? [predictedWords(foretold)] : []),
      ...applied.left.map((one) => notWrittenWords(one, options.wording)),
      writtenWords(applied.written.length),
      ...applied.written.map((field) => `  ${field}`),
      ...(likes.length > 0
        ? [
            `Taken for those built alike, wider and not as measured: ${likes.map(({ name }) => name).join(', ')}`,
          ]
        : []),
      ...(stood
        ? [
            '',
            `before: ${tellStanding(stood.was)}`,
            `now:    ${tellStanding(stood.now)}`,
            tellDifference(stood.was, stood.now),
            ...(stood.stop === undefined ? [] : [stood.stop]),
          ]
        : []),
      '',
      options.out ? `Written into ${options.out}` : NOT_WRITTEN,
    ]
      .flatMap((line) => wrap(line, '  '))
      .join('\n'),
    json: {
      written: applied.written,
      left: applied.left,
      words: lines,
      before: stood?.was,
      now: stood?.now,
      stop: stood?.stop,
      out: options.out,
    },
    exit: applied.written.length > 0 ? 0 : REFUSED,
  };
}

async function keptAsCheck(paper: Json, record: Json, into: string, options: ApplyOptions): Promise<Outcome> {
  if (paper['heedway'] !== 'outing' || record['foretold'] === undefined)
    throw new UsageFault(`${into}: --check-only: expected a stop test and the outing that it was made with`);
  if (options.out) await writeOut(options.out, writeFile(keepAsCheck(paper, record)));
  return {
    text: `Kept as a check; no figure is changed. ${options.out ? `Written into ${options.out}` : NOT_WRITTEN}`,
    json: { kept: record['name'], out: options.out },
    exit: 0,
  };
}

const NOT_WRITTEN = 'Nothing is changed on the disk: --out says where to write it';

async function beforeAndAfter(
  before: Json,
  after: Json,
  speech: Omit<Voice, 'outing'>,
): Promise<BeforeAfter | undefined> {
  const [old, fresh] = await Promise.all([outingIn(before), outingIn(after)]);
  if (!old.ok || !fresh.ok) return undefined;
  return toldBeside([before, after], [old.value, fresh.value], answersBeside(old.value, fresh.value), speech);
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

async function keptIn(gate: Gate, path: string): Promise<Outcome> {
  const kept = keptTests(await paperAt(gate, path), new Date().toISOString().slice(0, 10));
  return {
    text:
      kept.length === 0
        ? 'No test is kept here.'
        : kept.map((one) => `${one.number}. ${one.date}  ${one.name} (${keptWords(one)})`).join('\n'),
    json: kept.map((one) => ({ ...one, words: keptWords(one) })),
    exit: 0,
  };
}

async function back(gate: Gate, path: string, number: string, options: WithOptions): Promise<Outcome> {
  const paper = await paperAt(gate, path);
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
      options.out ? `Written into ${options.out}` : NOT_WRITTEN,
    ].join('\n'),
    json: { taken: tests[n - 1]['name'], stays, out: options.out },
    exit: 0,
  };
}

// ---- what next

function next(program: Program, run: Run): void {
  asksRecords(program)
    .option('--quick', 'without the numbers of cars: some seconds sooner')
    .action((path: string, options: Options & { readonly quick?: boolean }) =>
      run(async (gate) => {
        const outing = await gate.outing(path);
        const progress = progressOn(process.stderr);
        progress.say('answering as each test might find it');
        const { stop, worths } = whatToMeasure(outing, { counts: options.quick !== true });
        progress.end();
        const speech = { system: options.units, wording: options.wording };
        const ranked = worths.map((worth) => ({ ...worth, words: worthWords(worth, speech) }));
        const { told, hardly } = worthLines(worths, speech);
        const long = stop && longWords(stop, speech);
        return {
          text: [
            ...(long
              ? [...wrap(long.what), ...long.parts.flatMap((part) => wrap(`  - ${part}`, '    ')), '']
              : []),
            ...(ranked.length === 0 ? ['Nothing that a test here would tell is assumed.'] : []),
            ...told.flatMap(({ words }, i) => wrap(`${i + 1}. ${words}`, '   ')),
            ...(hardly === undefined ? [] : wrap(hardly)),
          ].join('\n'),
          json: { stop: stop && { ...stop, words: long }, tests: ranked },
          exit: 0,
        };
      }, options),
    );
}
