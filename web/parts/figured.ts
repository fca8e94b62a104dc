/** Figures with their units, which stand out of a sentence; what follows ends it, so that a part of a word is none. */
const FIGURE =
  /(\d+(?:[.,]\d+)*(?:-\d+\/\d+)? ?(?:mph|km\/h|ft|in|m|mm|lbf?|kg|N|%|inHg|psi|kPa|bar|cars?)?)(?=[\s;:,.)]|$)/;

/** A sentence in parts: every second one is a figure. */
export const figured = (words: string): string[] => words.split(FIGURE);
