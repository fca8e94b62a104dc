/** The published JSON Schemas, made from the schemas that read the files. */
import * as z from 'zod';
import { type FileKind, schemas } from '../../papers/schema/index.ts';
import { fieldShapes } from '../../papers/schema/quantity.ts';

const part = (kind: FileKind): unknown => ({
  description: `a ${kind} file inline, or the path of one`,
  anyOf: [
    { $ref: `${kind}.json` },
    { type: 'object', required: ['file'], properties: { file: { type: 'string' } } },
  ],
});

const parts: Readonly<Record<string, FileKind>> = {
  line: 'line',
  train: 'train',
  host: 'host',
  vehicle: 'vehicle',
};

export function schemaTexts(): [string, string][] {
  return (Object.keys(schemas) as FileKind[]).map((kind) => {
    const schema = z.toJSONSchema(schemas[kind] as unknown as z.ZodType, {
      io: 'input',
      unrepresentable: 'any',
      override: ({ jsonSchema, path }) => {
        const shape = typeof jsonSchema.title === 'string' ? fieldShapes.get(jsonSchema.title) : undefined;
        if (shape) {
          delete jsonSchema.title;
          Object.assign(jsonSchema, shape);
        }
        const name = path[path.length - 1];
        if (Object.keys(jsonSchema).length === 0 && typeof name === 'string' && name in parts)
          Object.assign(jsonSchema, part(parts[name]));
      },
    });
    return [`${kind}.json`, `${JSON.stringify(schema, null, 1)}\n`];
  });
}
