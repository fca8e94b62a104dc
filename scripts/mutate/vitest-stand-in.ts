/**
 * Enough of the test runner to run one test by itself in a bundle: collects the tests that a file declares.
 * The matchers are the runner's own.
 */
import {
  ASYMMETRIC_MATCHERS_OBJECT,
  JestAsymmetricMatchers,
  JestChaiExpect,
  JestExtend,
} from '@vitest/expect';
import * as chai from 'chai';

type Body = () => unknown;

export interface Collected {
  readonly name: string;
  readonly body: Body;
}

interface Registry {
  tests: Collected[];
  before: Body[];
  after: Body[];
  path: string[];
}

const registry: Registry = { tests: [], before: [], after: [], path: [] };

/** What the file loaded last has declared; the next one starts from nothing. */
export function collected(): Pick<Registry, 'tests' | 'before' | 'after'> {
  const { tests, before, after } = registry;
  Object.assign(registry, { tests: [], before: [], after: [], path: [] });
  return { tests, before, after };
}

chai.use(JestExtend);
chai.use(JestChaiExpect);
chai.use(JestAsymmetricMatchers);

export const expect = Object.assign((value: unknown, message?: string) => chai.expect(value, message), {
  ...(globalThis as unknown as Record<symbol, object>)[ASYMMETRIC_MATCHERS_OBJECT],
  ...chai.expect,
});

/** With options or without: patience and the like are not needed here. */
export function it(name: string, ...rest: readonly (Body | object)[]): void {
  const body = rest.find((r) => typeof r === 'function') as Body;
  registry.tests.push({ name: [...registry.path, name].join(' › '), body });
}

export function describe(name: string, body: Body): void {
  registry.path.push(name);
  body();
  registry.path.pop();
}

it.runIf = (runs: unknown) => (runs ? it : none);
describe.runIf = (runs: unknown) => (runs ? describe : none);
describe.skipIf = (skips: unknown) => describe.runIf(!skips);
const none = (): void => {};

const each =
  (declare: (name: string, body: Body) => void) =>
  (rows: readonly unknown[]) =>
  (name: string, ...rest: readonly (((...args: unknown[]) => unknown) | object)[]): void => {
    rows.forEach((row, i) => {
      const args = Array.isArray(row) ? row : [row];
      const body = rest.find((r) => typeof r === 'function') as (...args: unknown[]) => unknown;
      declare(`${name} #${i + 1}`, () => body(...args));
    });
  };

it.each = each(it);
describe.each = each(describe);
export const beforeAll = (body: Body): void => void registry.before.push(body);
export const afterAll = (body: Body): void => void registry.after.push(body);
