/** What each test looks like beside the track. Not to scale; shapes are likenesses. */
import type { Picture as Name } from '../../words/measured/guides.ts';
import { drawing, group, lineShape, pathShape, rectShape, type Scene, type Shape } from '../strip/scene.ts';
import { arc, arrow, car, disc, measure, rail, spring, word } from '../sum-pictures/tools.ts';

const WIDE = 360;
const HIGH = 150;
const RAIL = 112;

const line = rail(RAIL, 8, WIDE - 8);
const post = (x: number, label: string): Shape =>
  group({}, [lineShape('bold', x, RAIL + 2, x, RAIL - 46), word(x, RAIL + 22, label)]);
const balance = (from: number, to: number, y: number): readonly Shape[] => [
  lineShape('ink', from, y, from + 22, y),
  rectShape('open', from + 18, y - 12, to - from - 54, 24),
  spring(from + 22, to - 40, y, 4),
  lineShape('ink', to - 36, y, to, y),
];

const pictures: Readonly<Record<Name, readonly Shape[]>> = {
  run: [
    line,
    car(16, RAIL, 66, 24, 'engine'),
    arrow(88, 62, 140, 62, 'power off', 0, -8),
    ...[110, 170, 230, 290].map((x, i) => post(x, `mark ${i + 1}`)),
    arrow(330, 40, 250, 40, 'and back the other way', -18, -10),
  ],
  stop: [
    line,
    car(16, RAIL, 66, 24, 'engine'),
    post(110, 'brake on'),
    car(250, RAIL, 66, 24, 'engine'),
    measure(110, 52, 316, 52, 'the front, from the mark to rest', 0, -8),
  ],
  pull: [
    line,
    car(20, RAIL, 120, 26),
    ...balance(140, 270, RAIL - 22),
    arrow(270, RAIL - 22, 340, RAIL - 22, 'slowly', 0, -10),
    word(200, RAIL - 44, 'read here'),
  ],
  gauge: [
    disc(90, 70, 46, 'open'),
    arc(90, 70, 34, 220, -40),
    pathShape('bold', 'M90,70L114,46'),
    disc(90, 70, 4, 'solid'),
    word(90, 138, 'gauge'),
    disc(250, 74, 42, 'open'),
    rectShape('solid', 244, 20, 12, 12),
    pathShape('bold', 'M250,74L250,44'),
    word(250, 138, 'stopwatch'),
  ],
  tilt: [
    lineShape('rail', 60, 120, 300, 120),
    pathShape('rail', 'M110,120L246,62'),
    pathShape('body', 'M128,90L222,50L208,14L112,54Z'),
    disc(136, 100, 9),
    disc(228, 60, 9),
    rectShape('solid', 108, 106, 12, 14),
    word(92, 140, 'low stop'),
    arc(110, 120, 90, 0, 23, 'pencil'),
    word(224, 110, 'angle', 'start'),
    pathShape('pencil', 'M208,14L300,8'),
    word(306, 30, 'strap'),
  ],
  block: [
    line,
    car(70, RAIL, 200, 30),
    rectShape('solid', 96, RAIL - 5, 22, 5),
    arrow(60, 134, 98, 118, 'block', -30, 8),
    word(262, RAIL + 24, 'does paper slip under it?'),
  ],
  scales: [
    car(70, RAIL - 12, 220, 30),
    rectShape('open', 92, RAIL - 12, 62, 12),
    rectShape('open', 206, RAIL - 12, 62, 12),
    lineShape('rail', 30, RAIL, 330, RAIL),
    word(123, RAIL + 22, 'front'),
    word(237, RAIL + 22, 'rear'),
  ],
  rule: [
    line,
    car(24, RAIL, 110, 26),
    car(200, RAIL, 110, 26),
    lineShape('bold', 134, RAIL - 20, 200, RAIL - 20),
    measure(134, 52, 200, 52, 'rule or tape', 0, -8),
  ],
  look: [
    line,
    disc(40, 58, 9, 'solid'),
    pathShape('bold', 'M40,66L40,98'),
    pathShape('hair', 'M50,56L300,44'),
    lineShape('bold', 300, RAIL, 300, 40),
    disc(300, 40, 8, 'open'),
    measure(40, 130, 300, 130, 'how far before it', 0, 16),
  ],
};

export const testPicture = (picture: Name, label: string): Scene =>
  drawing(WIDE, HIGH, label, pictures[picture]);
