/** Which records go into a pack: those of a span, of a thing and of what refers to it. One rule for every kind. */
import { meant } from '../../papers/compile/named.ts';
import type { Kind } from '../../papers/record/fields.ts';
import { type Standing, standing } from '../../records/amended.ts';
import { dayOf, type Entry, type Json } from '../../records/record.ts';
import type { Named } from '../../records/store.ts';
import type { Reading } from './fields.ts';

export interface Wanted {
  /** First and last day, both in it; absent: from the first record, to the last. */
  readonly from?: string | undefined;
  readonly to?: string | undefined;
  /** Names of vehicles, of a line: what concerns none of them stays out; absent: all. */
  readonly of?: readonly string[] | undefined;
}

export interface Packed {
  /** All that the store has, for what stands on a day. */
  readonly entries: readonly Entry[];
  readonly picked: readonly Standing[];
  readonly reading: Reading;
  readonly wanted: Wanted;
}

/** What is kept of a departure to reckon it again says nothing of itself. */
const apart: ReadonlySet<string> = new Set(['paper', 'told']);

/** Every text in a record's content. */
function* textsIn(json: unknown): Generator<string> {
  if (typeof json === 'string') yield json;
  else if (Array.isArray(json)) for (const one of json) yield* textsIn(one);
  else if (typeof json === 'object' && json !== null)
    for (const [key, one] of Object.entries(json)) if (!apart.has(key)) yield* textsIn(one);
}

/** A certificate stands for longer than the day on which it was given: those of before belong to the span. */
const ofBefore: ReadonlySet<Kind> = new Set<Kind>(['certificate', 'author']);

export function pick(entries: readonly Entry[], { from, to, of }: Wanted): Standing[] {
  const inSpan = ({ first }: Standing): boolean => {
    const day = dayOf(first.body);
    const begun = from === undefined || day >= from || ofBefore.has(first.body.kind);
    return begun && (to === undefined || day <= to);
  };
  const spanned = standing(entries).filter(inSpan);
  if (of === undefined) return spanned;
  // What names the thing, and what was found on the ground, which is of each; then what names such a record, as an arrival its departure.
  const names = new Set(of);
  const isOf = meaning(of);
  const texts = new Map(spanned.map((one) => [one, [...textsIn(one.content)]]));
  const concerned = new Set<Standing>();
  for (let before = -1; before < concerned.size; ) {
    before = concerned.size;
    for (const [one, words] of texts)
      if (
        !concerned.has(one) &&
        (isOnTheGround(one) || words.some((word) => names.has(word) || isOf(word)))
      ) {
        concerned.add(one);
        names.add(one.first.row.hash);
      }
  }
  const authors = new Set([...concerned].map(({ first }) => first.body.author));
  const people = personsIn([...concerned].map(({ first }) => first));
  // Those of who worked it; and whose neither a thing nor a person is, is the club's, and of every thing in it.
  const club = ({ first: { body }, content }: Standing): boolean =>
    (body.kind === 'author' && authors.has(body.author)) ||
    (body.kind === 'certificate' &&
      content['of'] === undefined &&
      (content['person'] === undefined || people.has(`${content['person']}`)));
  return spanned.filter((one) => concerned.has(one) || club(one));
}

const isOnTheGround = ({ first, content }: Standing): boolean =>
  first.body.kind === 'inspection' && content['ground'] !== undefined;

/** A name is no longer than a line; a text that is longer names nothing. */
const MOST_LETTERS = 200;

/** Whether a text is one of these names, however it was spelled. */
function meaning(of: readonly string[]): (word: string) => boolean {
  const known = new Map<string, boolean>();
  return (word) => {
    const was = known.get(word);
    if (was !== undefined) return was;
    const is = word.length <= MOST_LETTERS && meant(word, of).length > 0;
    known.set(word, is);
    return is;
  };
}

/** What stands behind `person` in any record. */
export function personsIn(entries: readonly Entry[]): ReadonlySet<string> {
  const found = new Set<string>();
  const seek = (json: unknown): void => {
    if (Array.isArray(json)) for (const one of json) seek(one);
    else if (typeof json === 'object' && json !== null)
      for (const [key, one] of Object.entries(json as Json)) {
        if (key === 'person' && typeof one === 'string') found.add(one);
        else if (!apart.has(key)) seek(one);
      }
  };
  for (const { body } of entries) seek(body.content);
  return found;
}

export const packed = (
  entries: readonly Entry[],
  wanted: Wanted,
  wording: Reading['wording'],
  names: readonly Named[],
): Packed => ({
  entries,
  picked: pick(entries, wanted),
  reading: { wording, names, persons: personsIn(entries) },
  wanted,
});
