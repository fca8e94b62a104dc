/** A file brought to a test: its record, or readings from a CSV into the one that is being written. */
import type { TestKind } from '../../../engine/calibrate/tests/index.ts';
import { tellProblem } from '../../../papers/index.ts';
import { testNames } from '../../../words/measured/tests.ts';
import type { Json } from '../../state/session.ts';

export type Brought = { readonly record: Json } | { readonly fault: string };

/** @param record as it stands when the file has been read: somebody may have written on meanwhile */
export async function broughtIn(file: File, kind: TestKind, record: () => Json): Promise<Brought> {
  if (!/\.json$/i.test(file.name)) {
    const { importReadings } = await import('../../../papers/import/readings.ts');
    const { test, problems } = importReadings(new Uint8Array(await file.arrayBuffer()), file.name, kind);
    const now = record();
    if (test) return { record: { ...now, test: { ...(now['test'] as Json), ...test } } };
    return { fault: problems.map(tellProblem).join(' ') };
  }
  const json = parsed(await file.text());
  const found = (json?.['test'] as Json | undefined)?.['kind'];
  if (json?.['heedway'] === 'test' && found === kind) return { record: json };
  return {
    fault: `${file.name}: found ${typeof found === 'string' ? `a record of another test, ${found}` : 'no record'}; expected one of a ${testNames[kind].replace(/[{}]/g, '')}.`,
  };
}

function parsed(text: string): Json | undefined {
  try {
    const json: unknown = JSON.parse(text.replace(/^\uFEFF/, ''));
    return typeof json === 'object' && json !== null ? (json as Json) : undefined;
  } catch {
    return undefined;
  }
}
