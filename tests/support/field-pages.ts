/** A table of the fields of every kind of paper, made from their descriptions. */

import { defaultRows } from '../../data/index.ts';
import { kinds } from '../../engine/base/quantity.ts';
import { type FieldForm, fileForm, type NamedField } from '../../papers/fields.ts';
import { type FileKind, schemas } from '../../papers/schema/index.ts';
import { rangeWords } from '../../papers/schema/quantity.ts';
import { accepted } from '../../units/index.ts';
import { inWording } from '../../words/voice.ts';

export interface FieldAt {
  /** As `axleGroups[].wheelBase`. */
  readonly path: string;
  readonly field: NamedField;
}

/** Every field of a form, groups and lists opened, in the order of the paper. */
export function fieldsIn(form: FieldForm, at = ''): FieldAt[] {
  if (form.form === 'list') return fieldsIn(form.entry, `${at}[]`);
  if (form.form === 'oneOf') return form.groups.flatMap(({ tag, is }) => fieldsIn(is, `${at}(${tag})`));
  if (form.form !== 'group') return [];
  return form.fields.flatMap((field) => {
    const path = at === '' ? field.key : `${at}.${field.key}`;
    return [{ path, field }, ...fieldsIn(field.is, path)];
  });
}

/** Rows of the assumed values that stand in for a field: the key itself, or all that begin with it. */
export const assumedRows = (key: string) =>
  defaultRows.filter((row) => row.key === key || row.key.startsWith(`${key}/`));

function holds(is: FieldForm): string {
  switch (is.form) {
    case 'figure':
      return `${accepted(is.kind)}; ${rangeWords(is, 'imperial')}, ${rangeWords(is, 'metric')}`;
    case 'choice':
      return is.values.join(', ');
    case 'yes':
      return 'true or false';
    case 'list':
      if (is.entry.form === 'part') return `a list of papers, at most ${is.most}`;
      return is.most === undefined ? 'a list' : `a list of at most ${is.most}`;
    case 'part':
      return 'a paper';
    case 'text':
      return 'a text';
    default:
      return is.form === 'oneOf' ? is.groups.map((g) => g.tag).join(' or ') : 'a group';
  }
}

function leftOut({ about, optional }: NamedField): string {
  if (!optional) return 'must stand';
  const parts = [
    ...(about.assumed === undefined ? [] : [`assumed: ${assumedWords(about.assumed)}`]),
    ...(about.asked === undefined ? [] : ['asked for where it could forbid']),
  ];
  return parts.join('; ');
}

function assumedWords(key: string): string {
  const rows = assumedRows(key);
  if (rows.length !== 1) return `by \`${key}/…\``;
  const [{ value, low, high, unit }] = rows;
  const bounds = low === high ? '' : ` (${low} to ${high})`;
  return `${value}${unit === kinds.count ? '' : ` ${unit}`}${bounds}, \`${rows[0].key}\``;
}

const cell = (text: string): string => text.replace(/\|/g, '\\|');

export function fieldPages(): [string, string][] {
  return (Object.keys(schemas) as FileKind[]).map((kind) => {
    const rows = fieldsIn(fileForm(kind)).map(({ path, field }) =>
      [
        `\`${path}\``,
        `**${inWording(field.about.label, 'us')}**. ${inWording(field.about.help, 'us')}`,
        holds(field.is),
        leftOut(field),
      ]
        .map(cell)
        .join(' | '),
    );
    const text = [
      `# Fields of a ${kind}`,
      '',
      `Made by \`npm run fields\` from \`papers/${kind}/fields.ts\`. A figure out of its range is refused.`,
      '',
      '| field | what it is | what it holds | left out |',
      '|---|---|---|---|',
      ...rows.map((row) => `| ${row} |`),
      '',
    ].join('\n');
    return [`${kind}.md`, text];
  });
}
