/** How an item of a list is looked at or measured: the drawings of tests and worksheets, and two of a list's own. Not to scale. */
import type { DrawingName } from '../papers/inspection/drawings.ts';
import { type CalliperPicture, calliperPicture } from './fit/calliper-pictures.ts';
import { testPicture } from './measured/pictures.ts';
import { drawing, lineShape, rectShape, type Scene, type Shape } from './strip/scene.ts';
import { arrow, measure, word } from './sum-pictures/tools.ts';

const own = {
  'track-gauge': [
    rectShape('ink', 52, 84, 26, 34),
    rectShape('ink', 162, 84, 26, 34),
    lineShape('rail', 24, 120, 216, 120),
    lineShape('bold', 40, 74, 200, 74),
    rectShape('solid', 78, 74, 6, 24),
    rectShape('solid', 156, 74, 6, 24),
    measure(78, 52, 162, 52, 'gauge', 0, -8),
    word(120, 140, 'head to head, bar square to the rail'),
  ],
  'water-glass': [
    rectShape('open', 104, 14, 22, 104),
    rectShape('body', 104, 62, 22, 56),
    lineShape('bold', 60, 26, 104, 26),
    lineShape('bold', 60, 106, 104, 106),
    lineShape('bold', 115, 118, 115, 132),
    arrow(142, 40, 142, 96),
    word(150, 34, 'blow through', 'start'),
    arrow(158, 100, 158, 56),
    word(150, 118, 'it comes back', 'start'),
    word(52, 30, 'steam', 'end'),
    word(52, 110, 'water', 'end'),
  ],
} as const satisfies Readonly<Partial<Record<DrawingName, readonly Shape[]>>>;

const calliper = {
  'back-to-back': 'backToBack',
  'flange-thickness': 'flangeThickness',
  'flange-height': 'flangeHeight',
  'tread-hollow': 'hollow',
  'coupler-height': 'couplerHeight',
  'low-part': 'lowPart',
  outline: 'outline',
} as const satisfies Readonly<Partial<Record<DrawingName, CalliperPicture>>>;

const tests = {
  stop: 'stop',
  pull: 'pull',
  'pressure-gauge': 'gauge',
  tilt: 'tilt',
  blocks: 'block',
  scales: 'scales',
  rule: 'rule',
} as const;

/** @param label what it shows, for whoever does not see it */
export function inspectionDrawing(name: DrawingName, label: string): Scene {
  if (name in own) return drawing(240, 150, label, own[name as keyof typeof own]);
  if (name in calliper) return calliperPicture(calliper[name as keyof typeof calliper], label);
  return testPicture(tests[name as keyof typeof tests], label);
}
