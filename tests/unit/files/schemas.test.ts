/** The published schemas are those that read the files, and a general validator accepts the examples by them. */
import { readdirSync, readFileSync } from 'node:fs';
import Ajv from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { schemaTexts } from '../../../scripts/pages/schemas.ts';

const root = new URL('../../../', import.meta.url).pathname;
const texts = schemaTexts();

describe('docs/schemas', () => {
  it.each(texts)('%s is what npm run schemas writes', (name, text) => {
    expect(readFileSync(`${root}docs/schemas/${name}`, 'utf8')).toBe(text);
  });

  // Each is compiled to be used once or twice: what makes it run quicker takes longer than it saves.
  const ajv = new Ajv({
    strict: false,
    validateFormats: false,
    inlineRefs: false,
    code: { optimize: false },
  });
  for (const [name, text] of texts) ajv.addSchema(JSON.parse(text), name);
  const examples = readdirSync(`${root}examples`, { recursive: true, encoding: 'utf8' }).filter((f) =>
    f.endsWith('.json'),
  );

  it.each(examples)('examples/%s is accepted by the schema of its kind', (file) => {
    const json = JSON.parse(readFileSync(`${root}examples/${file}`, 'utf8'));
    const valid = ajv.validate(`${json.heedway}.json`, json);
    expect(ajv.errorsText()).toBe('No errors');
    expect(valid).toBe(true);
  });
});
