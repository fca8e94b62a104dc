/** The published JSON Schemas, made from the schemas that read the files. */
import * as z from 'zod';
import { aboutOf } from '../../papers/describe.ts';
import { type FileKind, schemas } from '../../papers/schema/index.ts';
import { rangeWords, type Written, writtenOf } from '../../papers/schema/quantity.ts';
import { accepted } from '../../units/index.ts';
import { inWording } from '../../words/voice.ts';

const part = (kind: FileKind): Record<string, unknown> => ({
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
  outing: 'outing',
};

/** A quantity as people write it. */
const shapeOf = ({ kind }: Written): Record<string, unknown> => ({
  anyOf: [
    ...(kind === 'ratio' || kind === 'count' ? ['string', 'number'] : ['string']).map((type) => ({ type })),
    {
      type: 'object',
      required: ['value'],
      additionalProperties: false,
      properties: {
        value: { type: ['number', 'string'] },
        unit: { type: 'string' },
        low: { type: ['number', 'string'] },
        high: { type: ['number', 'string'] },
        how: { enum: ['measured', 'stated', 'assumed'] },
        source: { type: 'string' },
        date: { type: 'string', pattern: '^\\d{4}-\\d\\d-\\d\\d$' },
        fit: {
          description: 'Of figures that one test told together, written by the test: leave it as it is.',
          type: 'object',
          properties: {
            id: { type: 'string' },
            factors: { type: 'array', items: { type: 'number', minimum: -1, maximum: 1 }, minItems: 1 },
          },
          required: ['id', 'factors'],
          additionalProperties: false,
        },
      },
    },
  ],
});

/** The schema that an optional one wraps. */
const within = (schema: z.core.$ZodType): z.core.$ZodType => {
  const { def } = schema._zod;
  return def.type === 'optional' ? within((def as z.core.$ZodOptionalDef).innerType) : schema;
};

function tell(schema: z.core.$ZodType, json: Record<string, unknown>, name: unknown): void {
  const about = aboutOf(schema);
  const written = writtenOf(within(schema));
  if (written) Object.assign(json, shapeOf(written));
  const asWritten = written ? [`${accepted(written.kind)}, ${rangeWords(written, 'metric')}`] : [];
  if (!about) {
    // A figure of a list is described with the list.
    if (written && name === 'items') json['description'] = `Written as ${asWritten[0]}`;
    return;
  }
  json['title'] = inWording(about.label, 'us');
  json['description'] = [inWording(about.help, 'us'), ...asWritten].join(' Written as ');
}

export function schemaTexts(): [string, string][] {
  return (Object.keys(schemas) as FileKind[]).map((kind) => {
    const schema = z.toJSONSchema(schemas[kind] as unknown as z.ZodType, {
      io: 'input',
      unrepresentable: 'any',
      override: ({ zodSchema, jsonSchema, path }) => {
        const name = path[path.length - 1];
        if (Object.keys(jsonSchema).length === 0 && typeof name === 'string' && name in parts)
          Object.assign(jsonSchema, part(parts[name]));
        tell(zodSchema, jsonSchema as Record<string, unknown>, name);
      },
    });
    return [`${kind}.json`, `${JSON.stringify(schema, null, 1)}\n`];
  });
}
