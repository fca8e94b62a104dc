/** Replies as figures: what was typed with its unit, what it comes to in SI, and what cannot be read. */
import { outOf } from '../../papers/schema/quantity.ts';
import { parseQuantity, type System } from '../../units/index.ts';
import { fieldAt } from '../../words/field.ts';
import type { Field, FieldKey, Replies } from './field.ts';
import { askedIn, fieldOf, questions } from './questions.ts';

export interface Figure {
  readonly si: number;
  /** As a paper holds it: what was typed, its unit with it. */
  readonly text: string;
}

export interface Fault {
  readonly key: FieldKey;
  readonly found: string;
  readonly expected: string;
}

/** What was answered, empty texts left out, and what the other answers make idle left out too. */
export function answered(replies: Replies): Replies {
  const given = Object.fromEntries(
    Object.entries(replies)
      .map(([key, text]) => [key, text?.trim() ?? ''])
      .filter(([, text]) => text !== ''),
  ) as Replies;
  const live = new Set(questions.flatMap(({ id }) => askedIn(id, given)));
  return Object.fromEntries(Object.entries(given).filter(([key]) => live.has(key as FieldKey)));
}

const isBare = (text: string): boolean => /^[-+]?[\d./\s¼½¾⅛⅜⅝⅞-]+$/.test(text);

/** A bare number with the unit that alone makes sense in these units. */
export function withUnit(text: string, field: Field, system: System): string {
  if (field.form !== 'figure' || !field.bare || !isBare(text)) return text;
  return `${text} ${field.bare[system === 'imperial' ? 0 : 1]}`.trim();
}

/** One figure; a word that stands for an answer, as "none", is no figure. */
export function figureOf(text: string, field: Field, system: System): Figure | Omit<Fault, 'key'> {
  if (field.form !== 'figure') return { found: `"${text}"`, expected: 'a figure' };
  const written = withUnit(text, field, system);
  const read = parseQuantity(written, field.kind);
  if (!read.ok) return { found: read.problem.found, expected: expectedOf(field, read.problem.expected) };
  if (read.si < 0 && field.kind !== 'grade')
    return { found: `"${text}"`, expected: 'a figure that is not negative' };
  if (field.most !== undefined && read.si > field.most)
    return { found: `"${text}"`, expected: `at most ${field.most}` };
  const filled = field.fills === undefined ? undefined : fieldAt(field.fills)?.is;
  const range = filled?.form === 'figure' ? outOf(filled, read) : undefined;
  if (range !== undefined) return { found: `"${written}"`, expected: expectedOf(field, range) };
  return { si: read.si, text: written };
}

const expectedOf = (field: Field, figure: string): string =>
  field.form === 'figure' && field.words ? `${figure}, or ${field.words.join(', ')}` : figure;

export const isFault = (read: Figure | Omit<Fault, 'key'>): read is Omit<Fault, 'key'> => 'expected' in read;

/** The figures of a reply that may hold several. */
export const figuresOf = (text: string, field: Field, system: System): (Figure | Omit<Fault, 'key'>)[] =>
  (field.form === 'figure' && field.several ? text.split(/[,;\n]+/) : [text])
    .map((part) => part.trim())
    .filter((part) => part !== '')
    .map((part) => figureOf(part, field, system));

const isWord = (text: string, field: Field): boolean =>
  field.form === 'figure' && (field.words?.includes(text.toLowerCase()) ?? false);

/** It is there, and how much it is nobody has measured. */
export const isUnmeasured = (text: string | undefined, field: Field): boolean =>
  field.form === 'figure' &&
  field.unmeasured !== undefined &&
  text?.trim().toLowerCase() === field.unmeasured;

/** What cannot be read of these replies, a line for each. */
export function faultsOf(replies: Replies, system: System): Fault[] {
  return Object.entries(replies).flatMap(([name, text]) => {
    const key = name as FieldKey;
    const field = fieldOf(key);
    if (field.form === 'text' || isWord(text, field)) return [];
    if (field.form === 'choice')
      return field.values.includes(text)
        ? []
        : [{ key, found: `"${text}"`, expected: field.values.join(', ') }];
    return figuresOf(text, field, system)
      .filter(isFault)
      .slice(0, 1)
      .map((fault) => ({ key, ...fault }));
  });
}

/** Replies by key as figures; nothing for what was not answered or is a word. */
export class Read {
  readonly replies: Replies;
  readonly system: System;

  constructor(replies: Replies, system: System) {
    this.replies = replies;
    this.system = system;
  }

  text(key: FieldKey): string | undefined {
    return this.replies[key];
  }

  says(key: FieldKey, word: string): boolean {
    return this.replies[key]?.toLowerCase() === word;
  }

  figures(key: FieldKey): readonly Figure[] {
    const text = this.replies[key];
    if (text === undefined || isWord(text, fieldOf(key))) return [];
    return figuresOf(text, fieldOf(key), this.system).filter((f): f is Figure => !isFault(f));
  }

  figure(key: FieldKey): Figure | undefined {
    return this.figures(key)[0];
  }

  count(key: FieldKey): number {
    return this.figure(key)?.si ?? 0;
  }
}
