/** What a schema is made of, as far as files need to know: fields, entries, and what an optional one wraps. */
export interface Definition {
  readonly def: {
    readonly shape?: Record<string, Definition>;
    readonly element?: Definition;
    readonly innerType?: Definition;
  };
}

export function inner(schema: Definition | undefined): Definition | undefined {
  let at = schema;
  while (at?.def.innerType) at = at.def.innerType;
  return at;
}
