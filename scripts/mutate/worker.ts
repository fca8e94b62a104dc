/**
 * A process that runs tests against one mutant at a time; the parent ends it when a mutant never ends.
 *
 * The bundle stands loaded and warm while one mutant after another is switched on in it. What a mutant has left behind
 * there (a table kept, a value remembered) may neither hide another nor show one: a test that fails is run once more
 * without the mutant, and must pass; and where the mutant is decided as the code is loaded, it is loaded anew.
 */
import { pathToFileURL } from 'node:url';
import { type Looked, type Named, type Report, type Task, WORKER } from './task.ts';
import { type Collected, collected } from './vitest-stand-in.ts';

type Loaded = ReturnType<typeof collected>;

/** The bundle as it was loaded once, with the files of tests that were asked for. */
interface World {
  readonly choose: (mutant: number) => void;
  readonly reached: Uint8Array;
  readonly files: Readonly<Record<string, () => Promise<unknown>>>;
  readonly loaded: Map<string, Loaded>;
}

let worlds = 0;
let standing: World | undefined;

async function load(bundle: string): Promise<World> {
  const world = await import(`${pathToFileURL(bundle).href}?${worlds++}`);
  return { ...world, loaded: new Map() };
}

async function fileOf({ files, loaded }: World, file: string): Promise<Loaded> {
  const before = loaded.get(file);
  if (before) return before;
  try {
    await files[file]();
  } finally {
    loaded.set(file, collected());
  }
  const now = loaded.get(file) as Loaded;
  for (const body of now.before) await body();
  return now;
}

const message = (error: unknown): string =>
  String(error instanceof Error ? error.message : error)
    .split('\n')[0]
    .slice(0, 160);

/** Last first, so that a test that leans on another is seen. */
async function lookAround(world: World, file: string): Promise<Report> {
  const since = (): number[] => {
    const ids = [...world.reached.entries()].filter(([, yes]) => yes).map(([id]) => id);
    world.reached.fill(0);
    return ids;
  };
  since();
  const { tests } = await fileOf(world, file);
  const loading = since();
  const told: Looked[] = [];
  for (const { name, body } of [...tests].reverse()) {
    const start = process.cpuUsage();
    const error = await fault(body);
    const { user, system } = process.cpuUsage(start);
    const passed = error === undefined;
    const says = passed ? {} : { message: message(error) };
    told.push({ name, ms: (user + system) / 1000, passed, ...says, reaches: since() });
  }
  return { tests: told, loading };
}

/** In the world that stands: its files are loaded without the mutant. */
async function tryHere(world: World, mutant: number, tests: readonly Named[]): Promise<Report | 'spoilt'> {
  for (const { file, name } of tests) {
    const test = named(await fileOf(world, file), name);
    world.choose(mutant);
    const error = await fault(test.body);
    world.choose(0);
    if (error === undefined) continue;
    return (await fault(test.body)) === undefined
      ? { failed: { test: name, message: message(error) } }
      : 'spoilt';
  }
  return {};
}

async function tryAnew(world: World, mutant: number, tests: readonly Named[]): Promise<Report> {
  world.choose(mutant);
  for (const { file, name } of tests) {
    try {
      await named(await fileOf(world, file), name).body();
    } catch (error) {
      return { failed: { test: name, message: message(error) } };
    }
  }
  return {};
}

function named({ tests }: Loaded, name: string): Collected {
  const test = tests.find((t) => t.name === name);
  if (!test) throw new Error(`no longer declared: ${name}`);
  return test;
}

async function fault(body: () => unknown): Promise<unknown> {
  try {
    await body();
    return undefined;
  } catch (error) {
    return error ?? new Error('threw nothing');
  }
}

async function work(task: Task): Promise<Report> {
  const { bundle } = task;
  if ('mutant' in task && task.anew) return tryAnew(await load(bundle), task.mutant, task.tests);
  standing ??= await load(bundle);
  if ('look' in task) return lookAround(standing, task.look);
  const report = await tryHere(standing, task.mutant, task.tests);
  if (report !== 'spoilt') return report;
  standing = undefined;
  return tryAnew(await load(bundle), task.mutant, task.tests);
}

process.on('message', (task: Task) => {
  work(task).then(
    (report) => process.send?.(report),
    (error) => process.send?.({ failed: { test: WORKER, message: message(error) } } satisfies Report),
  );
});
