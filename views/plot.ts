/** What plots that stand by themselves have alike: margin, size of letters, paper and title. */
import { drawing, rectShape, type Scene, type Shape, textShape } from './strip/scene.ts';

/** px */
export const SIDE = 16;
export const SIZE = 12;

/** On paper under its title, which is also what it is called. */
export const titled = (wide: number, high: number, title: string, parts: readonly Shape[]): Scene =>
  drawing(wide, high, title, [
    rectShape('paper', 0, 0, wide, high),
    textShape('strong', SIDE, 20, title, 15),
    ...parts,
  ]);
