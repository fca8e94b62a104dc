/** Changes made by chance: of text, and of what a JSON document is built of. */
import { seeded } from '../../engine/base/spread.ts';

export interface Chance {
  /** From 0 to below 1. */
  readonly share: () => number;
  /** From 0 to below `count`. */
  readonly index: (count: number) => number;
  readonly one: <T>(of: readonly T[]) => T;
}

export function chanceOf(seed: number): Chance {
  const share = seeded(seed);
  const index = (count: number): number => Math.floor(share() * count);
  return { share, index, one: (of) => of[index(of.length)] };
}

const odd = [
  'NaN',
  '1e308',
  '-1',
  '0',
  '""',
  'null',
  '\u0000',
  '\u001b[2J',
  '\u202e',
  '{',
  '}',
  '[',
  ']',
  '"',
  '\\',
  ',',
  ':',
  '<',
  '>',
  '&lol;',
  '<!--',
  ']]>',
  ';',
  '=',
  '#',
  '\r',
  '\n',
  '9'.repeat(400),
  '../',
  '/etc/passwd',
  '__proto__',
  '\ud800',
  'é',
  ' ft',
  ' km',
  '%',
  '%2e%2e/',
];

/** One to four places of a text changed: taken out, doubled, put in, swapped for something odd, cut off. */
export function changedText(text: string, chance: Chance): string {
  let now = text;
  for (let left = 1 + chance.index(4); left > 0; left--) {
    const at = chance.index(now.length + 1);
    const to = Math.min(now.length, at + 1 + chance.index(12));
    const part = now.slice(at, to);
    const put = chance.one([
      '',
      part + part,
      chance.one(odd),
      chance.one(odd) + part,
      part.toUpperCase(),
      String.fromCharCode(chance.index(256)),
    ]);
    now = chance.share() < 0.03 ? now.slice(0, at) : now.slice(0, at) + put + now.slice(to);
  }
  return now;
}

type Holder = Record<string | number, unknown>;

/** Every place of a document that holds a value. */
function places(json: unknown, found: { readonly in: Holder; readonly key: string | number }[] = []) {
  if (typeof json !== 'object' || json === null) return found;
  for (const key of Object.keys(json)) {
    const at = Array.isArray(json) ? Number(key) : key;
    found.push({ in: json as Holder, key: at });
    places((json as Holder)[at], found);
  }
  return found;
}

const oddValues: readonly unknown[] = [
  null,
  true,
  false,
  0,
  -1,
  1e308,
  5e-324,
  '',
  ' ',
  '0',
  '-0 ft',
  '1e308 km',
  '1e-300 lb',
  'Infinity ft',
  'NaN',
  '1e999 m',
  '0 psi',
  '-5 mph',
  [],
  {},
  [[]],
  { file: 'x.json' },
  { file: '../../etc/passwd' },
  { value: 1 },
  { value: 'x', unit: 'y' },
  { value: 3, unit: 'ft', low: 4, high: 2 },
  '\u001b[2J\u001b[31mGO',
  'x'.repeat(300),
  '2026-02-30',
  'forward',
  'steam',
  '100 %',
  '90°',
  'car1',
  { __proto__: null },
];

const gently = [0.5, 0.7, 0.9, 1.1, 1.3, 2];
const wildly = [-1, 0, 0.001, 0.1, 10, 1000, 1e9];

/** A figure with its unit, greater or smaller by much. */
const scaled = (text: string, chance: Chance, factors: readonly number[]): string =>
  text.replace(/-?\d+(\.\d+)?/, (figure) => String(Number(figure) * chance.one(factors)));

/** One to three parts of a document changed: left out, swapped, scaled, doubled, renamed, wrapped. The document itself is left alone. */
export function changedJson(document: unknown, chance: Chance): unknown {
  const json = structuredClone(document);
  for (let left = 1 + chance.index(3); left > 0; left--) {
    const all = places(json);
    if (all.length === 0) break;
    const { in: holder, key } = chance.one(all);
    const value = holder[key];
    const other = chance.one(all);
    // Figures a little otherwise are what a person gets wrong: they are read, and the answer must bear it.
    const change = chance.index(20);
    if (change === 0) {
      if (Array.isArray(holder)) holder.splice(Number(key), 1);
      else delete holder[key];
    } else if (change === 1) {
      // One of its own: what a later change puts into it, itself at the worst, must not be in the next document.
      holder[key] = structuredClone(chance.one(oddValues));
    } else if (change === 2 && typeof value === 'string') holder[key] = scaled(value, chance, wildly);
    else if (change > 7 && typeof value === 'string') holder[key] = scaled(value, chance, gently);
    else if (change > 7 && typeof value === 'number') holder[key] = value * chance.one(gently);
    else if (change > 7) continue;
    else if (change === 3 && typeof value === 'number')
      holder[key] = value * chance.one([-1, 0, 0.5, 2, 1e6]);
    else if (change === 4) holder[key] = structuredClone(other.in[other.key]);
    else if (change === 5 && Array.isArray(value))
      value.push(...structuredClone(value.slice(0, 1 + chance.index(60))));
    else if (change === 6 && !Array.isArray(holder)) {
      delete holder[key];
      holder[chance.one(['__proto__x', `${key}s`, 'value', 'file', 'constructor'])] = value;
    } else holder[key] = [value];
  }
  return json;
}
