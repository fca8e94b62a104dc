/** heedway new: one's own train and line from four questions, as flags or asked one by one. */
import { mkdir, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { tellInvented } from '../../desk/invented.ts';
import type { FieldKey, Replies } from '../../desk/new/field.ts';
import { filesOf } from '../../desk/new/files.ts';
import { askedWith, type Brought, type Growth, grow } from '../../desk/new/make.ts';
import { askedIn, fieldKeys, fieldOf, questions } from '../../desk/new/questions.ts';
import { faultsOf, Read } from '../../desk/new/reading.ts';
import { type Lack, lackOf, newWord, tellMissing, tellReply } from '../../desk/new/say.ts';
import { tellSeated } from '../../desk/new/seats.ts';
import { wholeAnswer } from '../../engine/answer/complete.ts';
import { inquire } from '../../engine/answer/inquiry.ts';
import { firstLadder } from '../../engine/answer/ladder.ts';
import { readOuting } from '../../papers/index.ts';
import { accepted } from '../../units/index.ts';
import { tellVerdict } from '../../words/verdict.ts';
import { inWording, type Wording } from '../../words/voice.ts';
import { screenText } from '../check-text.ts';
import { type Command, common, exitOf, type Options, type Outcome, UsageFault, voiceOf } from '../command.ts';
import { asksRecords, type Gate } from '../gate.ts';
import { refusal } from '../open.ts';
import { wrap } from '../screen.ts';
import { setIn } from '../set-in.ts';
import { writeOut } from '../write.ts';
import { broughtHost, broughtLine } from './brought.ts';

interface NewOptions extends Options {
  readonly line?: string;
  readonly host?: string;
  readonly force?: boolean;
  readonly remedies?: boolean;
  readonly [flag: string]: unknown;
}

export const newCommand: Command = {
  name: 'new',
  declare: (program, run) => {
    const command = asksRecords(common(program.command('new [folder]')))
      .description('Your own train and line from four questions: asked one by one, or given as options.')
      .option(
        '--line <file>',
        "a line file, a host's outing, the code or link of one, or a survey (CSV, GPX) instead of the last question",
      )
      .option('--lengths <unit>', 'of a survey whose header does not say: ft or m')
      .option('--bends <hand>', 'of a survey: the way of radii without a sign, left or right')
      .option('--host <file>', "the host's rules, a file")
      .option('--no-remedies', 'do not look for remedies')
      .option('--force', 'write over files that are there');
    for (const key of fieldKeys) {
      const field = fieldOf(key);
      const what = inWording(field.label, 'us');
      command.option(
        `--${field.flag} <${field.form === 'figure' ? 'figure' : field.form === 'choice' ? 'word' : 'text'}>`,
        field.form === 'figure'
          ? `${what}: ${accepted(field.kind)}${field.words ? `, or ${field.words.join(', ')}` : ''}`
          : field.form === 'choice'
            ? `${what}: ${field.values.join(', ')}`
            : what,
      );
    }
    command.action((folder: string | undefined, options: NewOptions) =>
      run((gate) => begin(gate, folder ?? '.', options), options),
    );
  },
};

/** `engine-weight` as commander keeps it: `engineWeight`. */
const kept = (flag: string): string => flag.replace(/-(\w)/g, (_, letter: string) => letter.toUpperCase());

const given = (options: NewOptions): Replies =>
  Object.fromEntries(
    fieldKeys.flatMap((key) => {
      const text = options[kept(fieldOf(key).flag)];
      return typeof text === 'string' ? [[key, text]] : [];
    }),
  );

/** A survey does not say it; where nobody does, nothing is made of the survey either. */
const gaugeOf = (options: NewOptions): string | undefined =>
  new Read(given(options), options.units).figure('engine.gauge')?.text;

/** The line's own flag says whether a survey's ends meet, too. */
const ofSurvey = (options: NewOptions): Partial<Record<'lengths' | 'shape' | 'bends', string>> =>
  Object.fromEntries(
    (['lengths', 'shape', 'bends'] as const).flatMap((flag) =>
      typeof options[flag] === 'string' ? [[flag, options[flag]]] : [],
    ),
  );

async function begin(gate: Gate, folder: string, options: NewOptions): Promise<Outcome> {
  const brought: Brought = {
    ...(options.line
      ? await broughtLine(options.line, {
          gauge: gaugeOf(options),
          ...ofSurvey(options),
          units: options.units,
        })
      : {}),
    ...(options.host ? { host: await broughtHost(options.host) } : {}),
  };
  const flags = given(options);
  const replies = Object.keys(flags).length > 0 ? flags : await interview(options, brought);
  const growth = grow(replies, options.units, brought);
  if (growth.faults.length > 0)
    throw new UsageFault(
      growth.faults
        .map(({ key, found, expected }) => `--${fieldOf(key).flag}: found ${found}; expected ${expected}`)
        .join('\n'),
      growth.faults,
    );
  return growth.paper
    ? written(gate, folder, growth, growth.paper, options, brought.notes)
    : wanting(growth, options);
}

const lacks = (keys: readonly FieldKey[], wording: Wording): Lack[] =>
  keys.map((key) => lackOf(key, wording));

const measureLines = (list: readonly Lack[]): string[] =>
  list.flatMap(({ named, how, flag }) => wrap(`- ${named} (--${flag}): ${how}`, '  '));

/** More people than seats, as the page says it. */
const crowdLines = ({ seated }: Growth): string[] => {
  const crowd = tellSeated(seated);
  return crowd === '' ? [] : ['', ...wrap(crowd, '')];
};

/** Flags that are no matter of this train or line, as it was said: what they say is in no file. */
function unused(options: NewOptions): string[] {
  const replies = given(options);
  const asked = new Set(questions.flatMap(({ id }) => askedIn(id, replies)));
  return fieldKeys.filter((key) => key in replies && !asked.has(key)).map((key) => `--${fieldOf(key).flag}`);
}

const unusedLines = (options: NewOptions): string[] => {
  const flags = unused(options);
  return flags.length === 0
    ? []
    : ['', ...wrap(`Not used, for nothing else that was said asks for it: ${flags.join(', ')}.`, '')];
};

/** Too little for any paper: nothing is written. */
function wanting(growth: Growth, options: NewOptions): Outcome {
  const { wording } = options;
  const missing = lacks(growth.missing, wording);
  return {
    text: [
      'CANNOT TELL',
      `${tellMissing(growth)} Nothing is written yet. Measure:`,
      ...measureLines(missing),
      ...crowdLines(growth),
      ...unusedLines(options),
    ].join('\n'),
    json: { answer: tellVerdict('unknown'), missing, unused: unused(options) },
    exit: exitOf.unknown,
  };
}

async function written(
  gate: Gate,
  folder: string,
  growth: Growth,
  paper: Record<string, unknown>,
  options: NewOptions,
  notes: readonly string[] = [],
): Promise<Outcome> {
  const ofLine =
    notes.length === 0 ? [] : ['', 'The survey:', ...notes.flatMap((note) => wrap(`- ${note}`, '  '))];
  const read = await readOuting(
    { path: 'outing.json', content: JSON.stringify(paper) },
    async () => undefined,
  );
  if (!read.ok) throw refusal(read.problems);
  const files = filesOf(paper);
  const paths = files.map(({ path }) => join(folder, path));
  if (!options.force) {
    const there = (await Promise.all(paths.map(isThere))).flatMap((is, i) => (is ? [paths[i]] : []));
    if (there.length > 0)
      throw new UsageFault(`${there.join(', ')}: found there already; expected another folder, or --force`);
  }
  await mkdir(folder, { recursive: true }).catch(() => undefined);
  for (const [i, { text }] of files.entries()) await writeOut(paths[i], text);
  const said = `Written: ${paths.join(', ')}`;
  const [missing, open] = [lacks(growth.missing, options.wording), lacks(growth.open, options.wording)];
  if (missing.length > 0)
    return {
      text: [
        'CANNOT TELL',
        `${tellMissing(growth)} Measure:`,
        ...measureLines(missing),
        ...crowdLines(growth),
        ...unusedLines(options),
        '',
        said,
        `What can be said already: ${again(paths[0], options)}`,
        ...ofLine,
      ].join('\n'),
      json: { answer: tellVerdict('unknown'), written: paths, missing, open, unused: unused(options) },
      exit: exitOf.unknown,
    };
  // Its line may be one on which something is shut by now.
  const { outing } = await gate.made(paper, paths[0]);
  // As `heedway check` says it: what to do next is the ladder.
  const inquiry = inquire(outing);
  const answer = wholeAnswer(inquiry, { remedies: false, counts: 'today' });
  const ladder = options.remedies === false ? undefined : firstLadder(inquiry);
  const voice = voiceOf(options, outing);
  const beside = {
    ladder,
    setIn: await setIn(paths[0], paper, answer.findings),
    invented: tellInvented(paper),
  };
  return {
    text: [
      screenText(answer, voice, beside),
      ...crowdLines(growth),
      ...unusedLines(options),
      '',
      said,
      `The same again: ${again(paths[0], options)}`,
      ...ofLine,
      ...(open.length > 0 ? ['', 'Not known, and what it costs:'] : []),
      ...open.flatMap(({ named, cost, flag }) => wrap(`- ${named} (--${flag}): ${cost}`, '  ')),
    ].join('\n'),
    json: {
      answer: tellVerdict(newWord(growth, answer.verdict)),
      written: paths,
      missing,
      open,
      unused: unused(options),
    },
    exit: exitOf[newWord(growth, answer.verdict)],
  };
}

/** The command that tells the same of what was written. */
const again = (path: string, { units, wording }: NewOptions): string =>
  [
    `heedway check ${path}`,
    ...(units === 'imperial' ? [] : [`--units ${units}`]),
    ...(wording === 'us' ? [] : [`--wording ${wording}`]),
  ].join(' ');

const isThere = (path: string): Promise<boolean> =>
  stat(path).then(
    () => true,
    () => false,
  );

/** Each question in turn on the terminal; an empty line says that it is not known. */
async function interview({ units, wording }: NewOptions, brought: Brought): Promise<Replies> {
  const terminal = createInterface({ input: process.stdin, output: process.stderr, terminal: false });
  const lines = terminal[Symbol.asyncIterator]();
  const say = (text: string): void => void process.stderr.write(`${text}\n`);
  let replies: Replies = {};
  say('Your own train and line in four questions. Leave empty what you do not know.');
  for (const { id, title } of questions) {
    say(`\n${title}`);
    const done = new Set<FieldKey>();
    for (;;) {
      const key = askedWith(id, replies, brought).find((k) => !done.has(k));
      if (key === undefined) break;
      done.add(key);
      const { label, how } = lackOf(key, wording);
      const field = fieldOf(key);
      const values = field.form === 'choice' ? ` [${field.values.join(', ')}]` : '';
      for (;;) {
        process.stderr.write(`${label}${values} (${how}) `);
        const { value, done: over } = await lines.next();
        if (over) return replies;
        const text = String(value).trim();
        const [fault] = text === '' ? [] : faultsOf({ [key]: text }, units);
        if (fault) {
          say(`  found ${fault.found}; expected ${fault.expected}`);
          continue;
        }
        if (text === '') break;
        const comes = tellReply(key, text, wording);
        if (comes !== '') say(`  ${comes}`);
        replies = { ...replies, [key]: text };
        break;
      }
    }
    const crowd = id === 'people' ? tellSeated(grow(replies, units, brought).seated) : '';
    if (crowd !== '') say(`  ${crowd}`);
  }
  terminal.close();
  return replies;
}
