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

/** Where neither the day nor the host names a speed. */
export const unstatedSpeed = (speed: string): string =>
  `Nobody has said how fast this outing runs: ${speed} is the highest that is looked at. Write the speed to ask for another.`;
