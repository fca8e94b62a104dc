/** What data sheets of several clubs say together, a line for each thing that was measured. */
import type { Kind } from '../../engine/base/quantity.ts';
import { inWording, say, type Voice } from '../voice.ts';
import { type RunningRecord, recordWords } from './predicted.ts';
import { resultName } from './tests.ts';

export interface SheetFigure {
  /** Field of a paper. */
  readonly what: string;
  readonly unit: string;
  /** Such a brake, bearing or rail. */
  readonly of?: string;
  readonly values: number;
  readonly least: number;
  readonly middle: number;
  readonly greatest: number;
}

export interface SummedUp {
  readonly sheets: number;
  readonly tests: number;
  /** Rows that nobody measured. */
  readonly invented: number;
  readonly figures: readonly SheetFigure[];
  readonly record?: RunningRecord;
}

/** By its SI unit, where one is meant in this trade. */
const kindOf: Readonly<Record<string, Kind>> = {
  m: 'length',
  s: 'time',
  kg: 'mass',
  N: 'force',
  'N/N': 'specificForce',
  'm/s': 'speed',
  'm³/s': 'flow',
  'N/m': 'stiffness',
  '1': 'ratio',
};

const named = (what: string): string => resultName(what.split('.').at(-1) ?? what);

function figureWords(
  { what, unit, of, values, least, middle, greatest }: SheetFigure,
  shown: Pick<Voice, 'system'>,
): string {
  const kind = kindOf[unit];
  const told = (si: number): string =>
    kind ? say(shown, { si, kind }) : `${Number(si.toPrecision(3))} ${unit}`;
  const name = `${named(what)}${of === undefined ? '' : `, ${of.replace(/-/g, ' ')}`}`;
  if (values === 1) return `${name}: ${told(middle)}, once`;
  return told(least) === told(greatest)
    ? `${name}: ${told(middle)} (${values} values)`
    : `${name}: ${told(least)} to ${told(greatest)}, half below ${told(middle)} (${values} values)`;
}

export const sheetWords = (
  { sheets, tests, invented, figures, record }: SummedUp,
  shown: Pick<Voice, 'system' | 'wording'>,
): string[] =>
  [
    `${sheets === 1 ? 'One sheet' : `${sheets} sheets`}, ${tests === 1 ? 'one test' : `${tests} tests`}.${invented > 0 ? ` ${invented} ${invented === 1 ? 'row is' : 'rows are'} invented: nobody measured them.` : ''}`,
    ...figures.map((one) => capital(figureWords(one, shown))),
    ...(record ? recordWords(record) : []),
  ].map((line) => inWording(line, shown.wording));

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
