/** What every test's record has. */
export interface Recorded {
  /** Name of the record: the source of what it gives. */
  readonly source: string;
  readonly date?: string;
}
