/** Which of the duties that laws print an incident may be about. Where nobody says how badly anybody was hurt, all may be. */
import { type Duty, duties } from '../../data/duties.ts';
import type { Content } from '../../papers/record/fields.ts';

type Said = Partial<Pick<Content<'incident'>, 'what' | 'hurt'>>;

/** @param country any, if none is said */
export const dutiesFor = ({ what, hurt }: Said, country?: string): readonly Duty[] =>
  duties.filter(
    (duty) =>
      (country === undefined || duty.country === country) &&
      (what === undefined || duty.kinds.includes(what)) &&
      (hurt === undefined || duty.hurt === undefined || duty.hurt.includes(hurt)),
  );

export const dutyCountries: readonly string[] = [...new Set(duties.map(({ country }) => country))];

export const ASK =
  'Examples of what is printed, not advice: whether any applies to your line, and what else does, ask your authority and your insurer.';
