/** A survey file read into a line file, checked as the line it would be; the paper is not touched. */

import type { Line } from '../../engine/things/line/types.ts';
import { importCsv } from '../../papers/import/csv.ts';
import type { Imported } from '../../papers/import/types.ts';
import { type FileProblem, readLine, writeFile } from '../../papers/index.ts';

export interface Survey {
  readonly file: string;
  readonly notes: readonly string[];
  readonly problems: readonly FileProblem[];
  /** Absent where problems forbid it. */
  readonly json?: Record<string, unknown>;
  readonly line?: Line;
}

/** @param gauge of the line that it may replace, as written there */
export async function readSurvey(file: File, gauge: string): Promise<Survey> {
  const bytes = new Uint8Array(await file.arrayBuffer());
  const about = { name: file.name.replace(/\.\w+$/, ''), gauge };
  const read = /\.gpx$/i.test(file.name)
    ? await readGpx(bytes, file.name, about)
    : importCsv(bytes, file.name, about);
  const { notes, problems, line: json } = read;
  if (!json || problems.length > 0) return { file: file.name, notes, problems };
  const line = await readLine({ path: file.name, content: writeFile(json) });
  return line.ok
    ? { file: file.name, notes, problems, json, line: line.value }
    : { file: file.name, notes, problems: line.problems };
}

async function readGpx(
  bytes: Uint8Array,
  name: string,
  about: { readonly name: string; readonly gauge: string },
): Promise<Imported> {
  const { importGpx } = await import('../../papers/import/gpx.ts');
  return importGpx(bytes, name, about, (text) => {
    const document = new DOMParser().parseFromString(text, 'text/xml');
    const fault = document.querySelector('parsererror')?.textContent?.split('\n')[0];
    return fault ? { fault } : { document };
  });
}
