/** Pictures of curves, cant, overturning, wheels and track. */
import { group, lineShape, pathShape, rectShape, type Shape, shape } from '../strip/scene.ts';
import { arc, arrow, disc, measure, type Picture, rail, type Say, word } from './tools.ts';

/** A curve from above with its radius. */
const curvePlan = (say: Say): Shape[] => [
  arc(240, 320, 270, 60, 120, 'rail'),
  arc(240, 320, 256, 60, 120),
  lineShape('axis', 240, 320, 240, 50),
  word(248, 176, say('radius'), 'start'),
];

export const aroundCurve: Picture = (say) => [
  ...curvePlan(say),
  rectShape('body', 200, 44, 80, 18),
  arrow(240, 42, 240, 8),
  word(250, 24, say('force'), 'start'),
  arrow(286, 56, 340, 66, say('speed'), 20, -10),
  word(190, 36, say('mass'), 'end'),
];

export const degree: Picture = (say) => [
  ...curvePlan(say),
  lineShape('fine', 105, 86, 375, 86),
  lineShape('dotted', 105, 86, 240, 320),
  lineShape('dotted', 375, 86, 240, 320),
  word(240, 204, say('degree')),
  word(240, 104, '100 ft'),
];

export const versine: Picture = (say) => [
  ...curvePlan(say),
  measure(105, 86, 375, 86, say('chord'), -76, 18),
  measure(240, 50, 240, 86, say('versine'), 36, 4),
];

/** A vehicle across canted track: base, cant, centre of gravity and its height. */
export const crossSection: Picture = (say) => [
  shape('g', { transform: 'rotate(-7 150 160)' }, [
    lineShape('bold', 130, 160, 330, 160),
    rectShape('solid', 146, 150, 10, 10),
    rectShape('solid', 304, 150, 10, 10),
    rectShape('body', 160, 62, 140, 66),
    disc(176, 138, 14),
    disc(284, 138, 14),
    disc(230, 84, 6, 'solid'),
    lineShape('axis', 230, 20, 230, 160),
    measure(350, 150, 350, 84, say('height'), 58, 4),
    measure(151, 176, 309, 176, say('base'), 0, 16),
  ]),
  measure(340, 160, 340, 136, say('cant'), 46, 6),
  lineShape('dotted', 150, 160, 380, 160),
  arrow(214, 74, 128, 74),
  word(124, 62, say('speed'), 'end'),
  word(124, 92, say('radius'), 'end'),
];

/** A car from behind with its people shifted to one side, over the rail that they load. */
export const leaningCar: Picture = (say) => [
  lineShape('bold', 110, 160, 330, 160),
  rectShape('solid', 142, 150, 10, 10),
  rectShape('solid', 304, 150, 10, 10),
  rectShape('body', 160, 108, 140, 22),
  disc(172, 138, 14),
  disc(284, 138, 14),
  disc(254, 82, 26, 'body'),
  disc(254, 82, 4, 'solid'),
  disc(230, 98, 6, 'solid'),
  lineShape('axis', 230, 20, 230, 160),
  measure(230, 40, 254, 40, say('lean'), 44, 4),
  word(286, 72, say('people'), 'start'),
  measure(360, 160, 360, 98, say('height'), 52, 4),
  measure(147, 178, 309, 178, say('base'), 0, 16),
  word(222, 102, say('mass'), 'end'),
  arrow(60, 98, 130, 98, say('sideways'), 0, -10),
];

export const tilt: Picture = (say) => [
  lineShape('ink', 60, 176, 420, 176),
  shape('g', { transform: 'rotate(-24 130 176)' }, [
    lineShape('bold', 110, 176, 330, 176),
    rectShape('body', 140, 86, 140, 70),
    disc(210, 104, 6, 'solid'),
    measure(300, 176, 300, 104, say('height'), 56, 0),
    measure(130, 190, 290, 190, say('base'), 0, 16),
  ]),
  lineShape('dotted', 175, 44, 175, 176),
  word(330, 160, say('angle'), 'start'),
];

export const flange: Picture = (say) => [
  shape('rect', { class: 'body', x: 242, y: 98, width: 92, height: 30, rx: 8 }),
  rectShape('body', 276, 128, 22, 60),
  pathShape('engine', 'M160,34H350V96L262,98Q244,100 236,118L228,138Q214,150 198,138L160,104Z'),
  arrow(300, 4, 300, 30),
  word(312, 20, 'V', 'start'),
  arrow(96, 116, 168, 116, 'L'),
  lineShape('dotted', 228, 138, 262, 70),
  word(226, 172, say('flange-angle'), 'end'),
  word(350, 120, say('friction'), 'start'),
  word(350, 172, say('limit'), 'start'),
];

export const frog: Picture = (say) => [
  lineShape('rail', 20, 106, 460, 56),
  lineShape('rail', 20, 106, 460, 156),
  arc(20, 106, 210, -6.4, 6.4),
  word(246, 111, say('angle'), 'start'),
  word(300, 178, say('number'), 'start'),
  measure(460, 62, 460, 150, '1', 12, 4),
  measure(20, 190, 440, 190, 'N', 0, 16),
];

/** Two tracks that part: points at the left, the frog where the near rails cross, a train beside another beyond it. */
export const turnout: Picture = (say) => [
  lineShape('rail', 20, 60, 460, 60),
  lineShape('rail', 20, 96, 460, 96),
  pathShape('rail', 'M20,60Q150,60 460,170'),
  pathShape('rail', 'M20,96Q140,96 445,206'),
  measure(20, 36, 208, 36, say('lead'), 0, -8),
  word(140, 152, say('radius') || say('closure')),
  word(250, 90, say('number'), 'start'),
  measure(208, 36, 360, 36, say('beyond-frog'), 0, -8),
  word(410, 84, say('passing')),
  word(420, 150, say('standing')),
  word(400, 118, say('room')),
  word(40, 116, say('gauge'), 'start'),
  word(90, 30, say('switch-length')),
  word(90, 78, say('heel-spread')),
  word(96, 134, say('heel-angle')),
  word(190, 190, say('toe-length')),
  word(150, 206, say('crossing')),
];

export const warp: Picture = (say) => [
  pathShape('earth', 'M60,140L330,140L430,60L160,60Z'),
  pathShape('bold', 'M60,140L330,140L430,34L160,60Z'),
  lineShape('dotted', 430, 60, 430, 34),
  measure(446, 60, 446, 34, say('difference'), -46, -18),
  measure(60, 160, 330, 160, say('along'), 0, 18),
  word(230, 104, say('warp')),
];

export const wheelset: Picture = (say) => [
  rectShape('engine', 110, 92, 260, 10),
  ...[120, 346].map((x) => rectShape('body', x, 40, 14, 112)),
  rectShape('body', 112, 30, 8, 132),
  rectShape('body', 360, 30, 8, 132),
  group({}, [rectShape('solid', 96, 152, 30, 22), rectShape('solid', 354, 152, 30, 22)]),
  rectShape('open', 150, 158, 14, 16),
  measure(126, 188, 354, 188, say('gauge'), 0, 16),
  measure(134, 128, 346, 128, say('back-to-back'), 0, -8),
  word(240, 66, say('wheel-check')),
  word(170, 174, say('flangeway'), 'start'),
];

/** Two vehicles from above in a curve, a long and a short one, and the bar between their pivots. */
export const coupled: Picture = (say) => [
  arc(240, 320, 244, 50, 130, 'rail'),
  shape('g', { transform: 'rotate(-12 240 320)' }, [
    rectShape('body', 156, 68, 168, 24),
    disc(196, 80, 4, 'solid'),
    disc(284, 80, 4, 'solid'),
    measure(196, 108, 284, 108, say('truck-centres'), 0, 16),
    measure(284, 56, 324, 56, say('overhang'), -14, -8),
  ]),
  shape('g', { transform: 'rotate(17.5 240 320)' }, [
    rectShape('body', 200, 65, 80, 24),
    disc(216, 77, 4, 'solid'),
    disc(264, 77, 4, 'solid'),
    measure(216, 108, 264, 108, say('other-truck-centres'), 20, 16),
  ]),
  lineShape('bold', 258.6, 70.7, 288.3, 80.4),
  disc(258.6, 70.7, 5, 'solid'),
  disc(288.3, 80.4, 5, 'solid'),
  lineShape('dotted', 258.6, 70.7, 312, 59.3),
  word(318, 56, say('angle'), 'start'),
  lineShape('axis', 240, 206, 240, 150),
  word(248, 190, say('radius'), 'start'),
];

/** Curve resistance: flanges rub while the train goes round. */
export const curveDrag: Picture = (say) => [
  ...curvePlan(say),
  ...[-34, -12, 10].map((a) =>
    shape('g', { transform: `rotate(${a} 240 320)` }, [rectShape('body', 210, 46, 58, 18)]),
  ),
  arrow(112, 76, 78, 96),
  word(70, 84, say('force'), 'start'),
  word(330, 40, say('mass')),
];

export const axlesOnRail: Picture = (say) => [
  rail(150),
  rectShape('body', 90, 70, 300, 50),
  ...[130, 170, 310, 350].map((x) => disc(x, 132, 18)),
  word(240, 100, say('mass')),
  word(240, 184, say('axles')),
  arrow(396, 92, 450, 92, say('speed')),
  arrow(84, 108, 34, 108, say('force'), -4, -10),
];
