/** Kinds of couplings, as people write them down. */
import type { Coupling } from '../vehicle/types.ts';

/** Words for one kind: whatever is written with one of them is of it. Common practice, no source. */
const FAMILIES = [/link|bar|pin|rod/i, /knuckle|automatic|\bauto\b/i, /hook|screw/i] as const;
const [LINK] = FAMILIES;

/** Links, bars and pins couple whatever stands a little higher or lower: nothing rides over anything. */
export const isLinked = (front: Coupling, rear: Coupling): boolean =>
  LINK.test(front.type) || LINK.test(rear.type);

/** Words that tell no kind. */
const EMPTY = /^(coupler|coupling|and|the|a|type|kind|small|large|scale)s?$/;

const wordsOf = (type: string): string[] =>
  (type.toLowerCase().match(/\p{L}+/gu) ?? []).filter((w) => !EMPTY.test(w));

/** Whether what is written tells a kind; "coupler" alone does not. */
export const tellsKind = ({ type }: Coupling): boolean => wordsOf(type).length > 0;

/** Of one family, or with a word in common. @param one, other as written; nothing written is of no kind */
export function sameKind(one: string, other: string): boolean {
  const family = FAMILIES.find((f) => f.test(one));
  if (family?.test(other)) return true;
  const words = wordsOf(other);
  return wordsOf(one).some((w) => words.includes(w));
}
