/** A table of words: what the screen, the terminal and paper show alike. */
export interface WordTable {
  readonly title: string;
  /** First column names the row. */
  readonly head: readonly string[];
  readonly rows: readonly (readonly string[])[];
  readonly note?: string;
}
