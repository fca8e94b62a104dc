/** The accuracy page: rows as the tests measured them, laid out. Figures come from tests/support/measured.ts alone. */

export type Grade = 'A' | 'B' | 'C' | 'D';

/** What one test compared with one source of outside figures. */
export interface Outside {
  readonly topic: string;
  readonly source: string;
  readonly grade: Grade;
  /** Folder of the source under tests/truth. */
  readonly folder: string;
  readonly figures: readonly Figure[];
  /** Statements of the source between which ours lies. */
  readonly bounds: number;
}

export interface Figure {
  /** What it is, or the sum that gives it. */
  readonly what: string;
  readonly printed: number;
  readonly unit: string;
  /** |ours − printed|. */
  readonly error: number;
  /** Error ÷ what the source's print allows: at most 1 is good. */
  readonly used: number;
}

/** What one test compared with independent code. */
export interface Beside {
  readonly what: string;
  readonly against: string;
  /** One for each case: share of the figure, or in the unit. */
  readonly errors: readonly number[];
  readonly unit: string;
  /** Test file under tests, without its ending. */
  readonly test: string;
}

/** Cells of a line of a table; the last says where it is measured. */
export type Row = readonly string[];

const OUTSIDE = ['topic', 'source', 'grade', 'figures', 'bounds', 'worst error', 'used', 'worst at', 'where'];
const BESIDE = ['what', 'against', 'cases', 'median error', 'worst error', 'where'];
/** Cell of a row beside independent code that counts its cases. */
const CASES = 2;

/** Below this share of the figure an error is a rounding of the last bits, which differs between machines. */
const BITS = 1e-9;
/** A figure of nothing is compared with this. */
const LITTLE = 1e-3;

const withUnit = (error: number, unit: string): string => `${error.toPrecision(2)} ${unit}`.trim();

export function outsideRow({ topic, source, grade, folder, figures, bounds }: Outside): Row {
  const count = (n: number): string => (n === 0 ? '' : `${n}`);
  const head = [topic, source, grade, count(figures.length), count(bounds)];
  if (figures.length === 0) return [...head, '', '', '', folder];
  const worst = figures.reduce((a, b) =>
    b.used > a.used || (b.used === a.used && b.error > a.error) ? b : a,
  );
  const { error, unit, printed, used, what } = worst;
  return error <= BITS * Math.max(Math.abs(printed), LITTLE)
    ? [...head, 'none', '0 %', '', folder]
    : [
        ...head,
        withUnit(error, unit),
        `${(used * 100).toFixed(0)} %`,
        `${what}: ${Number(printed.toPrecision(6))} ${unit}`.trim(),
        folder,
      ];
}

export function besideRow({ what, against, errors, unit, test }: Beside): Row {
  const sorted = [...errors].sort((a, b) => a - b);
  const told = (error: number): string => (error < BITS ? 'below 1e-9' : withUnit(error, unit));
  const median = sorted[Math.floor((sorted.length - 1) / 2)];
  return [what, against, `${sorted.length}`, told(median), told(sorted[sorted.length - 1]), test];
}

const line = (cells: Row): string => `| ${cells.join(' | ')} |`;
const titles = (cells: Row): string => `${line(cells)}\n|${'---|'.repeat(cells.length)}`;

export function accuracyPage(rows: readonly Row[]): string {
  const sorted = [...rows].sort((a, b) => (line(a) < line(b) ? -1 : 1));
  const of = (columns: Row): string =>
    [titles(columns), ...sorted.filter((r) => r.length === columns.length).map(line)].join('\n');
  return `# Accuracy

Made by \`npm run accuracy\`: it runs the tests, which measure every figure below, and writes what they found. Each test then asks
that its own lines stand here as it measures them, where it tries as many cases.

## Against outside figures

Grade A: read in the primary text. B: read in a secondary page. C: from memory. D: exact law or own arithmetic.
"Bounds" are statements of a source that only bound ours from one side or both. "Used" is the share of what the source's
print allows (half the last digit, unless its SOURCE.md says why not). "None": not beyond the rounding of the machine.
Each line is measured by the test of its folder under \`tests/truth\`.

${of(OUTSIDE)}

## Against independent code

Random cases of fixed seeds, each reckoned twice; closed forms too. An error without a unit is a share of the figure.
Each line is measured by the test named, under \`tests\`.

${of(BESIDE)}
`;
}

/** The rows of a page. */
export const rowsOf = (page: string): Row[] =>
  page
    .split('\n')
    .filter((text) => text.startsWith('| '))
    .map((text) => text.slice(2, -2).split(' | '))
    .filter((cells) => cells[0] !== OUTSIDE[0] && cells[0] !== BESIDE[0]);

/** Names of a row, by which it is found again: all but what was measured. */
export const nameOf = (row: Row): string =>
  [...row.slice(0, row.length === OUTSIDE.length ? 3 : 2), row[row.length - 1]].join(' | ');

/** What is wrong with the page's row of this name; undefined where it says the same, or of another number of cases. */
export function outOfDate(row: Row, page: readonly Row[]): string | undefined {
  const kept = page.find((r) => nameOf(r) === nameOf(row));
  if (!kept) return `no line "${line(row)}"`;
  const otherTier = row.length === BESIDE.length && row[CASES] !== kept[CASES];
  return otherTier || line(kept) === line(row) ? undefined : `"${line(kept)}", measured "${line(row)}"`;
}
