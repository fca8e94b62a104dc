/** A process that runs tests against one mutant at a time; the parent ends it when a mutant never ends. */
import { pathToFileURL } from 'node:url';
import { type Collected, collected } from './vitest-stand-in.ts';

export interface Task {
  readonly bundle: string;
  /** Undefined: no mutant; note which ones each test reaches. */
  readonly mutant?: number;
  /** Names of the tests to run; undefined: all, last first, so that one that leans on another is seen. */
  readonly tests?: readonly string[];
}

export interface Report {
  /** The first test that failed, with its message. */
  readonly failed?: { readonly test: string; readonly message: string };
  /** Without a mutant: what each test did. */
  readonly tests?: readonly {
    readonly name: string;
    readonly ms: number;
    readonly passed: boolean;
    readonly message?: string;
    readonly reaches: readonly number[];
  }[];
}

const world = globalThis as { mutant?: (id: number) => boolean };
let loads = 0;

const message = (error: unknown): string =>
  String(error instanceof Error ? error.message : error)
    .split('\n')[0]
    .slice(0, 160);

async function load(bundle: string): Promise<ReturnType<typeof collected>> {
  await import(`${pathToFileURL(bundle).href}?${loads++}`);
  return collected();
}

async function lookAround(bundle: string): Promise<Report> {
  let reached = new Set<number>();
  world.mutant = (id) => {
    reached.add(id);
    return false;
  };
  const { tests, before, after } = await load(bundle);
  for (const body of before) await body();
  const always = reached;
  const told = [];
  for (const { name, body } of [...tests].reverse()) {
    reached = new Set();
    const start = process.cpuUsage();
    const error = await fault(body);
    const passed = error === undefined;
    const { user, system } = process.cpuUsage(start);
    const ms = (user + system) / 1000;
    told.push({
      name,
      ms,
      passed,
      ...(passed ? {} : { message: message(error) }),
      reaches: [...new Set([...always, ...reached])],
    });
  }
  for (const body of after) await body();
  return { tests: told };
}

async function tryOne(bundle: string, mutant: number, names: readonly string[]): Promise<Report> {
  world.mutant = (id) => id === mutant;
  let tests: readonly Collected[];
  try {
    const file = await load(bundle);
    for (const body of file.before) await body();
    tests = file.tests;
  } catch (error) {
    collected();
    return { failed: { test: 'as it was loaded', message: message(error) } };
  }
  for (const name of names) {
    const test = tests.find((t) => t.name === name);
    if (!test) return { failed: { test: name, message: 'no longer declared' } };
    const error = await fault(test.body);
    if (error !== undefined) return { failed: { test: name, message: message(error) } };
  }
  return {};
}

async function fault(body: () => unknown): Promise<unknown> {
  try {
    await body();
    return undefined;
  } catch (error) {
    return error ?? new Error('threw nothing');
  }
}

process.on('message', ({ bundle, mutant, tests }: Task) => {
  const work = mutant === undefined ? lookAround(bundle) : tryOne(bundle, mutant, tests ?? []);
  work.then(
    (report) => process.send?.(report),
    (error) => process.send?.({ failed: { test: bundle, message: message(error) } } satisfies Report),
  );
});
