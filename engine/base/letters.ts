/**
 * Letters that are not read but obeyed: a terminal moves, hides or colours by them (C0, DEL, C1), and a page or a
 * drawing writes backwards (bidirectional overrides and isolates; line and paragraph separators stand between).
 * In a name they could put a word over the answer.
 */

/** None of them, nor a line break: what a name is made of, as a pattern (Unicode) that JSON Schema shares. */
export const PLAIN = '^[^\\p{Cc}\\u2028-\\u202e\\u2066-\\u2069]*$';

const obeyed = /(?![\n\t])[\p{Cc}\u2028-\u202e\u2066-\u2069]/gu;

/** Text of which nothing is obeyed but line breaks and tabs: the rest is written out, as JSON would. */
export const plain = (text: string): string =>
  text.replace(obeyed, (letter) => `\\u${letter.charCodeAt(0).toString(16).padStart(4, '0')}`);
