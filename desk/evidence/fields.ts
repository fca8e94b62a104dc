/** Any paper or record, field by field, by the words of its description; what no description knows by its own names. */
import type { FieldForm } from '../../papers/fields.ts';
import { nameIn } from '../../records/names.ts';
import type { Named } from '../../records/store.ts';
import { fieldLabel } from '../../words/field.ts';
import { shortHash } from '../../words/records/record.ts';
import type { Wording } from '../../words/voice.ts';
import type { FieldRow } from './blocks.ts';

export interface Reading {
  readonly wording: Wording;
  /** Names that may be told; none: persons are told apart by their reference. */
  readonly names: readonly Named[];
  /** Hashes that are persons. */
  readonly persons: ReadonlySet<string>;
}

type Json = Readonly<Record<string, unknown>>;

const isGroup = (value: unknown): value is Json =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

const HASH = /^[0-9a-f]{64}$/;

/** @param form undefined where nothing describes it @param apart keys that are shown elsewhere */
export function fieldRows(
  json: Json,
  form: FieldForm | undefined,
  reading: Reading,
  apart: readonly string[] = [],
  depth = 0,
): FieldRow[] {
  const fields = fieldsOf(form, json);
  // As they are described, what it is before where it was; a record's text has them by the alphabet.
  const places = new Map(fields?.map(({ key }, i) => [key, i]));
  const placeOf = (key: string): number => places.get(key) ?? places.size;
  return Object.entries(json)
    .sort(([a], [b]) => placeOf(a) - placeOf(b))
    .filter(([key]) => !apart.includes(key) && key !== 'heedway' && key !== 'version')
    .flatMap(([key, value]) => {
      const field = fields?.find((f) => f.key === key);
      const label = field ? fieldLabel(field.about, reading.wording) : key;
      return rowsOf(label, value, field?.is, reading, depth);
    });
}

function fieldsOf(form: FieldForm | undefined, json: Json) {
  if (form?.form === 'group') return form.fields;
  if (form?.form !== 'oneOf') return undefined;
  const group = form.groups.find(({ tag }) => tag === `${json[form.by]}`)?.is;
  return group?.form === 'group' ? group.fields : undefined;
}

function rowsOf(
  label: string,
  value: unknown,
  form: FieldForm | undefined,
  reading: Reading,
  depth: number,
): FieldRow[] {
  const line = simple(value, form, reading);
  if (line !== undefined) return line === '' ? [] : [{ label, value: line, depth }];
  if (Array.isArray(value)) {
    const entry = form?.form === 'list' ? form.entry : undefined;
    return value.flatMap((one, i) => rowsOf(`${label} ${i + 1}`, one, entry, reading, depth));
  }
  const group = value as Json;
  if ('heedway' in group)
    return [
      { label, value: `${inLine(group['heedway'])}: ${inLine(group['name'] ?? 'its own paper')}`, depth },
    ];
  return [{ label, value: '', depth }, ...fieldRows(group, form, reading, [], depth + 1)];
}

/** In one line; undefined: it takes more. */
function simple(value: unknown, form: FieldForm | undefined, reading: Reading): string | undefined {
  if (value === null || value === undefined) return '';
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'string') return named(value, reading);
  if (typeof value === 'number') return `${value}`;
  if (Array.isArray(value)) {
    const lines = value.map((one) =>
      isGroup(one) || Array.isArray(one) ? undefined : simple(one, form, reading),
    );
    return lines.every((one) => one !== undefined) ? lines.join(', ') : undefined;
  }
  return isGroup(value) && 'value' in value ? figure(value) : undefined;
}

const named = (value: string, { names, persons }: Reading): string => {
  if (!HASH.test(value)) return value;
  return persons.has(value) ? nameIn(names, value) : `${shortHash(value)}…`;
};

/** "12 lb (measured, 11.5 lb to 12.4 lb, source: scale 3)" */
function figure({ value, ...rest }: Json): string {
  const { low, high, how, source, date, unit, ...other } = rest;
  const between = low !== undefined && high !== undefined ? `${inLine(low)} to ${inLine(high)}` : '';
  const more = Object.entries(other).map(([key, one]) =>
    isGroup(one) || Array.isArray(one) ? '' : `${key} ${one}`,
  );
  const from = source === undefined ? '' : `source: ${inLine(source)}`;
  const told = [how, between, date, from, ...more].flatMap((part) =>
    part === undefined || part === '' ? [] : inLine(part),
  );
  const plain = `${inLine(value)}${unit === undefined ? '' : ` ${inLine(unit)}`}`;
  return told.length === 0 ? plain : `${plain} (${told.join(', ')})`;
}

/** What another program wrote where a word or a number belongs is shown as it stands. */
const inLine = (value: unknown): string =>
  typeof value === 'object' && value !== null ? JSON.stringify(value) : `${value}`;
