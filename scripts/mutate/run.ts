/**
 * npm run mutate -- <folder or file …> [--most N] [--each N] [--seed S] [--workers N] [--budget seconds]
 *                     [--minutes N] [--tests folder,…] [--page file]
 *
 * Makes small wrong changes in the code named and looks whether some test fails. What no test notices is listed:
 * in test-results/mutation.json, and with --page as a page, with the reasons kept in survivors.json. With --most so many
 * are drawn of all, with --each so many of each folder, from the seed: the same seed draws the same. With
 * --minutes no other is begun after so long: what has been tried until then is a smaller sample.
 */
import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { basename, dirname, join } from 'node:path';
import { parseArgs } from 'node:util';
import { seeded } from '../../engine/base/spread.ts';
import { bundleTest, bundleWorker, folder, mutateAll, sourceFiles, testFiles } from './bundle.ts';
import type { Mutant } from './mutants.ts';
import { Hand, HUNG } from './pool.ts';
import { type Fate, page, summary } from './report.ts';

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
    page: { type: 'string' },
  },
});
const root = new URL('../../', import.meta.url).pathname;

interface Reaching {
  readonly bundle: string;
  readonly name: string;
  readonly ms: number;
}

const until = Date.now() + 60_000 * Number(values.minutes);

const say = (text: string): void => void process.stderr.write(`${text}\n`);

async function main(): Promise<number> {
  const files = sourceFiles(positionals);
  if (files.length === 0)
    throw new Error('name a folder or file, as in: npm run mutate -- engine/questions/host');
  rmSync(folder, { recursive: true, force: true });
  mkdirSync(folder, { recursive: true });
  await bundleWorker();
  const all = mutateAll(files).mutants;
  const chosen = drawn(all);
  const { code } = mutateAll(files, new Set(chosen.map((m) => m.id)));
  say(`${chosen.length} of ${all.length} mutants in ${files.length} files`);

  const hands = Array.from({ length: Math.max(1, Number(values.workers)) }, () => new Hand());
  const reaching = await lookAround(code, hands);
  const fates: Fate[] = [];
  await share(chosen, hands, async (mutant, hand) => {
    if (Date.now() > until) return;
    fates.push(await tryMutant(mutant, reaching.get(mutant.id) ?? [], hand));
    if (fates.length % 50 === 0) say(`${fates.length} tried`);
  });
  for (const hand of hands) hand.end();

  fates.sort((a, b) => a.mutant.id - b.mutant.id);
  mkdirSync(join(root, 'test-results'), { recursive: true });
  writeFileSync(join(root, 'test-results', 'mutation.json'), `${JSON.stringify(fates, null, 1)}\n`);
  if (values.page) writeFileSync(join(root, values.page), page(fates, positionals));
  console.log(summary(fates));
  return 0;
}

/** Every test of every bundle once, without a mutant: which mutants it reaches, and how long it takes. */
async function lookAround(
  code: ReadonlyMap<string, string>,
  hands: readonly Hand[],
): Promise<Map<number, Reaching[]>> {
  const reaching = new Map<number, Reaching[]>();
  let count = 0;
  await share(testFiles(values.tests), hands, async (file, hand) => {
    const bundle = await bundleTest(file, code);
    if (bundle === undefined) return;
    const report = await hand.ask({ bundle }, 900_000);
    if (report === HUNG || !report.tests) return say(`left out: ${file}: ${JSON.stringify(report)}`);
    for (const { name, ms, passed, message, reaches } of report.tests) {
      if (!passed) say(`left out, fails by itself: ${file} › ${name}: ${message}`);
      else {
        count++;
        for (const id of reaches) reaching.set(id, [...(reaching.get(id) ?? []), { bundle, name, ms }]);
      }
    }
  });
  say(`${count} tests reach them`);
  return reaching;
}

/** How often a bundle has noticed a change of a file. */
const noticed = new Map<string, number>();
const noticing = ({ file }: Mutant, bundle: string): string => `${file} ${bundle}`;

/** A file that bears the room's name is most likely to notice, until it is known which files do. */
const likeliest = (mutant: Mutant, { bundle }: Reaching): number =>
  noticed.get(noticing(mutant, bundle)) ?? (bundle.includes(basename(dirname(mutant.file))) ? 0.5 : 0);

/** First the files that noticed others, then the quickest, until a test fails or the budget is spent; what would spend most of it, last. */
async function tryMutant(mutant: Mutant, reaching: readonly Reaching[], hand: Hand): Promise<Fate> {
  if (reaching.length === 0) return { mutant, fate: 'lives', why: 'no test reaches it' };
  const budget = Number(values.budget) * 1000;
  const long = ({ ms }: Reaching): number => (ms > budget / 2 ? 1 : 0);
  let left = budget;
  let tried = 0;
  const chosen = new Map<string, Reaching[]>();
  const order = (a: Reaching, b: Reaching): number =>
    long(a) - long(b) || likeliest(mutant, b) - likeliest(mutant, a) || a.ms - b.ms;
  for (const test of [...reaching].sort(order)) {
    if (tried > 0 && left < test.ms) break;
    left -= test.ms;
    tried++;
    chosen.set(test.bundle, [...(chosen.get(test.bundle) ?? []), test]);
  }
  for (const [bundle, tests] of chosen) {
    const most = 5000 + 6 * tests.reduce((sum, t) => sum + t.ms, 0);
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

/** The mutants that are tried, by seed. */
function drawn(all: readonly Mutant[]): readonly Mutant[] {
  const uniform = seeded(Number(values.seed));
  const shuffled = all
    .map((mutant) => ({ mutant, order: uniform() }))
    .sort((a, b) => a.order - b.order)
    .map(({ mutant }) => mutant);
  const each = Number(values.each ?? all.length);
  const taken = new Map<string, number>();
  const ofFolder = ({ file }: Mutant): boolean => {
    const folder = dirname(file);
    const count = (taken.get(folder) ?? 0) + 1;
    taken.set(folder, count);
    return count <= each;
  };
  return shuffled.filter(ofFolder).slice(0, Number(values.most ?? all.length));
}

process.exit(await main());
