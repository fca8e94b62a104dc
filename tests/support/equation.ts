/** Equations of sums, reckoned as they are printed: what the letters say is what the code does. */
import type { Sum } from '../../engine/base/sum.ts';
import { constants, type Letter, lettersOf } from '../../engine/sums/letters.ts';
import { parseQuantity } from '../../units/index.ts';

const functions = ['abs', 'sin', 'cos', 'tan', 'asin', 'acos', 'atan', 'ln', 'min', 'max'];

/** A letter with what hangs below or behind it: v₁, m₉₅. */
const WORD = /\p{L}+[₀-₉]*/gu;

/** Letters that stand in an equation. */
export const lettersIn = (equation: string): string[] => [
  ...new Set((equation.match(WORD) ?? []).filter((w) => w !== 'π' && !functions.includes(w))),
];

export const partsOf = (equation: string): string[] => equation.split(';  ');

/** SI → the unit in which the equation takes it. */
function inUnit(value: number, { unit, kind }: Letter): number {
  if (unit === undefined || kind === undefined) return value;
  const one = parseQuantity(`1 ${unit}`, kind);
  if (!one.ok) throw new Error(`${unit}: ${one.problem.message}`);
  return value / one.si;
}

/** What a printed expression is worth; undefined where it has a letter that is not known, or an integral. */
function worth(expression: string, known: ReadonlyMap<string, number>): number | undefined {
  if (lettersIn(expression).some((l) => !known.has(l))) return undefined;
  const code = expression
    .replaceAll(/\|([^|]+)\|/g, 'abs($1)')
    .replaceAll(WORD, (w) =>
      w === 'π' ? 'Math.PI' : functions.includes(w) ? `Math.${w === 'ln' ? 'log' : w}` : `(${known.get(w)})`,
    )
    .replaceAll('√', 'Math.sqrt')
    .replaceAll('½', '0.5')
    .replaceAll('²', '**2')
    .replaceAll('^', '**')
    .replaceAll('·', '*')
    .replaceAll('−', '-')
    .replaceAll('≤', '<=');
  return Number(new Function(`return ${code}`)());
}

export interface Checked {
  readonly part: string;
  readonly left: number;
  readonly right: number;
}

/** Each part of an equation whose letters are all known from the sum's own figures: both sides of it. */
export function checked(
  sum: Sum,
  inputs: Readonly<Record<string, number>>,
  results: Readonly<Record<string, number>>,
): Checked[] {
  const known = new Map<string, number>();
  for (const letter of lettersOf(sum)) {
    const value = { ...inputs, ...results }[letter.name] ?? constants[letter.name]?.value;
    if (value !== undefined) known.set(letter.letter, inUnit(value, letter));
  }
  const found: Checked[] = [];
  let waiting = partsOf(sum.equation);
  for (let before = Infinity; waiting.length < before; ) {
    before = waiting.length;
    waiting = waiting.filter((part) => {
      const [left, right] = part.split(' = ');
      const value = worth(right, known);
      if (value === undefined) return true;
      const other = worth(left, known);
      if (other === undefined) known.set(left, value);
      else found.push({ part, left: other, right: value });
      return other === undefined && !/^\p{L}+[₀-₉]*$/u.test(left);
    });
  }
  return found;
}
