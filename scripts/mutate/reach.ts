/** Which tests come to which mutant, and which of them are likeliest to notice it. */
import { basename, dirname } from 'node:path';
import type { Mutant } from './mutants.ts';
import type { Looked, Report } from './task.ts';

export interface Reaching {
  readonly file: string;
  readonly name: string;
  readonly ms: number;
}

export class Reach {
  readonly #byId = new Map<number, Reaching[]>();
  readonly #byFile = new Map<string, Reaching[]>();
  readonly #loading = new Set<number>();
  /** Files of tests that come into a file of the code while a test runs. */
  readonly #into = new Set<string>();
  /** How often a file of tests has noticed a change of a file of the code. */
  readonly #noticed = new Map<string, number>();
  readonly #mutants: ReadonlyMap<number, Mutant>;
  readonly #within: ReadonlyMap<string, ReadonlySet<string>>;
  count = 0;
  ms = 0;

  constructor(mutants: readonly Mutant[], within: ReadonlyMap<string, ReadonlySet<string>>) {
    this.#mutants = new Map(mutants.map((m) => [m.id, m]));
    this.#within = within;
  }

  /** Takes in what a file of tests did; gives those that fail by themselves. */
  add(file: string, { tests = [], loading = [] }: Report): readonly Looked[] {
    const passed = tests.filter((t) => t.passed);
    this.#byFile.set(
      file,
      passed.map(({ name, ms }) => ({ file, name, ms })),
    );
    for (const id of loading) this.#loading.add(id);
    for (const { name, ms, reaches } of passed) {
      this.count++;
      this.ms += ms;
      for (const id of reaches) this.#into.add(pair(this.#mutants.get(id)?.file ?? '', file));
      for (const id of [...reaches, ...loading.filter((l) => !reaches.includes(l))])
        this.#byId.set(id, [...(this.#byId.get(id) ?? []), { file, name, ms }]);
    }
    return tests.filter((t) => !t.passed);
  }

  /** What stands outside any function is decided for every test whose file has it in. */
  tests({ id, file, standing }: Mutant): readonly Reaching[] {
    if (!standing) return this.#byId.get(id) ?? [];
    return [...this.#byFile].flatMap(([test, list]) => (this.#within.get(test)?.has(file) ? list : []));
  }

  /** Decided, for some test, before it runs. */
  isLoading = ({ id, standing }: Mutant): boolean => standing === true || this.#loading.has(id);

  notice({ file }: Mutant, test: string): void {
    this.#noticed.set(pair(file, test), (this.#noticed.get(pair(file, test)) ?? 0) + 1);
  }

  /** A file that bears the room's name is most likely to notice, until it is known which files do. */
  likeliest({ file }: Mutant, test: Reaching): number {
    const known = this.#noticed.get(pair(file, test.file));
    if (known !== undefined) return known;
    const named = [basename(dirname(file)), basename(file, '.ts')].some((name) => test.file.includes(name));
    return (named ? 0.5 : 0) + (this.#into.has(pair(file, test.file)) ? 0.25 : 0);
  }
}

const pair = (code: string, test: string): string => `${code} ${test}`;
