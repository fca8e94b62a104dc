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

export function it(name: string, body: Body): void {
  registry.tests.push({ name: [...registry.path, name].join(' › '), body });
}

export function describe(name: string, body: Body): void {
  registry.path.push(name);
  body();
  registry.path.pop();
}

const each =
  (declare: (name: string, body: Body) => void) =>
  (rows: readonly unknown[]) =>
  (name: string, body: (...args: unknown[]) => unknown): void => {
    rows.forEach((row, i) => {
      const args = Array.isArray(row) ? row : [row];
      declare(`${name} #${i + 1}`, () => body(...args));
    });
  };

it.each = each(it);
describe.each = each(describe);
export const beforeAll = (body: Body): void => void registry.before.push(body);
export const afterAll = (body: Body): void => void registry.after.push(body);
