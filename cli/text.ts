/** What commands print for people: tables, findings with their reasons, and where a drawing went. */

import type { Task } from '../desk/builder/task.ts';
import type { Finding } from '../engine/questions/finding.ts';
import { type Scene, sceneToSvg } from '../views/strip/scene.ts';
import { tellMeasure } from '../words/field.ts';
import { type ToldFinding, tellFinding } from '../words/finding.ts';
import type { WordTable } from '../words/table.ts';
import type { Voice } from '../words/voice.ts';
import { writeOut } from './write.ts';

/** Columns of text, first to the left, numbers to the right. */
export function table(rows: readonly (readonly string[])[]): string {
  const widths = rows[0].map((_, i) => Math.max(...rows.map((r) => r[i].length)));
  const numeric = widths.map((_, i) => rows.slice(1).every((r) => /^[-–\d]/.test(r[i]) || r[i] === ''));
  return rows
    .map((r) =>
      r
        .map((cell, i) => (numeric[i] ? cell.padStart(widths[i]) : cell.padEnd(widths[i])))
        .join('  ')
        .trimEnd(),
    )
    .join('\n');
}

export const tableText = ({ title, head, rows, note }: WordTable): string =>
  [title, ...(rows.length > 0 ? [table([head, ...rows])] : []), ...(note ? [note] : [])].join('\n');

/** A finding in words, with what to measure. */
export function tellFully(finding: Finding, voice: Voice): ToldFinding {
  const told = tellFinding(finding, voice);
  return told.measure === undefined ? told : { ...told, measure: tellMeasure(told.measure, voice.wording) };
}

/** Findings numbered from 1, each with why, source, and what to measure. */
export const findingsText = (findings: readonly Finding[], voice: Voice): string =>
  findings
    .map((f, i) => {
      const told = tellFully(f, voice);
      const measure = told.measure ? `\n   Measure: ${told.measure}` : '';
      return `${i + 1}. ${told.what}\n   ${told.why}\n   Source: ${told.source}.${measure}`;
    })
    .join('\n');

/** Parts of an answer, an empty line between them; empty parts fall away. */
export const paragraphs = (parts: readonly string[]): string => parts.filter((p) => p !== '').join('\n\n');

/** A builder's question: the sentences, then the tables. */
export const taskText = ({ said, tables }: Task): string =>
  paragraphs([said.join('\n'), ...tables.map(tableText)]);

/** Draws a scene into a file and says so. */
export async function drawInto(file: string, scene: Scene): Promise<string> {
  await writeOut(file, sceneToSvg(scene));
  return `Drawn into ${file}`;
}
