/** A survey file read into a line file, and checked as any other line file is. */
import type { Line } from '../engine/things/line/types.ts';
import { importCsv } from '../papers/import/csv.ts';
import { UNITLESS } from '../papers/import/csv-rows.ts';
import { importGpx } from '../papers/import/gpx.ts';
import type { Advice, ImportOptions } from '../papers/import/types.ts';
import { type FileProblem, readLine, writeFile } from '../papers/index.ts';
import { isGpx } from '../papers/text.ts';

export interface Survey {
  readonly file: string;
  /** What was done to the survey, in words. */
  readonly notes: readonly string[];
  /** What can be chosen otherwise, and what cannot be mended here. */
  readonly advice: readonly Advice[];
  readonly problems: readonly FileProblem[];
  /** Nothing is wrong with it but that its header does not say whether its lengths are feet or metres. */
  readonly asksLengths?: boolean;
  /** The line file and what it is read as; absent where problems forbid it. */
  readonly made?: { readonly json: Readonly<Record<string, unknown>>; readonly line: Line };
}

export async function readSurvey(
  content: Uint8Array | string,
  file: string,
  about: ImportOptions,
): Promise<Survey> {
  const { line: json, notes, advice, problems } = (isGpx(file) ? importGpx : importCsv)(content, file, about);
  if (!json || problems.length > 0) {
    const unsaid =
      problems.length > 0 && problems.every((p) => p.found.endsWith(UNITLESS) && !p.expected.includes('%'));
    return { file, notes, advice, problems, ...(unsaid && !about.lengths ? { asksLengths: true } : {}) };
  }
  const read = await readLine({ path: file, content: writeFile(json) });
  if (read.ok) return { file, notes, advice, problems, made: { json, line: read.value } };
  // Its rows are those of the line that was made of it, which nobody has seen: the field says enough.
  const plain = read.problems.map(({ row: _row, column: _column, ...problem }) => ({
    ...problem,
    message: `in the line that was made of it, ${problem.message}`,
  }));
  return { file, notes, advice, problems: plain };
}
