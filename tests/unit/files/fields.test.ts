/** Forms made from the schemas hold every field of every file, with the kind by which it is read. */
import { describe, expect, it } from 'vitest';
import { type FieldForm, fileForm } from '../../../papers/fields.ts';
import { type FileKind, schemas } from '../../../papers/schema/index.ts';
import { schemaTexts } from '../../../scripts/pages/schemas.ts';

const published = new Map(schemaTexts());
const kindsOfFile = Object.keys(schemas) as FileKind[];

interface Published {
  readonly properties?: Record<string, Published>;
  readonly required?: readonly string[];
  readonly items?: Published;
  readonly oneOf?: readonly Published[];
  readonly anyOf?: readonly Published[];
  readonly enum?: readonly unknown[];
  readonly description?: string;
}

/** Fields of the published schema and of the form, side by side. */
function compare(form: FieldForm, json: Published, at: string): string[] {
  if (form.form === 'group') {
    const keys = Object.keys(json.properties ?? {}).filter((k) => !(k === 'heedway' || k === 'version'));
    const tag = (json.oneOf ?? []).length === 0 ? [] : ['kind'];
    const mine = form.fields.map((f) => f.key);
    const lacking = keys.filter(
      (k) => !mine.includes(k) && !tag.includes(k) && !isConst(json.properties?.[k]),
    );
    const odd = form.fields
      .filter((f) => f.optional === (json.required ?? []).includes(f.key) && f.is.form !== 'part')
      .map((f) => `${at}.${f.key} optional ${f.optional}`);
    return [
      ...lacking.map((k) => `${at}.${k} is missing`),
      ...odd,
      ...form.fields.flatMap((f) => compare(f.is, json.properties?.[f.key] ?? {}, `${at}.${f.key}`)),
    ];
  }
  if (form.form === 'list') return compare(form.entry, json.items ?? {}, `${at}[]`);
  if (form.form === 'figure')
    return /such as/.test(json.description ?? '') ? [] : [`${at} is no written figure`];
  if (form.form === 'oneOf')
    return form.groups.flatMap((g, i) =>
      compare(g.is, (json.oneOf ?? json.anyOf ?? [])[i] ?? {}, `${at}(${g.tag})`),
    );
  return [];
}

const isConst = (json: Published | undefined): boolean => json !== undefined && 'const' in json;

describe('the form of a file', () => {
  it.each(kindsOfFile)('has the fields of the published schema: %s', (kind) => {
    const json = JSON.parse(published.get(`${kind}.json`) ?? '{}') as Published;
    expect(Object.keys(json.properties ?? {}).length).toBeGreaterThan(3);
    expect(compare(fileForm(kind), json, kind)).toEqual([]);
  });

  it('knows kinds, choices and spread', () => {
    const vehicle = fileForm('vehicle');
    const field = (key: string): FieldForm | undefined => vehicle.fields.find((f) => f.key === key)?.is;
    expect(field('tare')).toMatchObject({ form: 'figure', kind: 'mass', spread: true });
    expect(field('length')).toMatchObject({ form: 'figure', kind: 'length', spread: false });
    expect(field('bearing')).toEqual({ form: 'choice', values: ['ball', 'roller', 'plain'] });
    expect(field('heedway')).toBeUndefined();
  });
});
