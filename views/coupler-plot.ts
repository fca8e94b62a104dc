/**
 * Pull and push along the train: for each gap a bar from nothing to the most seen, pull above the line, push
 * below, marked where half and nine in ten of the runs stay below. Pure: data in, scene out.
 */
import type { Band, CouplerScenario, GapBand } from '../engine/questions/couplers/ensemble.ts';
import { couplerScenarioWords } from '../words/findings/couplers.ts';
import { say, type Voice, vehicleAt } from '../words/voice.ts';
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

const TOP = 44;
const HALF = 110;
const FOOT = 74;

export function couplerPlot(bands: readonly GapBand[], words: CouplerPlotWords, width = 760): Scene {
  const height = TOP + 2 * HALF + FOOT;
  const middle = TOP + HALF;
  const most = Math.max(1, ...bands.flatMap((b) => [b.pull.most, b.push.most]));
  const cell = (width - 32) / Math.max(1, bands.length);
  return drawing(width, height, words.title, [
    rectShape('paper', 0, 0, width, height),
    textShape('strong', 16, 22, words.title, 15),
    textShape('small', 16, TOP + 4, 'pull', 12),
    textShape('small', 16, middle + HALF, 'push', 12),
    ...bands.map((band, i) => gapBars(band, 16 + (i + 0.5) * cell, cell, middle, most, words)),
    lineShape('bold', 16, middle, width - 16, middle),
    textShape(
      'small',
      16,
      height - 8,
      'full: half of the runs stay below · pale: nine in ten · line: the most seen',
      12,
    ),
  ]);
}

function gapBars(
  { gap, pull, push }: GapBand,
  x: number,
  cell: number,
  middle: number,
  most: number,
  words: CouplerPlotWords,
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
      textShape('word', x, way > 0 ? y - 6 : y + 15, words.force(top), 11.5, 'middle'),
    ];
  };
  return group({}, [
    ...bar(pull, 1),
    ...bar(push, -1),
    textShape('small', x, middle + HALF + 22 + (gap % 2) * 15, words.behind(gap), 11.5, 'middle'),
  ]);
}
