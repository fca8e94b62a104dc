/**
 * What a file may hold, field by field, for a form to be made from: derived from the schemas that read the
 * files, so that no field can be in one and not in the other.
 */
import * as z from 'zod/mini';
import { type Kind, kinds } from '../engine/base/quantity.ts';
import { type FileKind, schemas } from './schema/index.ts';

export type FieldForm =
  /** `spread`: bounds, how it is known and its source count too. */
  | { readonly form: 'figure'; readonly kind: Kind; readonly spread: boolean }
  | { readonly form: 'choice'; readonly values: readonly (string | number)[] }
  | { readonly form: 'yes' }
  | { readonly form: 'text' }
  | { readonly form: 'list'; readonly entry: FieldForm; readonly least: number }
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
    readonly in?: Node;
    readonly entries?: Record<string, string>;
    readonly values?: readonly (string | number)[];
    readonly options?: readonly Node[];
    readonly discriminator?: string;
    readonly checks?: readonly { readonly _zod: { readonly def: { readonly minimum?: number } } }[];
  };
}

/** Kind of file and its version: written by the house, not by people. */
const ownHead: ReadonlySet<string> = new Set(['heedway', 'version']);

export function fileForm(kind: FileKind): GroupForm {
  return formOf(schemas[kind] as unknown as Node) as GroupForm;
}

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
          .map(([key, field]) => ({ key, optional: field.def.type === 'optional', is: formOf(field) })),
      };
    case 'array': {
      const least = def.checks?.find((c) => c._zod.def.minimum !== undefined)?._zod.def.minimum ?? 0;
      return { form: 'list', entry: formOf(def.element as Node), least };
    }
    case 'enum':
      return { form: 'choice', values: Object.values(def.entries ?? {}) };
    case 'boolean':
      return { form: 'yes' };
    case 'pipe':
      return figureOf(node);
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

/** A quantity keeps its spread; a figure is a quantity whose value alone is taken. */
function figureOf(node: Node): FieldForm {
  const spread = node.def.in?.def.type !== 'pipe';
  let at = node;
  while (at.def.type === 'pipe' && at.def.in) at = at.def.in;
  const title = z.globalRegistry.get(at as never)?.title ?? '';
  // An age is written in more ways than a figure of one kind.
  if (title === 'written-age') return { form: 'text' };
  const kind = title.replace(/^written-/, '');
  if (!(kind in kinds)) throw new RangeError(`a written field without a kind: ${title}`);
  return { form: 'figure', kind: kind as Kind, spread };
}
