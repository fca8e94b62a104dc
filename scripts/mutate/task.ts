/** What a process that tries mutants is asked, and what it says. */
export interface Named {
  readonly file: string;
  readonly name: string;
}

export type Task = { readonly bundle: string } & (
  | { readonly look: string }
  | { readonly mutant: number; readonly tests: readonly Named[]; readonly anew: boolean }
);

export interface Looked {
  readonly name: string;
  readonly ms: number;
  readonly passed: boolean;
  readonly message?: string;
  readonly reaches: readonly number[];
}

export interface Report {
  /** The first test that failed, with its message. */
  readonly failed?: { readonly test: string; readonly message: string };
  /** Without a mutant: what each test did, and what was come to as the file was loaded. */
  readonly tests?: readonly Looked[];
  readonly loading?: readonly number[];
}

/** Stands for the test where it was not the test that failed. */
export const WORKER = 'the worker';
