/**
 * Whether what a record says is plainly of its kind, told from the same schema without building anything: of many thousand records
 * nearly all are. Says never more than the schema: what this does not know it hands to it, and its *no* is only *not plainly*.
 */
import type * as z from 'zod/mini';
import { type Kind, kinds } from './fields.ts';

type Test = (value: unknown) => boolean;

/** As much of a schema as is read here. */
interface Known {
  readonly type: string;
  readonly checks?: readonly { readonly _zod: { readonly def: Check } }[];
  readonly shape?: Readonly<Record<string, z.ZodMiniType>>;
  readonly catchall?: z.ZodMiniType;
  readonly element?: z.ZodMiniType;
  readonly innerType?: z.ZodMiniType;
  readonly entries?: Readonly<Record<string, string>>;
}

interface Check {
  readonly check: string;
  readonly minimum?: number;
  readonly maximum?: number;
  readonly format?: string;
  readonly pattern?: RegExp;
}

const defOf = (schema: z.ZodMiniType): Known => schema._zod.def as unknown as Known;

/** Undefined: a check that is not known here. */
function checkTest({ check, minimum, maximum, format, pattern }: Check): Test | undefined {
  const length = (value: unknown): number => (value as string | readonly unknown[]).length;
  if (check === 'min_length' && minimum !== undefined) return (value) => length(value) >= minimum;
  if (check === 'max_length' && maximum !== undefined) return (value) => length(value) <= maximum;
  if (check === 'string_format' && format === 'regex' && pattern && !pattern.global && !pattern.sticky)
    return (value) => pattern.test(value as string);
  return undefined;
}

function testOf(schema: z.ZodMiniType): Test {
  const def = defOf(schema);
  const whole: Test = (value) => schema.safeParse(value).success;
  const checks = (def.checks ?? []).map(({ _zod }) => checkTest(_zod.def));
  const kind = kindTest(def);
  if (!kind || checks.includes(undefined)) return whole;
  if (checks.length === 0) return kind;
  const [only] = checks;
  if (checks.length === 1 && only) return (value) => kind(value) && only(value);
  return (value) => kind(value) && checks.every((test) => test?.(value) === true);
}

/** Undefined: a kind of value that is not known here. */
function kindTest(def: Known): Test | undefined {
  if (def.type === 'string') return (value) => typeof value === 'string';
  if (def.type === 'boolean') return (value) => typeof value === 'boolean';
  if (def.type === 'enum' && def.entries) {
    const of = new Set<unknown>(Object.values(def.entries));
    return (value) => of.has(value);
  }
  if (def.type === 'array' && def.element) {
    const row = testOf(def.element);
    return (value) => {
      if (!Array.isArray(value)) return false;
      for (const one of value) if (!row(one)) return false;
      return true;
    };
  }
  return def.type === 'object' && def.shape ? groupTest(def.shape, def.catchall) : undefined;
}

/** Undefined: a group that lets more in than its fields. */
function groupTest(
  shape: NonNullable<Known['shape']>,
  catchall: z.ZodMiniType | undefined,
): Test | undefined {
  if (!catchall || defOf(catchall).type !== 'never') return undefined;
  const fields = new Map<string, { readonly test: Test; readonly needed: number }>();
  let must = 0;
  for (const [name, schema] of Object.entries(shape)) {
    const { type, innerType } = defOf(schema);
    const optional = type === 'optional' ? innerType : undefined;
    const needed = optional ? 0 : 1;
    fields.set(name, { test: testOf(optional ?? schema), needed });
    must += needed;
  }
  return (value) => {
    if (typeof value !== 'object' || value === null || Array.isArray(value)) return false;
    let found = 0;
    for (const name in value) {
      const field = fields.get(name);
      if (!field?.test((value as Readonly<Record<string, unknown>>)[name])) return false;
      found += field.needed;
    }
    return found === must;
  };
}

const tests = new Map<Kind, Test>();

/** False: not plainly; the schema says what is amiss, if anything is. */
export function plainlyOf(kind: Kind, content: unknown): boolean {
  let test = tests.get(kind);
  if (!test) {
    test = testOf(kinds[kind]);
    tests.set(kind, test);
  }
  return test(content);
}
