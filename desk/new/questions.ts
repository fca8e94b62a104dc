/**
 * The four questions of one's own train and line, as data. The web's steps and the command line's questions and flags
 * are made from this list alone.
 */
import { peopleAndLine } from './ask-run.ts';
import { engineAndCars } from './ask-train.ts';
import type { Field, FieldKey, Replies } from './field.ts';

const fields: Readonly<Record<FieldKey, Field>> = { ...engineAndCars, ...peopleAndLine };

/** The questions, in the order in which they are asked. */
export const questions = [
  { id: 'engine', title: 'Engine' },
  { id: 'cars', title: 'Cars' },
  { id: 'people', title: 'People' },
  { id: 'line', title: 'Line' },
] as const;
export type Question = (typeof questions)[number]['id'];

export const fieldOf = (key: FieldKey): Field => fields[key];
export const fieldKeys = Object.keys(fields) as FieldKey[];

/** Those of a question that these replies make matter. */
export const askedIn = (question: Question, replies: Replies): FieldKey[] =>
  fieldKeys.filter((key) => key.startsWith(`${question}.`) && (fieldOf(key).when?.(replies) ?? true));
