/** Pictures of stopping, rolling, grades and spacing. */
import { group, lineShape, pathShape, rectShape, shape } from '../strip/scene.ts';
import { arrow, car, disc, HIGH, measure, type Picture, rail, WIDE, word } from './tools.ts';

/** Speed over distance: held while nothing happens, then the brake building up, then full. */
export const brakingCurve: Picture = (say) => [
  lineShape('ink', 40, 170, 450, 170),
  lineShape('ink', 40, 170, 40, 24),
  pathShape('cautious', 'M40,60H170Q230,62 280,88Q360,128 410,170H40Z'),
  pathShape('bold', 'M40,60H170Q230,62 280,88Q360,128 410,170'),
  lineShape('dotted', 120, 60, 120, 170),
  lineShape('dotted', 170, 60, 170, 170),
  lineShape('dotted', 280, 88, 280, 170),
  word(44, 50, say('speed'), 'start'),
  word(80, 90, say('reaction')),
  word(146, 118, say('dead-time')),
  word(226, 146, say('build-up')),
  word(378, 110, say('deceleration'), 'start'),
  measure(40, 184, 410, 184, say('distance'), 0, 18),
];

/** The same without parts: one speed, one distance. */
export const plainStop: Picture = (say) => [
  lineShape('ink', 40, 165, 450, 165),
  lineShape('ink', 40, 165, 40, 24),
  pathShape('cautious', 'M40,50Q330,60 410,165H40Z'),
  pathShape('bold', 'M40,50Q330,60 410,165'),
  word(50, 42, say('speed'), 'start'),
  word(340, 74, say('deceleration'), 'start'),
  measure(40, 180, 410, 180, say('distance'), 0, 18),
];

export const sightStop: Picture = (say) => [
  rail(120),
  car(30, 120, 90),
  lineShape('dotted', 120, 40, 120, 150),
  disc(430, 76, 8, 'forbids'),
  lineShape('ink', 430, 84, 430, 120),
  arrow(126, 60, 418, 72, say('distance'), 0, -10),
  measure(120, 140, 240, 140, say('reaction-distance')),
  measure(240, 172, 426, 172, say('braking-distance')),
  arrow(40, 66, 104, 66, say('speed')),
];

/** Speed over time, falling by itself. */
export const coasting: Picture = (say) => [
  lineShape('ink', 50, 160, 450, 160),
  lineShape('ink', 50, 160, 50, 24),
  pathShape('bold', 'M50,46L410,112'),
  lineShape('dotted', 50, 112, 410, 112),
  lineShape('dotted', 410, 112, 410, 160),
  word(60, 38, say('from'), 'start'),
  word(418, 106, say('to'), 'start'),
  measure(50, 176, 410, 176, say('time'), 0, 18),
  word(230, 60, say('resistance'), 'start'),
];

export const rolling: Picture = (say) => [
  rail(140),
  car(110, 140, 110),
  arrow(226, 104, 286, 104, say('speed')),
  arrow(102, 126, 30, 126, say('resistance'), -8, -10),
  measure(110, 166, 440, 166, say('distance'), 0, 20),
];

/** A vehicle on a grade: rise over run, and what the grade pulls. */
export const onGrade: Picture = (say) => [
  pathShape('earth', 'M40,170L440,170L440,80Z'),
  lineShape('rail', 40, 170, 440, 80),
  shape('g', { transform: 'translate(190,137) rotate(-12.7)' }, [car(0, 0, 110)]),
  arrow(188, 112, 122, 126, say('force'), -8, -12),
  word(240, 74, say('mass')),
  word(300, 160, say('grade')),
  word(446, 130, say('rise'), 'end'),
];

export const riseRun: Picture = (say) => [
  pathShape('earth', 'M40,160L420,160L420,60Z'),
  lineShape('rail', 40, 160, 420, 60),
  measure(40, 176, 420, 176, say('run'), 0, 20),
  measure(438, 160, 438, 60, say('rise'), -46, 0),
  word(170, 112, say('grade'), 'end'),
];

export const runaway: Picture = (say) => [
  pathShape('earth', 'M40,70L440,160L440,180L40,180Z'),
  lineShape('rail', 40, 70, 440, 160),
  shape('g', { transform: 'translate(70,76) rotate(12.7)' }, [car(0, 0, 80)]),
  shape('g', { transform: 'translate(320,132) rotate(12.7)' }, [car(0, 0, 80)]),
  arrow(398, 116, 456, 128, say('speed'), -16, -16),
  measure(84, 100, 330, 156, say('distance'), -20, 22),
  word(190, 176, say('fall')),
  word(66, 34, say('start-speed'), 'start'),
];

/** Two vehicles and what goes through the coupler between them. */
export const coupler: Picture = (say) => [
  rail(150),
  car(40, 150, 130),
  car(290, 150, 130),
  group({}, [lineShape('bold', 170, 122, 205, 122), lineShape('bold', 255, 122, 290, 122)]),
  arrow(215, 122, 180, 122),
  arrow(245, 122, 280, 122),
  word(230, 106, say('force')),
  word(105, 92, say('mass-behind')),
  arrow(320, 84, 390, 84, say('acceleration')),
];

export const gyration: Picture = (say) => [
  disc(150, 105, 82),
  disc(150, 105, 54, 'seat'),
  disc(150, 105, 6, 'solid'),
  measure(150, 105, 208, 47, say('wheel-radius'), 96, -10),
  measure(150, 105, 111, 143, say('gyration'), -46, 30),
  arrow(300, 150, 380, 150, say('speed')),
  word(340, 90, say('mass')),
  rail(188),
];

/** Stretches of a line end to end, between two trains. */
export const headway: Picture = (say) => [
  rail(120),
  car(24, 120, 70),
  car(390, 120, 70, 22, 'engine'),
  measure(94, 140, 160, 140, say('sighting'), 0, 18),
  measure(160, 140, 240, 140, say('braking'), 0, 18),
  measure(240, 140, 350, 140, say('block'), 0, 18),
  measure(350, 140, 460, 140, say('train-length'), -8, 18),
  lineShape('ink', 240, 120, 240, 84),
  disc(240, 78, 7, 'open'),
  arrow(30, 66, 90, 66, say('speed'), 30, -8),
  word(330, 66, say('headway')),
];

export const flag: Picture = (say) => [
  rail(130),
  car(350, 130, 100),
  lineShape('ink', 170, 130, 170, 70),
  rectShape('forbids', 142, 70, 28, 20),
  measure(170, 150, 350, 150, say('distance'), 0, 18),
  measure(60, 180, 170, 180, say('sight'), 0, 18),
  arrow(24, 92, 70, 92, say('stop'), 20, -10),
];

export const gapOfTime: Picture = (say) => [
  rail(130),
  car(30, 130, 90, 22, 'engine'),
  car(340, 130, 100),
  measure(120, 150, 340, 150, say('gap'), 0, 18),
  arrow(126, 96, 180, 96, say('speed'), 10, -10),
  word(270, 90, say('time')),
];

/** An engine and what it can take behind it. */
export const hauled: Picture = (say) => [
  pathShape('earth', `M20,160L460,128V${HIGH - 30}H20Z`),
  lineShape('rail', 20, 160, 460, 128),
  shape('g', { transform: 'translate(30,159) rotate(-4.2)' }, [
    car(0, 0, 84),
    car(96, 0, 84),
    car(192, 0, 84),
    car(296, 0, 104, 34, 'engine'),
  ]),
  arrow(412, 80, 464, 76, say('pull'), -14, -14),
  word(150, 84, say('trailing')),
  word(352, 70, say('engine'), 'end'),
  word(WIDE / 2, 186, say('grade')),
];

export const drivenWheel: Picture = (say) => [
  disc(220, 96, 68),
  disc(220, 96, 6, 'solid'),
  rail(164),
  arrow(220, 26, 220, 88, say('load'), 62, -18),
  arrow(226, 158, 330, 158, say('force'), 40, -10),
  word(160, 186, say('adhesion')),
];

export const pullAtSpeed: Picture = (say) => [
  lineShape('ink', 50, 165, 450, 165),
  lineShape('ink', 50, 165, 50, 20),
  pathShape('bold', 'M90,30Q120,112 220,132T440,152'),
  lineShape('dotted', 150, 112, 150, 165),
  lineShape('dotted', 50, 112, 150, 112),
  word(60, 104, say('force'), 'start'),
  word(156, 184, say('speed'), 'start'),
  word(240, 110, say('power'), 'start'),
];
