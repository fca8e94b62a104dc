/** The mixed-integer program over patterns, as text in the LP format, and its solution read back. */
import type { Pattern, PatternTable } from './patterns.ts';
import type { Solve } from './types.ts';

/** One way to fill one car (or one of several alike), with what it costs. */
export interface Column {
  readonly name: string;
  /** Row of the car, or of the kind of car. */
  readonly carRow: number;
  readonly counts: readonly number[];
  readonly cost: number;
}

export interface Rows {
  /** How many cars each car row stands for. */
  readonly cars: readonly number[];
  /** How many units of each kind there are. */
  readonly units: readonly number[];
}

/** Chosen columns with their numbers; undefined: infeasible; 'failed': the solver gave up. */
export function choose(
  columns: readonly Column[],
  rows: Rows,
  solve: Solve,
): ReadonlyMap<string, number> | undefined | 'failed' {
  const served = rows.units.every((n, k) => n === 0 || columns.some((c) => c.counts[k] > 0));
  const everyCar = rows.cars.every((_, i) => columns.some((c) => c.carRow === i));
  if (!served || !everyCar) return undefined;
  const { status, values } = solve(programText(columns, rows));
  if (status === 'infeasible') return undefined;
  if (status !== 'optimal') return 'failed';
  return new Map([...values].flatMap(([name, x]) => (Math.round(x) > 0 ? [[name, Math.round(x)]] : [])));
}

function programText(columns: readonly Column[], rows: Rows): string {
  const cost = columns.filter((c) => c.cost !== 0).map((c) => `${signed(c.cost)} ${c.name}`);
  const carRows = rows.cars.map((n, i) => {
    const terms = columns.filter((c) => c.carRow === i).map((c) => `+ ${c.name}`);
    return `car${i}: ${wrap(terms)} = ${n}`;
  });
  const unitRows = rows.units.map((n, k) => {
    const terms = columns.filter((c) => c.counts[k] > 0).map((c) => `+ ${c.counts[k]} ${c.name}`);
    return `unit${k}: ${wrap(terms)} = ${n}`;
  });
  return [
    'Minimize',
    `cost: ${wrap(cost.length > 0 ? cost : [`0 ${columns[0].name}`])}`,
    'Subject To',
    ...carRows,
    ...unitRows,
    'General',
    wrap(columns.map((c) => c.name)),
    'End',
    '',
  ].join('\n');
}

const signed = (x: number): string => (x < 0 ? `- ${-x}` : `+ ${x}`);

/** Lines of the format must not grow without end. */
function wrap(terms: readonly string[]): string {
  const lines: string[] = [];
  for (let i = 0; i < terms.length; i += 12) lines.push(terms.slice(i, i + 12).join(' '));
  return lines.join('\n ');
}

/** Columns of all patterns that reach a margin, one row per kind of car. */
export const kindColumns = (
  table: PatternTable,
  least: number,
  cost: (pattern: Pattern) => number = () => 0,
): Column[] =>
  table.carKinds.flatMap(({ patterns }, i) =>
    patterns.flatMap((p, k) =>
      p.margin >= least ? [{ name: `x${i}_${k}`, carRow: i, counts: p.counts, cost: cost(p) }] : [],
    ),
  );
