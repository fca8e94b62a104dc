/**
 * What a file may hold, field by field, for a form or a table to be made from: derived from the schemas that
 * read the files and the words beside them, so that no field can be in one and not in the other.
 */
import { type About, aboutOf } from './describe.ts';
import { type FileKind, schemas } from './schema/index.ts';
import { type Written, writtenOf } from './schema/quantity.ts';

export type FieldForm =
  | ({ readonly form: 'figure' } & Written)
  | { readonly form: 'choice'; readonly values: readonly (string | number)[] }
  | { readonly form: 'yes' }
  | { readonly form: 'text' }
  | { readonly form: 'list'; readonly entry: FieldForm; readonly least: number; readonly most?: number }
  | { readonly form: 'group'; readonly fields: readonly NamedField[] }
  /** One of several groups, told apart by the field `by`. */
  | {
      readonly form: 'oneOf';
      readonly by: string;
      readonly groups: readonly { readonly tag: string; readonly is: FieldForm }[];
    }
  /** A part that is a file of its own. */
  | { readonly form: 'part' };

export interface NamedField {
  readonly key: string;
  readonly about: About;
  readonly optional: boolean;
  readonly is: FieldForm;
}

export type GroupForm = Extract<FieldForm, { form: 'group' }>;

interface Node {
  readonly def: {
    readonly type: string;
    readonly shape?: Record<string, Node>;
    readonly element?: Node;
    readonly innerType?: Node;
    readonly entries?: Record<string, string>;
    readonly values?: readonly (string | number)[];
    readonly options?: readonly Node[];
    readonly discriminator?: string;
    readonly checks?: readonly {
      readonly _zod: { readonly def: { readonly minimum?: number; readonly maximum?: number } };
    }[];
  };
}

/** Kind of file and its version: written by the house, not by people. */
const ownHead: ReadonlySet<string> = new Set(['heedway', 'version']);

/** Made once: a form never changes. */
const forms = new Map<FileKind, GroupForm>();

export function fileForm(kind: FileKind): GroupForm {
  const form = forms.get(kind) ?? (formOf(schemas[kind] as unknown as Node) as GroupForm);
  forms.set(kind, form);
  return form;
}

/** Of what is no file by itself, as what a record says. */
export const schemaForm = (schema: object): FieldForm => formOf(schema as Node);

function formOf(node: Node): FieldForm {
  const { def } = node;
  switch (def.type) {
    case 'optional':
      return formOf(def.innerType as Node);
    case 'object':
      return {
        form: 'group',
        fields: Object.entries(def.shape ?? {})
          .filter(([key, field]) => !ownHead.has(key) && !isTag(field))
          .map(([key, field]) => ({
            key,
            about: aboutOf(field) ?? { label: key, help: '' },
            optional: field.def.type === 'optional',
            is: formOf(field),
          })),
      };
    case 'array': {
      const bound = (which: 'minimum' | 'maximum'): number | undefined =>
        def.checks?.map((c) => c._zod.def[which]).find((n) => n !== undefined);
      const most = bound('maximum');
      return {
        form: 'list',
        entry: formOf(def.element as Node),
        least: bound('minimum') ?? 0,
        ...(most === undefined ? {} : { most }),
      };
    }
    case 'enum':
      return { form: 'choice', values: Object.values(def.entries ?? {}) };
    case 'boolean':
      return { form: 'yes' };
    case 'pipe': {
      // An age is written in more ways than a figure of one kind.
      const written = writtenOf(node);
      return written ? { form: 'figure', ...written } : { form: 'text' };
    }
    case 'union':
      return unionOf(def);
    case 'unknown':
      return { form: 'part' };
    default:
      return { form: 'text' };
  }
}

/** The word that tells the members of a union apart is chosen with the member. */
const isTag = (node: Node): boolean => node.def.type === 'literal';

function unionOf(def: Node['def']): FieldForm {
  const options = def.options ?? [];
  if (def.discriminator === undefined)
    return { form: 'choice', values: options.flatMap((o) => o.def.values ?? []) };
  const by = def.discriminator;
  const groups = options.map((o) => ({ tag: String(o.def.shape?.[by]?.def.values?.[0]), is: formOf(o) }));
  return { form: 'oneOf', by, groups };
}
