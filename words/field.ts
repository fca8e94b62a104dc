/** What the fields of papers are called, and what is to be measured where one is missing. */
import type { About } from '../papers/describe.ts';
import { type FieldForm, fileForm, type NamedField } from '../papers/fields.ts';
import { type FileKind, schemas } from '../papers/schema/index.ts';
import { rangeWords } from '../papers/schema/quantity.ts';
import { accepted, type System } from '../units/index.ts';
import { inWording, type Wording } from './voice.ts';

export const fieldLabel = ({ label }: About, wording: Wording): string => inWording(label, wording);

/** What a figure is, how it is written, between which bounds it is expected, and what silence means. */
export function fieldHelp(about: About, is: FieldForm, system: System, wording: Wording): string {
  const value = is.form === 'group' ? is.fields.find((f) => f.key === 'value')?.is : is;
  return [
    inWording(about.help, wording),
    ...(value?.form === 'figure' ? [`Write ${accepted(value.kind)}, ${rangeWords(value, system)}.`] : []),
    ...(about.assumed === undefined ? [] : ['Left out, a usual figure stands in, and the answer says so.']),
  ].join(' ');
}

/** Findings name both ends of a vehicle at once, and riders without their paper. */
const beginnings: Readonly<Record<string, string>> = { coupling: 'vehicle.front', riders: 'outing.riders' };

/** The path of a paper's own field, where a finding's names it otherwise. */
export function fieldPath(path: string): readonly string[] {
  const first = path.split('.')[0];
  return path.replace(first, beginnings[first] ?? first).split('.');
}

export interface FieldAt {
  readonly about: About;
  readonly is: FieldForm;
}

/**
 * A field by a path such as `vehicle.brakes.air-1.force`; the name of one of several, as `air-1`, may stand in it.
 */
export function fieldAt(path: string): FieldAt | undefined {
  const [paper, ...keys] = fieldPath(path);
  if (!(paper in schemas)) return undefined;
  let at: FieldForm = fileForm(paper as FileKind);
  let about: About | undefined;
  for (const key of keys) {
    const field: NamedField | undefined = fieldsOf(at).find((f) => f.key === key);
    if (!field && at.form !== 'list') return undefined;
    about = field?.about ?? about;
    at = field?.is ?? (at as Extract<FieldForm, { form: 'list' }>).entry;
  }
  return about && { about, is: at };
}

export const describedAt = (path: string): About | undefined => fieldAt(path)?.about;

function fieldsOf(form: FieldForm): readonly NamedField[] {
  if (form.form === 'group') return form.fields;
  if (form.form === 'list') return fieldsOf(form.entry);
  return form.form === 'oneOf' ? form.groups.flatMap(({ is }) => fieldsOf(is)) : [];
}

/** "how far one corner can be lifted before the opposite wheel lifts (twist freedom)" */
export function tellMeasure(path: string, wording: Wording): string {
  const about = describedAt(path);
  if (!about) return path;
  const label = fieldLabel(about, wording);
  return about.asked === undefined ? label : `${inWording(about.asked, wording)} (${label})`;
}
