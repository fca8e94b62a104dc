/** What an evidence pack is made of, before it is laid out on any paper. */

export type Block =
  | { readonly is: 'heading'; readonly text: string }
  | { readonly is: 'text'; readonly text: string; readonly strong?: true }
  | { readonly is: 'list'; readonly lines: readonly string[] }
  /** As typed, to be copied. */
  | { readonly is: 'typed'; readonly lines: readonly string[] }
  | { readonly is: 'table'; readonly head: readonly string[]; readonly rows: readonly (readonly string[])[] }
  | { readonly is: 'pictures'; readonly pictures: readonly Picture[] }
  /** Label and value; deeper ones belong to the one above. */
  | { readonly is: 'fields'; readonly rows: readonly FieldRow[] };

export interface Picture {
  /** Base64. */
  readonly jpeg: string;
  readonly words: string;
}

export interface FieldRow {
  readonly label: string;
  readonly value: string;
  readonly depth: number;
}

export interface Section {
  readonly title: string;
  readonly blocks: readonly Block[];
}

export const text = (words: string): Block => ({ is: 'text', text: words });
export const strong = (words: string): Block => ({ is: 'text', text: words, strong: true });
export const heading = (words: string): Block => ({ is: 'heading', text: words });
export const list = (lines: readonly string[]): Block[] =>
  lines.length === 0 ? [] : [{ is: 'list', lines }];

/** A table of nothing says so. */
export const tableOf = (
  head: readonly string[],
  rows: readonly (readonly string[])[],
  none: string,
): Block => (rows.length === 0 ? text(none) : { is: 'table', head, rows });
