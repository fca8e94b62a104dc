/**
 * What is wrong with a file, as data: where, what was found, what is expected. Problems are gathered, never
 * thrown, so that one reading of a broken file tells all of them.
 */

import { plain } from '../engine/base/letters.ts';

export type FieldPath = readonly (string | number)[];

export interface FileProblem {
  /** Path of the file as it was asked for. */
  readonly file: string;
  /** Field within the file, for example `curves[2].radius`; empty for the file as a whole. */
  readonly path: string;
  /** Line and column of the text, from 1. */
  readonly row?: number;
  readonly column?: number;
  readonly found: string;
  readonly expected: string;
  /** All of it in one sentence, without the file's name. */
  readonly message: string;
}

/** A problem before its file and text position are known. */
export interface Trouble {
  readonly path: FieldPath;
  readonly found: string;
  readonly expected: string;
}

/** Letters of a value that are shown. */
const SHOWN = 60;

/** `['curves', 2, 'radius']` → `curves[2].radius`. */
export function printPath(path: FieldPath): string {
  let text = '';
  for (const part of path) {
    if (typeof part === 'number') text += `[${part}]`;
    else if (part.length <= SHOWN && /^[A-Za-z_$][\w$-]*$/.test(part))
      text += text === '' ? part : `.${part}`;
    else text += `[${show(part)}]`;
  }
  return text;
}

export interface TextPosition {
  readonly row: number;
  readonly column: number;
}

export function fileProblem(file: string, trouble: Trouble, position?: TextPosition): FileProblem {
  const path = printPath(trouble.path);
  const where = path === '' ? '' : `${path}: `;
  // What a file holds is shown, never obeyed.
  const [found, expected] = [plain(trouble.found), plain(trouble.expected)];
  return {
    file,
    path,
    ...(position === undefined ? {} : { row: position.row, column: position.column }),
    found,
    expected,
    message: `${where}found ${found}; expected ${expected}`,
  };
}

/** The problem with its file and place in front, as a terminal shows it. */
export function tellProblem(problem: FileProblem): string {
  const place = problem.row === undefined ? '' : `:${problem.row}:${problem.column}`;
  return `${problem.file}${place}: ${problem.message}`;
}

/** A value as it is shown behind "found". */
export function show(value: unknown): string {
  if (value === undefined) return 'nothing';
  if (value === null) return 'null';
  if (Array.isArray(value)) return value.length === 0 ? 'an empty list' : `a list of ${value.length}`;
  if (typeof value === 'object') return 'a group of fields';
  const text = typeof value === 'string' ? JSON.stringify(value.slice(0, SHOWN + 1)) : String(value);
  return plain(text.length <= SHOWN ? text : `${text.slice(0, SHOWN)}…`);
}
