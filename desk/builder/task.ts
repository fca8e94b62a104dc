/** What a builder's question tells: sentences, the answer first, and tables; the same on the screen and in the terminal. */
import type { WordTable } from '../../words/table.ts';

export interface Task {
  readonly said: readonly string[];
  readonly tables: readonly WordTable[];
}

/** A field that cannot be read, by its name. */
export interface FieldProblem<Field extends string> {
  readonly field: Field;
  readonly message: string;
}
