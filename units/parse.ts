/**
 * Reading what people write: numbers with fractions, feet and inches, tons and hundredweight, grades.
 * Nothing is guessed: what can be read in two ways is a problem that says what to write instead.
 */
import type { Kind } from '../engine/base/quantity.ts';
import { ambiguous, chainsOfUnits, findUnit, type Unit, unitsByKind } from './factors.ts';

export interface UnitProblem {
  readonly field: string;
  readonly found: string;
  readonly expected: string;
  readonly message: string;
}

export type Parsed =
  | { readonly ok: true; readonly si: number; readonly unit: string }
  | { readonly ok: false; readonly problem: UnitProblem };

const examples: Readonly<Record<Kind, string>> = {
  length: '12 ft 6 in, 4-7/16 in, 1.2 m',
  area: '3 in², 20 cm²',
  volume: '2 l, 120 in³',
  speed: '7 mph, 10 km/h',
  acceleration: '0.8 m/s²',
  time: '1.5 s',
  mass: '600 lb, 85 kg, 3 t 2 cwt, 12 st 4 lb',
  force: '60 lbf, 250 N',
  pressure: '1013 hPa, 29.9 inHg, 14.7 psia',
  gaugePressure: '60 psi, 4 bar',
  vacuum: '20 inHg, 60 kPa',
  grade: '1 in 80, 2 %, -2.6 %, level',
  angle: '8°, 0.14 rad',
  curvature: 'R 48 ft, 12° curve, 0.05 1/m, straight',
  ratio: '0.25, 25 %, 1 : 4',
  count: '4',
  specificForce: '8 N/kN, 20 lb/long ton, 16 lb/short ton',
  energy: '500 J, 300 ft·lbf',
  power: '500 W, 1 hp',
  stiffness: '20 kN/m, 100 lbf/in',
  flow: '4 cfm, 2 l/s',
  temperature: '20 °C, 70 °F',
  stress: '60 MPa',
  twist: '4 mm/m, 1 in 250',
  momentum: '50 N·s',
  moment: '40 N·m, 30 lbf·ft',
};

const names: Readonly<Record<Kind, string>> = {
  length: 'a length',
  area: 'an area',
  volume: 'a volume',
  speed: 'a speed',
  acceleration: 'an acceleration',
  time: 'a time',
  mass: 'a mass',
  force: 'a force',
  pressure: 'an absolute pressure',
  gaugePressure: 'a pressure',
  vacuum: 'a vacuum',
  grade: 'a grade',
  angle: 'an angle',
  curvature: 'a curvature',
  ratio: 'a plain number or share',
  count: 'a whole number',
  specificForce: 'a force per weight',
  energy: 'an energy',
  power: 'a power',
  stiffness: 'a stiffness',
  flow: 'a flow of air',
  temperature: 'a temperature',
  stress: 'a stress',
  twist: 'a twist',
  momentum: 'a momentum',
  moment: 'a moment',
};

/** What is accepted for a kind, in words, for messages and help. */
export const accepted = (kind: Kind): string => `${names[kind]} such as ${examples[kind]}`;

/** Spellings accepted for a kind. */
export const unitsOf = (kind: Kind): string[] => unitsByKind[kind].map((u) => u.name);

const SHOWN = 60;
const shorten = (text: string): string => (text.length > SHOWN ? `${text.slice(0, SHOWN)}…` : text);

function fail(field: string, found: string, expected: string): Parsed {
  const where = field === '' ? '' : `${field}: `;
  return {
    ok: false,
    problem: { field, found, expected, message: `${where}found ${found}; expected ${expected}` },
  };
}

const unicodeFractions: Readonly<Record<string, string>> = {
  '¼': '1/4',
  '½': '1/2',
  '¾': '3/4',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
  '⅓': '1/3',
  '⅔': '2/3',
  '⅙': '1/6',
  '⅚': '5/6',
};

/** One spelling for signs, fractions and spaces. */
function tidy(text: string): string {
  return text
    .replace(/[¼½¾⅛⅜⅝⅞⅓⅔⅙⅚]/g, (c) => ` ${unicodeFractions[c]}`)
    .replace(/⁄/g, '/')
    .replace(/[−‒–]/g, '-')
    .replace(/\s+/g, ' ')
    .trim();
}

/**
 * Read a text as a quantity of a kind, to SI.
 *
 * @param field named in the problem
 */
export function parseQuantity(text: string, kind: Kind, field = ''): Parsed {
  const found = text.trim() === '' ? 'an empty text' : `"${shorten(text)}"`;
  const clean = tidy(text);
  if (clean === '') return fail(field, found, accepted(kind));
  if (text.length > 200) return fail(field, found, accepted(kind));
  const special = specialForm(clean, kind);
  if (special !== undefined) {
    return Number.isFinite(special)
      ? { ok: true, si: special, unit: kind }
      : fail(field, found, accepted(kind));
  }
  if (/\d,\d/.test(clean)) {
    return fail(
      field,
      found,
      `${accepted(kind)}; write a decimal with a point and thousands without a comma`,
    );
  }
  const terms = readTerms(clean);
  if (terms === undefined) return fail(field, found, accepted(kind));
  return combine(terms, kind, field, found);
}

/** Forms that are not "number unit": grades 1 in 80, ratios 1 : 4, radii, plain numbers. */
function specialForm(text: string, kind: Kind): number | undefined {
  const slope = /^([+-]?)\s*([\d.]+)\s*(?:in|:)\s*([\d.]+)$/.exec(text);
  if ((kind === 'grade' || kind === 'twist') && slope) {
    return ((slope[1] === '-' ? -1 : 1) * Number(slope[2])) / Number(slope[3]);
  }
  if (kind === 'grade' && /^level$/i.test(text)) return 0;
  if (kind === 'ratio') {
    const share = /^([\d.]+)\s*:\s*([\d.]+)$/.exec(text);
    if (share) return Number(share[1]) / Number(share[2]);
    if (isNumber(text)) return Number(text);
    const fraction = /^(\d+)\/(\d+)$/.exec(text);
    if (fraction) return Number(fraction[1]) / Number(fraction[2]);
  }
  if (kind === 'count' && /^\d+$/.test(text)) return Number(text);
  if (kind === 'curvature') return curvatureForm(text);
  return undefined;
}

function curvatureForm(text: string): number | undefined {
  if (/^straight$/i.test(text)) return 0;
  const degree = /^([\d.]+)\s*(?:°|deg|degrees?)\s*(?:of\s+)?curve$/i.exec(text);
  if (degree) return (2 * Math.sin((Number(degree[1]) * Math.PI) / 360)) / 30.48;
  const radius = /^R\s*(.+)$/i.exec(text) ?? /^(.+?)\s+radius$/i.exec(text);
  if (!radius) return undefined;
  const length = parseQuantity(radius[1], 'length');
  return length.ok ? 1 / length.si : Number.NaN;
}

const isNumber = (text: string): boolean => /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i.test(text);

interface Term {
  readonly value: number;
  readonly unit: string;
}

/** "12 ft 6-1/2 in" → [12 ft] [6.5 in]. A sign stands only in front of the whole. */
function readTerms(text: string): Term[] | undefined {
  const terms: Term[] = [];
  const negative = text.startsWith('-');
  let rest = text.replace(/^[+-]\s*/, '');
  while (rest !== '') {
    const read = readNumber(rest);
    if (!read) return undefined;
    rest = read.rest;
    // A unit runs up to the next figure that begins a new term: m², lb/in² and 1/m keep their digits.
    const unit =
      /^\s*(\D*?(?:\/\s*\D+?)?)(?=\s*-?\s*\d|$)/
        .exec(rest)?.[1]
        .trim()
        .replace(/[-\s]+$/, '') ?? '';
    const whole = wholeUnit(rest, unit);
    rest = rest.slice(rest.indexOf(whole) + whole.length).replace(/^[\s-]+/, '');
    terms.push({ value: negative ? -read.value : read.value, unit: whole });
  }
  return terms.length > 0 ? terms : undefined;
}

/** Units that contain digits or stand for a reciprocal are taken whole. */
function wholeUnit(rest: string, unit: string): string {
  const digits =
    /^\s*(m\/s2|ft\/s2|m2|cm2|mm2|in2|ft2|m3\/[sh]|m3|cm3|in3|ft3\/min|ft3|1\/m|1\/ft)(?![\w])/i.exec(rest);
  return digits ? digits[1] : unit;
}

function readNumber(text: string): { value: number; rest: string } | undefined {
  // 6-1/2, 6 1/2
  const mixed = /^(\d+)(?:\s*-\s*|\s+)(\d+)\/(\d+)(?![\d.])/.exec(text);
  if (mixed) return fractionOf(text, mixed[0], Number(mixed[1]), mixed[2], mixed[3]);
  const fraction = /^(\d+)\/(\d+)(?![\d.])/.exec(text);
  if (fraction) return fractionOf(text, fraction[0], 0, fraction[1], fraction[2]);
  const plain = /^(\d+\.?\d*|\.\d+)(e[+-]?\d+)?(?![\d.])/i.exec(text);
  if (!plain) return undefined;
  const value = Number(plain[0]);
  return Number.isFinite(value) ? { value, rest: text.slice(plain[0].length) } : undefined;
}

function fractionOf(text: string, all: string, whole: number, over: string, under: string) {
  return Number(under) === 0
    ? undefined
    : { value: whole + Number(over) / Number(under), rest: text.slice(all.length) };
}

function combine(terms: readonly Term[], kind: Kind, field: string, found: string): Parsed {
  const tons = kind === 'mass' && terms.length > 1 && /^(t|tons?)$/i.test(terms[0].unit);
  const named = tons ? [{ ...terms[0], unit: 'long ton' }, ...terms.slice(1)] : terms;
  const units: Unit[] = [];
  for (const { unit } of named) {
    const known = findUnit(kind, unit);
    if (!known) return fail(field, found, unknownUnit(unit, kind));
    units.push(known);
  }
  const total = named.reduce((sum, t, i) => sum + t.value * units[i].factor, 0) + (units[0].offset ?? 0);
  if (named.length > 1 && !follows(units, named, kind)) return fail(field, found, accepted(kind));
  // 1e308 is a number; 1e308 km is none in metres.
  if (!Number.isFinite(total)) return fail(field, found, accepted(kind));
  return { ok: true, si: total, unit: units[0].name };
}

/** Units of a compound figure must fall, in one family, and only the last may carry a fraction or exceed its place. */
function follows(units: readonly Unit[], terms: readonly Term[], kind: Kind): boolean {
  const family = chainsOfUnits[kind]?.find((chain) => units.every((u) => chain.includes(u.name)));
  if (!family) return false;
  for (let i = 1; i < units.length; i++) {
    if (family.indexOf(units[i].name) <= family.indexOf(units[i - 1].name)) return false;
    if (!Number.isInteger(terms[i - 1].value)) return false;
    if (Math.abs(terms[i].value) * units[i].factor >= units[i - 1].factor) return false;
  }
  return true;
}

function unknownUnit(unit: string, kind: Kind): string {
  const instead = ambiguous[kind] ?? {};
  if (Object.hasOwn(instead, unit.toLowerCase())) return instead[unit.toLowerCase()];
  if (unit === '') return `${accepted(kind)}, with its unit`;
  const other = (Object.keys(unitsByKind) as Kind[]).find((k) => findUnit(k, unit) !== undefined);
  const is = other
    ? `; "${unit}" is a unit of ${names[other].replace(/^an? /, '')}`
    : `; the unit "${shorten(unit)}" is not known`;
  return `${accepted(kind)}${is}`;
}
