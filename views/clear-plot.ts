/**
 * What a train sweeps along its line: how far it reaches to the left above the track's middle, to the right below it, with
 * everything that stands beside, each by its number. Widths are drawn far larger than lengths. Pure: data in, scene out.
 */
import { type Clear, leftOf } from '../desk/clear.ts';
import { chainage, say, type Voice } from '../words/voice.ts';
import { SIDE, SIZE, titled } from './plot.ts';
import { wrapped } from './strip/letters.ts';
import {
  filledTo,
  lineShape,
  type Point,
  pathShape,
  type Scene,
  type Shape,
  textShape,
} from './strip/scene.ts';

const HALF = 96;

/** undefined: nothing of the train was measured. */
export function clearPlot(clear: Clear, voice: Voice, wide = 760): Scene | undefined {
  const { kept } = clear;
  if (!kept) return undefined;
  const title = 'How far the train reaches beside the track';
  const notes = wrapped(
    `above: to the left as the train runs · below: to the right · scale of the width: ${say(voice, { si: mostOf(clear), kind: 'length' })} to the edge`,
    SIZE,
    wide - 2 * SIDE,
  ).concat(clear.structures.length === 0 ? [] : wrapped(numbered(clear), SIZE, wide - 2 * SIDE));
  const [top, foot] = [34, 24 + SIZE * 1.4 * notes.length];
  const middle = top + HALF;
  const end = kept.at[kept.at.length - 1];
  const x = (at: number): number => SIDE + (at / end) * (wide - 2 * SIDE);
  const y = (aside: number): number => middle - (aside / mostOf(clear)) * HALF;
  const band = (of: readonly number[], way: 1 | -1): string =>
    filledTo(
      middle,
      of.map((reach, i): Point => [x(kept.at[i]), y(way * reach)]),
    );
  const height = middle + HALF + foot + 16;
  return titled(wide, height, title, [
    pathShape('curve', band(kept.left, 1)),
    pathShape('curve', band(kept.right, -1)),
    lineShape('rail', SIDE, middle, wide - SIDE, middle),
    ...marks(clear, x, y),
    textShape('small', SIDE, middle + HALF + 18, chainage(voice, clear.at(0)), SIZE),
    textShape('small', wide - SIDE, middle + HALF + 18, chainage(voice, clear.at(end)), SIZE, 'end'),
    ...notes.map((text, i) => textShape('small', SIDE, middle + HALF + 36 + i * SIZE * 1.4, text, SIZE)),
  ]);
}

/** The widest that is drawn, m: whatever the train takes, with as much beside it again. */
function mostOf({ kept, straight = 0 }: Clear): number {
  const most = Math.max(straight, ...(kept ? [Math.max(...kept.left), Math.max(...kept.right)] : []));
  return 1.8 * most;
}

/** What the numbers are, and which of it is struck; what stands farther off than is drawn is left out. */
const numbered = (clear: Clear): string =>
  clear.structures
    .flatMap(({ id, name, distance }, i) => {
      if (distance === undefined || distance > mostOf(clear)) return [];
      const strikes = clear.nearest.some((p) => p.structure.id === id && p.side !== 'over' && leftOf(p) < 0);
      return [`${i + 1} ${name}${strikes ? ': strikes' : ''}`];
    })
    .join(' · ');

/** Those within the drawing; a number is left out where it would stand on another. */
function marks(clear: Clear, x: (at: number) => number, y: (aside: number) => number): Shape[] {
  const shapes: Shape[] = [];
  const last = { left: -Infinity, right: -Infinity };
  clear.structures.forEach(({ from, to, side, distance }, i) => {
    if (distance === undefined || distance > mostOf(clear)) return;
    for (const way of side === 'both' ? (['left', 'right'] as const) : [side]) {
      const aside = way === 'left' ? distance : -distance;
      const [x1, x2] = [x(from), Math.max(x(from) + 6, x(Math.max(from, to)))];
      shapes.push(lineShape('platform', x1, y(aside), x2, y(aside)));
      if (x1 < last[way] + 2 * SIZE) continue;
      last[way] = x1;
      shapes.push(textShape('word', x1, y(aside) + (way === 'left' ? -6 : SIZE + 6), `${i + 1}`, SIZE));
    }
  });
  return shapes;
}
