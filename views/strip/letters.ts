/** How wide lettering is, and a sheet on which no two texts, nor a text and a symbol, come to lie on each other. */
import type { Ink } from './ink.ts';
import { type Shape, textShape } from './scene.ts';

/** Widths in the wider of the faces that a strip is set in, by kind of letter, in ems. */
const NARROW = 0.34;
const WIDE = 0.92;
const ROUND = 0.68;
const OTHER = 0.59;
/** Bold lettering is wider. */
const BOLD = 1.06;

function widthOf(letter: string): number {
  if ("iljtfrI.,:;'|!()[] -’·".includes(letter)) return NARROW;
  if ('mwMW%@—–→←↑↓'.includes(letter)) return WIDE;
  return letter >= 'A' && letter <= 'Z' ? ROUND : OTHER;
}

/** px, never less than it is set. */
export const textWidth = (text: string, size: number): number =>
  Array.from(text).reduce((sum, letter) => sum + widthOf(letter), 0) * size * BOLD;

/** In lines that fit into a width, px; a word that is longer stands alone. */
export function wrapped(text: string, size: number, width: number): string[] {
  const lines: string[] = [];
  for (const word of text.split(' ')) {
    const last = lines[lines.length - 1];
    if (last !== undefined && textWidth(`${last} ${word}`, size) <= width)
      lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines;
}

export interface Box {
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
}

export type Anchor = 'start' | 'middle' | 'end';

export interface Spot {
  readonly x: number;
  /** Baseline. */
  readonly y: number;
  readonly anchor?: Anchor;
  /** What is drawn with it, and must be free too. */
  readonly with?: Box;
}

/** Room from one text to the next, px. */
const CLEAR = 3;

export interface Sheet {
  /** The text at the first spot that is free and inside; undefined: there is none. */
  readonly put: (ink: Ink, text: string, size: number, spots: readonly Spot[]) => Placed | undefined;
  /** Nothing is written over this. */
  readonly keep: (box: Box) => void;
}

export interface Placed {
  readonly shape: Shape;
  readonly spot: Spot;
  readonly box: Box;
}

export function openSheet(width: number, height: number): Sheet {
  const taken: Box[] = [];
  const free = (b: Box): boolean =>
    taken.every((t) => b.x1 + CLEAR <= t.x0 || t.x1 + CLEAR <= b.x0 || b.y1 <= t.y0 || t.y1 <= b.y0);
  const inside = (b: Box): boolean => b.x0 >= 0 && b.y0 >= 0 && b.x1 <= width && b.y1 <= height;
  return {
    keep: (box) => {
      taken.push(box);
    },
    put: (ink, text, size, spots) => {
      const wide = textWidth(text, size);
      for (const spot of spots) {
        const box = boxOf(wide, size, spot);
        if (!inside(box) || !free(box) || (spot.with && !free(spot.with))) continue;
        taken.push(box, ...(spot.with ? [spot.with] : []));
        return { shape: textShape(ink, spot.x, spot.y, text, size, spot.anchor), spot, box };
      }
      return undefined;
    },
  };
}

function boxOf(wide: number, size: number, { x, y, anchor = 'start' }: Spot): Box {
  const x0 = x - wide * { start: 0, middle: 0.5, end: 1 }[anchor];
  return { x0, y0: y - size * 0.92, x1: x0 + wide, y1: y + size * 0.28 };
}
