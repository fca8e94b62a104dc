/**
 * Pull and push along the train: for each gap a bar from nothing to the most seen, pull above the line, push
 * below, marked where half and nine in ten of the runs stay below. Pure: data in, scene out.
 */
import type { Band, CouplerScenario, GapBand } from '../engine/questions/couplers/ensemble.ts';
import { couplerScenarioWords } from '../words/findings/couplers.ts';
import { say, type Voice, vehicleAt } from '../words/voice.ts';
import { textWidth, wrapped } from './strip/letters.ts';
import { drawing, group, lineShape, rectShape, type Scene, type Shape, textShape } from './strip/scene.ts';

export interface CouplerPlotWords {
  readonly title: string;
  readonly behind: (gap: number) => string;
  readonly force: (newtons: number) => string;
}

export const couplerPlotWords = (scenario: CouplerScenario, voice: Voice): CouplerPlotWords => ({
  title: `Pull and push, ${couplerScenarioWords[scenario]}`,
  behind: (gap) => `behind ${vehicleAt(voice, gap)}`,
  force: (si) => say(voice, { si, kind: 'force' }, 'up'),
});

const TOP = 24;
const HALF = 110;
const FOOT = 62;
/** A gap with its name, which stands in one of two rows, px. */
const CELL = 60;

/** As wide as it is told, or as its gaps need. */
export function couplerPlot(bands: readonly GapBand[], words: CouplerPlotWords, wide = 760): Scene {
  const width = Math.max(wide, 32 + bands.length * CELL);
  const [title, key] = [wrapped(words.title, 15, wide - 32), wrapped(KEY, 12, wide - 32)];
  const top = TOP + 4 + 20 * title.length;
  const height = top + 2 * HALF + FOOT + 16 * key.length;
  const middle = top + HALF;
  const most = Math.max(1, ...bands.flatMap((b) => [b.pull.most, b.push.most]));
  const cell = (width - 32) / Math.max(1, bands.length);
  return drawing(width, height, words.title, [
    rectShape('paper', 0, 0, width, height),
    ...title.map((text, i) => textShape('strong', 16, 20 + 20 * i, text, 15)),
    textShape('small', 16, top - 4, 'pull', 12),
    textShape('small', 16, middle + HALF + 10, 'push', 12),
    ...bands.map((band, i) => gapBars(band, 16 + (i + 0.5) * cell, cell, middle, most, words, width)),
    lineShape('bold', 16, middle, width - 16, middle),
    ...key.map((text, i) => textShape('small', 16, height - 8 - 16 * (key.length - 1 - i), text, 12)),
  ]);
}

const KEY = 'full: half of the runs stay below · pale: nine in ten · line: the most seen';

function gapBars(
  { gap, pull, push }: GapBand,
  x: number,
  cell: number,
  middle: number,
  most: number,
  words: CouplerPlotWords,
  width: number,
): Shape {
  const wide = Math.min(46, cell * 0.5);
  const tall = (force: number): number => (force / most) * (HALF - 20);
  const bar = ({ median, p90, most: top }: Band, way: 1 | -1): Shape[] => {
    const box = (force: number, ink: 'cautious' | 'likely'): Shape =>
      rectShape(ink, x - wide / 2, way > 0 ? middle - tall(force) : middle, wide, tall(force));
    const y = middle - way * tall(top);
    return [
      box(p90, 'cautious'),
      box(median, 'likely'),
      lineShape('bold', x - wide / 2, y, x + wide / 2, y),
      textShape('word', x, way > 0 ? y - 6 : y + 15, words.force(top), 12, 'middle'),
    ];
  };
  const name = words.behind(gap);
  const half = textWidth(name, 12) / 2;
  const at = Math.min(width - half - 2, Math.max(half + 2, x));
  return group({}, [
    ...bar(pull, 1),
    ...bar(push, -1),
    textShape('small', at, middle + HALF + 26 + (gap % 2) * 15, name, 12, 'middle'),
  ]);
}
