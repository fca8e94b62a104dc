/**
 * npm run mutate -- <folder or file …> [--most N] [--each N] [--whole N] [--seed S] [--workers N] [--budget seconds]
 *                     [--minutes N] [--tests folder,…] [--skip folder,…] [--rules] [--again] [--page file]
 *
 * Makes small wrong changes in the code named and looks whether some test fails. What no test notices is listed:
 * in test-results/mutation.json, and with --page as a page, with the reasons kept in survivors.json. With --most so many
 * are drawn of all, with --each so many of each folder, from the seed: the same seed draws the same. With --whole so
 * many besides of the whole engine. With --minutes no other is begun after so long: what has been tried until then
 * is a smaller sample. With --rules only what puts a rule or its severity out of force: a severity changed, a list given
 * back empty, a call left out. With --again the last run goes on: its survivors are tried anew, then what was not reached.
 */
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { dirname, join } from 'node:path';
import { parseArgs } from 'node:util';
import {
  bundle,
  bundleTests,
  bundleWorker,
  folder,
  mutateAll,
  read,
  sourceFiles,
  testFiles,
} from './bundle.ts';
import type { Mutant } from './mutants.ts';
import { Hand, HUNG } from './pool.ts';
import { Reach, type Reaching } from './reach.ts';
import { type Fate, page, summary } from './report.ts';
import { type Report, WORKER } from './task.ts';

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    most: { type: 'string' },
    each: { type: 'string' },
    minutes: { type: 'string', default: 'Infinity' },
    seed: { type: 'string', default: '1' },
    workers: { type: 'string', default: String(availableParallelism()) },
    budget: { type: 'string', default: '20' },
    tests: { type: 'string', default: 'tests' },
    skip: { type: 'string', default: ' ' },
    whole: { type: 'string', default: '0' },
    again: { type: 'boolean', default: false },
    rules: { type: 'boolean', default: false },
    page: { type: 'string' },
  },
});
const root = new URL('../../', import.meta.url).pathname;

const kept = join(root, 'test-results', 'mutation.json');
const until = Date.now() + 60_000 * Number(values.minutes);

/** Kinds of mutants that put a rule out of force, or change what it weighs. */
const putsOut: ReadonlySet<string> = new Set(['severity', 'emptied', 'left out']);

const say = (text: string): void => void process.stderr.write(`${text}\n`);

async function main(): Promise<number> {
  const named = sourceFiles(positionals);
  if (named.length === 0)
    throw new Error('name a folder or file, as in: npm run mutate -- engine/questions/host');
  const files = Number(values.whole) > 0 ? sourceFiles(['engine']) : named;
  const before = values.again ? (JSON.parse(readFileSync(kept, 'utf8')) as Fate[]) : [];
  mkdirSync(folder, { recursive: true });
  await bundleWorker();
  const all = mutateAll(files).mutants;
  const sample = drawn(all, new Set(named));
  const { code } = mutateAll(files, new Set(sample.map((m) => m.id)));
  const chosen = values.again ? goingOn(before, sample) : sample;
  say(`${chosen.length} of ${all.length} mutants in ${files.length} files`);

  const hands = Array.from({ length: Math.max(1, Number(values.workers)) }, () => new Hand());
  const reach = await lookAround(code, sample, hands);
  const fates: Fate[] = before.filter((f) => f.fate !== 'lives');
  const keep = (): void => {
    const left = before.filter(
      (f) =>
        f.fate === 'lives' &&
        !fates.some((g) => alike(f.mutant)(g.mutant) && f.mutant.whole === g.mutant.whole),
    );
    writeFileSync(kept, `${JSON.stringify([...fates, ...left], null, 1)}\n`);
  };
  mkdirSync(join(root, 'test-results'), { recursive: true });
  await share(chosen, hands, async (mutant, hand) => {
    if (Date.now() > until) return;
    fates.push(await tryMutant(mutant, reach, hand));
    if (fates.length % 10 === 0) {
      say(`${fates.length} tried`);
      keep();
    }
  });
  for (const hand of hands) hand.end();

  fates.sort((a, b) => a.mutant.id - b.mutant.id);
  keep();
  if (values.page) writeFileSync(join(root, values.page), page(fates, positionals));
  console.log(summary(fates));
  return 0;
}

/** What each file of tests did without a mutant; by what the mutants and the file say: a run that draws the same need not look again. */
type LookedAt = Readonly<Record<string, Report | undefined>>;
const lookedAt = join(folder, 'looked-at.json');
const sha = (text: string): string => createHash('sha256').update(text).digest('hex');

/** Every test once, without a mutant: which mutants it reaches, and how long it takes. */
async function lookAround(
  code: ReadonlyMap<string, string>,
  mutants: readonly Mutant[],
  hands: readonly Hand[],
): Promise<Reach> {
  const within = await bundleTests(testFiles(values.tests, values.skip), code);
  const files = [...within].filter(([, inside]) => inside.size > 0).map(([file]) => file);
  const same = sha(JSON.stringify([...code]));
  const before = existsSync(lookedAt) ? (JSON.parse(readFileSync(lookedAt, 'utf8')) as LookedAt) : {};
  const now: Record<string, Report> = {};
  const reach = new Reach(mutants, within);
  await share(files, hands, async (file, hand) => {
    const key = `${same} ${sha(read(file))} ${file}`;
    const report = before[key] ?? (await hand.ask({ bundle, look: file }, 900_000));
    if (report === HUNG || !report.tests)
      return say(`left out: ${file}: ${report === HUNG ? report : report.failed?.message}`);
    now[key] = report;
    for (const { name, message } of reach.add(file, report))
      say(`left out, fails by itself: ${file} › ${name}: ${message}`);
    if (Object.keys(now).length % 20 === 0) {
      say(`${Object.keys(now).length} of ${files.length} files of tests looked at`);
      writeFileSync(lookedAt, JSON.stringify({ ...before, ...now }));
    }
  });
  writeFileSync(lookedAt, JSON.stringify(now));
  say(`${reach.count} tests reach them, in ${Math.round(reach.ms / 1000)} s of the processor`);
  return reach;
}

/** First the tests of a rule; the golden of answers, which says of a change only that there is one, where none of them noticed. */
async function tryMutant(mutant: Mutant, reach: Reach, hand: Hand): Promise<Fate> {
  const reaching = reach.tests(mutant);
  if (reaching.length === 0) return { mutant, fate: 'lives', why: 'no test reaches it' };
  const golden = ({ name }: Reaching): boolean => name.startsWith('golden ');
  const own = await tryTests(
    mutant,
    reaching.filter((t) => !golden(t)),
    reach,
    hand,
  );
  if (own.fate !== 'lives') return own;
  const second = await tryTests(mutant, reaching.filter(golden), reach, hand);
  return second.fate === 'lives' ? { ...second, why: `${own.why}; golden: ${second.why}` } : second;
}

/** Of what lives, so much is tried once more on code that is loaded with the mutant in it, ms. */
const ONCE_MORE = 500;

/** The likeliest first, then the quickest, until a test fails or the budget is spent; what would spend most of it, last. */
async function tryTests(
  mutant: Mutant,
  reaching: readonly Reaching[],
  reach: Reach,
  hand: Hand,
): Promise<Fate> {
  const budget = Number(values.budget) * 1000;
  const long = ({ ms }: Reaching): number => (ms > budget / 2 ? 1 : 0);
  const order = (a: Reaching, b: Reaching): number =>
    long(a) - long(b) || reach.likeliest(mutant, b) - reach.likeliest(mutant, a) || a.ms - b.ms;
  const chosen = upTo(budget, [...reaching].sort(order));
  const anew = reach.isLoading(mutant);
  const runs: Tried[] = [await runTests(mutant, chosen, anew, hand)];
  if (runs[0].fate === 'lives' && !anew)
    runs.push(await runTests(mutant, upTo(ONCE_MORE, chosen), true, hand));
  const fate = runs[runs.length - 1];
  if (fate.fate === 'killed') reach.notice(mutant, fate.by ?? '');
  if (fate.fate !== 'lives') return fate;
  const tried =
    chosen.length < reaching.length ? `${chosen.length} of ${reaching.length} tests tried` : undefined;
  return { ...fate, why: tried ?? `${chosen.length} tests pass` };
}

function upTo(budget: number, tests: readonly Reaching[]): readonly Reaching[] {
  let left = budget;
  const end = tests.findIndex((test) => {
    left -= test.ms;
    return left < 0;
  });
  return end < 0 ? tests : tests.slice(0, Math.max(1, end));
}

/** By which file of tests it was noticed. */
type Tried = Fate & { readonly by?: string | undefined };

async function runTests(
  mutant: Mutant,
  tests: readonly Reaching[],
  anew: boolean,
  hand: Hand,
): Promise<Tried> {
  const most = 10_000 + 10 * tests.reduce((sum, t) => sum + t.ms, 0);
  const named = tests.map(({ file, name }) => ({ file, name }));
  const report = await hand.ask({ bundle, mutant: mutant.id, tests: named, anew }, most);
  if (report === HUNG) return { mutant, fate: 'hangs', why: tests[0].name };
  if (report.failed === undefined) return { mutant, fate: 'lives', why: '' };
  const { test, message } = report.failed;
  if (test === WORKER) return { mutant, fate: 'lives', why: `not tried: ${message}` };
  return { mutant, fate: 'killed', why: test, by: tests.find((t) => t.name === test)?.file };
}

/** Each hand takes the next piece of work as soon as it is free. */
async function share<T>(
  work: readonly T[],
  hands: readonly Hand[],
  take: (piece: T, hand: Hand) => Promise<void>,
): Promise<void> {
  let next = 0;
  await Promise.all(
    hands.map(async (hand) => {
      while (next < work.length) await take(work[next++], hand);
    }),
  );
}

/** The same change in the same place, where nothing but tests was changed since. */
const alike =
  (a: Mutant) =>
  (b: Mutant): boolean =>
    a.file === b.file && a.line === b.line && a.what === b.what && a.from === b.from && a.to === b.to;

/** Those of a run before that lived, then those that it did not come to: of the whole engine first. */
function goingOn(before: readonly Fate[], sample: readonly Mutant[]): readonly Mutant[] {
  const turn = (m: Mutant): number => {
    const known = before.find((f) => alike(f.mutant)(m) && f.mutant.whole === m.whole);
    if (known) return known.fate === 'lives' ? 0 : 3;
    return m.whole ? 1 : 2;
  };
  return sample
    .map((mutant) => ({ mutant, turn: turn(mutant) }))
    .filter((m) => m.turn < 3)
    .sort((a, b) => a.turn - b.turn)
    .map(({ mutant }) => mutant);
}

/**
 * The mutants that are tried, by seed, whatever else was changed since: of each folder in turn, then those of the whole engine. Each room's are
 * the first of it in one shuffle, and so are those of the whole: however many are tried, they are a fair sample.
 */
function drawn(all: readonly Mutant[], named: ReadonlySet<string>): readonly Mutant[] {
  const order = ({ file, text, from, to }: Mutant): string =>
    sha([values.seed, file, text, from, to].join('\n'));
  const shuffled = all
    .map((mutant) => ({ mutant, order: order(mutant) }))
    .sort((a, b) => (a.order < b.order ? -1 : a.order > b.order ? 1 : 0))
    .map(({ mutant }) => mutant);
  const each = Number(values.each ?? all.length);
  const taken = new Map<string, number>();
  const turn = ({ file }: Mutant): number => {
    const count = (taken.get(dirname(file)) ?? 0) + 1;
    taken.set(dirname(file), count);
    return count;
  };
  const rooms = shuffled
    .filter(({ file, what }) => named.has(file) && (!values.rules || putsOut.has(what)))
    .map((mutant) => ({ mutant, turn: turn(mutant) }))
    .filter((m) => m.turn <= each)
    .sort((a, b) => a.turn - b.turn)
    .map(({ mutant }) => mutant)
    .slice(0, Number(values.most ?? all.length));
  const whole = shuffled.slice(0, Number(values.whole)).map((m) => ({ ...m, whole: true as const }));
  return alternately(rooms, whole);
}

/** Both lists in their order, so mixed that wherever it is cut off as great a share of each has come. */
function alternately<T>(...lists: readonly (readonly T[])[]): readonly T[] {
  return lists
    .flatMap((list) => list.map((one, i) => ({ one, at: (i + 0.5) / list.length })))
    .sort((a, b) => a.at - b.at)
    .map(({ one }) => one);
}

process.exit(await main());
