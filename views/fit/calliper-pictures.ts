/** Where to put calliper, rule and straight edge: one drawing for each figure of a worksheet. Not to scale. */
import { drawing, group, lineShape, pathShape, rectShape, type Scene, type Shape } from '../strip/scene.ts';
import { arc, disc, measure, word } from '../sum-pictures/tools.ts';

const WIDE = 240;
const HIGH = 150;

/** One wheel on its rail, cut through: back to the left, flange, tread to the right. @param x of its back */
const wheel = (x: number, mirrored = false): Shape => {
  const at = (dx: number): number => (mirrored ? x - dx : x + dx);
  const path = [
    [0, 20],
    [0, 104],
    [6, 112],
    [12, 104],
    [15, 94],
    [58, 90],
    [58, 20],
  ];
  return pathShape('body', `M${path.map(([dx, y]) => `${at(dx)},${y}`).join('L')}Z`);
};
const railHead = (x: number, mirrored = false): Shape =>
  rectShape('ink', mirrored ? x - 56 : x + 17, 94, 39, 26);

const pictures = {
  backToBack: [
    wheel(72, true),
    wheel(168),
    railHead(72, true),
    railHead(168),
    lineShape('bold', 14, 40, 226, 40),
    measure(72, 66, 168, 66, 'back to back', 0, -8),
    arc(120, 40, 26, 200, -20, 'pencil'),
    word(120, 138, 'level with the axle, four times'),
  ],
  flangeThickness: [
    wheel(90),
    railHead(90),
    measure(90, 97, 104, 97, '', 0, 0),
    lineShape('pencil', 60, 97, 90, 97),
    lineShape('pencil', 104, 97, 150, 97),
    word(54, 90, 'flange', 'end'),
    word(120, 138, 'calliper where it meets the rail’s side'),
  ],
  flangeHeight: [
    wheel(90),
    lineShape('pencil', 86, 90, 170, 90),
    measure(78, 90, 78, 112, '', 0, 0),
    word(70, 106, 'height', 'end'),
    word(120, 138, 'depth gauge from the tread to the tip'),
  ],
  hollow: [
    pathShape('body', 'M90,20L90,104L96,112L102,104L105,94Q126,84 148,90L148,20Z'),
    lineShape('pencil', 100, 94, 160, 90),
    word(164, 84, 'feeler', 'start'),
    lineShape('fine', 126, 88, 160, 80),
    word(120, 138, 'straight edge along the tread'),
  ],
  couplerHeight: [
    lineShape('rail', 12, 118, 228, 118),
    rectShape('body', 12, 50, 92, 40),
    disc(40, 108, 10),
    disc(72, 108, 10),
    rectShape('solid', 104, 64, 22, 22),
    measure(160, 75, 160, 118, '', 0, 0),
    lineShape('fine', 126, 75, 166, 75),
    word(168, 100, 'height', 'start'),
    measure(140, 64, 140, 86, '', 0, 0),
    word(168, 66, 'face', 'start'),
    word(120, 140, 'empty, and with every seat taken'),
  ],
  lowPart: [
    lineShape('rail', 12, 112, 228, 112),
    rectShape('body', 20, 40, 200, 34),
    disc(44, 100, 12),
    disc(196, 100, 12),
    rectShape('ink', 100, 74, 40, 20),
    lineShape('pencil', 80, 110, 160, 110),
    measure(120, 94, 120, 110, '', 0, 0),
    word(126, 106, 'height', 'start'),
    word(120, 138, 'straight edge across both rails'),
  ],
  outline: [
    lineShape('rail', 30, 118, 210, 118),
    pathShape('body', 'M84,112L84,96L60,90L60,40L84,24L156,24L180,40L180,90L156,96L156,112Z'),
    lineShape('fine', 120, 14, 120, 118),
    lineShape('pencil', 206, 14, 206, 118),
    measure(180, 64, 206, 64, '', 0, 0),
    word(236, 12, 'plumb', 'end'),
    word(120, 138, 'level, from a plumb line'),
  ],
} as const satisfies Readonly<Record<string, readonly Shape[]>>;

export type CalliperPicture = keyof typeof pictures;
export const calliperPictures = Object.keys(pictures) as readonly CalliperPicture[];

export const calliperPicture = (of: CalliperPicture, label: string): Scene =>
  drawing(WIDE, HIGH, label, [group({}, pictures[of])]);
