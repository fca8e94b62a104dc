/**
 * npm run mutate -- <folder or file …> [--most N] [--each N] [--whole N] [--seed S] [--workers N] [--budget seconds]
 *                     [--minutes N] [--tests folder,…] [--skip folder,…] [--again] [--page file]
 *
 * Makes small wrong changes in the code named and looks whether some test fails. What no test notices is listed:
 * in test-results/mutation.json, and with --page as a page, with the reasons kept in survivors.json. With --most so many
 * are drawn of all, with --each so many of each folder, from the seed: the same seed draws the same. With --whole so
 * many besides of the whole engine. With --minutes no other is begun after so long: what has been tried until then
 * is a smaller sample. With --again the last run goes on: its survivors are tried anew, then what was not reached.
 */
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { basename, dirname, join } from 'node:path';
import { parseArgs } from 'node:util';
import { seeded } from '../../engine/base/spread.ts';
import { bundleTest, bundleWorker, folder, mutateAll, read, sourceFiles, testFiles } from './bundle.ts';
import type { Mutant } from './mutants.ts';
import { Hand, HUNG } from './pool.ts';
import { type Fate, page, summary } from './report.ts';
import type { Report } from './worker.ts';

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
    page: { type: 'string' },
  },
});
const root = new URL('../../', import.meta.url).pathname;

interface Reaching {
  readonly bundle: string;
  readonly name: string;
  readonly ms: number;
}

const kept = join(root, 'test-results', 'mutation.json');
const until = Date.now() + 60_000 * Number(values.minutes);

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
  const reaching = await lookAround(code, hands);
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
    fates.push(await tryMutant(mutant, reaching.get(mutant.id) ?? [], hand));
    if (fates.length % 5 === 0) {
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

/** A file of tests without a mutant: its bundle where it reaches any, and which ones. */
interface Looked {
  readonly bundle: string | undefined;
  readonly report: Report | typeof HUNG | undefined;
}
/** By what the mutants and the file say: a run that draws the same need not look again. */
type LookedAt = Readonly<Record<string, Looked>>;
const lookedAt = join(folder, 'looked-at.json');

/** Every test of every bundle once, without a mutant: which mutants it reaches, and how long it takes. */
async function lookAround(
  code: ReadonlyMap<string, string>,
  hands: readonly Hand[],
): Promise<Map<number, Reaching[]>> {
  const reaching = new Map<number, Reaching[]>();
  let count = 0;
  let seen = 0;
  const same = createHash('sha256')
    .update(JSON.stringify([...code]))
    .digest('hex');
  const before = existsSync(lookedAt) ? (JSON.parse(readFileSync(lookedAt, 'utf8')) as LookedAt) : {};
  const now: Record<string, Looked> = {};
  const look = async (file: string, hand: Hand): Promise<Looked> => {
    const key = `${same} ${createHash('sha256').update(read(file)).digest('hex')} ${file}`;
    const bundle = before[key] ? before[key].bundle : await bundleTest(file, code);
    const asked = bundle === undefined ? undefined : () => hand.ask({ bundle }, 900_000);
    const report = before[key] ? before[key].report : await asked?.();
    now[key] = { bundle, report };
    seen++;
    if (seen % 10 === 0) {
      say(`${seen} files of tests looked at`);
      writeFileSync(lookedAt, JSON.stringify({ ...before, ...now }));
    }
    return now[key];
  };
  await share(testFiles(values.tests, values.skip), hands, async (file, hand) => {
    const { bundle, report } = await look(file, hand);
    if (bundle === undefined) return;
    if (report === undefined || report === HUNG || !report.tests)
      return say(`left out: ${file}: ${JSON.stringify(report)}`);
    for (const { name, ms, passed, message, reaches } of report.tests) {
      if (!passed) say(`left out, fails by itself: ${file} › ${name}: ${message}`);
      else {
        count++;
        for (const id of reaches) reaching.set(id, [...(reaching.get(id) ?? []), { bundle, name, ms }]);
      }
    }
  });
  writeFileSync(lookedAt, JSON.stringify({ ...before, ...now }));
  say(`${count} tests reach them`);
  return reaching;
}

/** What it takes to load a bundle, ms. */
const LOADING = 60;

/** How often a bundle has noticed a change of a file. */
const noticed = new Map<string, number>();
const noticing = ({ file }: Mutant, bundle: string): string => `${file} ${bundle}`;

/** A file that bears the room's name is most likely to notice, until it is known which files do. */
const likeliest = (mutant: Mutant, { bundle }: Reaching): number =>
  noticed.get(noticing(mutant, bundle)) ?? (bundle.includes(basename(dirname(mutant.file))) ? 0.5 : 0);

/** First the tests of a rule; the golden of answers, which says of a change only that there is one, where none of them noticed. */
async function tryMutant(mutant: Mutant, reaching: readonly Reaching[], hand: Hand): Promise<Fate> {
  if (reaching.length === 0) return { mutant, fate: 'lives', why: 'no test reaches it' };
  const golden = ({ name }: Reaching): boolean => name.startsWith('golden ');
  const first = await tryTests(
    mutant,
    reaching.filter((t) => !golden(t)),
    hand,
  );
  if (first.fate !== 'lives') return first;
  const second = await tryTests(mutant, reaching.filter(golden), hand);
  return second.fate === 'lives' ? { ...second, why: `${first.why}; golden: ${second.why}` } : second;
}

/** First the files that noticed others, then the quickest, until a test fails or the budget is spent; what would spend most of it, last. */
async function tryTests(mutant: Mutant, reaching: readonly Reaching[], hand: Hand): Promise<Fate> {
  const budget = Number(values.budget) * 1000;
  const long = ({ ms }: Reaching): number => (ms > budget / 2 ? 1 : 0);
  let left = budget;
  let tried = 0;
  const chosen = new Map<string, Reaching[]>();
  const order = (a: Reaching, b: Reaching): number =>
    long(a) - long(b) || likeliest(mutant, b) - likeliest(mutant, a) || a.ms - b.ms;
  for (const test of [...reaching].sort(order)) {
    const costs = test.ms + (chosen.has(test.bundle) ? 0 : LOADING);
    if (tried > 0 && left < costs) break;
    left -= costs;
    tried++;
    chosen.set(test.bundle, [...(chosen.get(test.bundle) ?? []), test]);
  }
  for (const [bundle, tests] of chosen) {
    const most = 30_000 + 6 * tests.reduce((sum, t) => sum + t.ms, 0);
    const report = await hand.ask({ bundle, mutant: mutant.id, tests: tests.map((t) => t.name) }, most);
    if (report === HUNG) return { mutant, fate: 'hangs', why: tests[0].name };
    if (report.failed) {
      const key = noticing(mutant, bundle);
      noticed.set(key, (noticed.get(key) ?? 0) + 1);
      return { mutant, fate: 'killed', why: report.failed.test };
    }
  }
  const why = tried < reaching.length ? `${tried} of ${reaching.length} tests tried` : `${tried} tests pass`;
  return { mutant, fate: 'lives', why };
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
 * The mutants that are tried, by seed: of each folder in turn, then those of the whole engine. Each room's are
 * the first of it in one shuffle, and so are those of the whole: however many are tried, they are a fair sample.
 */
function drawn(all: readonly Mutant[], named: ReadonlySet<string>): readonly Mutant[] {
  const uniform = seeded(Number(values.seed));
  const shuffled = all
    .map((mutant) => ({ mutant, order: uniform() }))
    .sort((a, b) => a.order - b.order)
    .map(({ mutant }) => mutant);
  const each = Number(values.each ?? all.length);
  const taken = new Map<string, number>();
  const turn = ({ file }: Mutant): number => {
    const count = (taken.get(dirname(file)) ?? 0) + 1;
    taken.set(dirname(file), count);
    return count;
  };
  const rooms = shuffled
    .filter(({ file }) => named.has(file))
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
