/** Pictures of cylinders, levers, air vessels, chains and buffers. */
import { group, lineShape, pathShape, rectShape, shape } from '../strip/scene.ts';
import { arrow, car, disc, measure, type Picture, rail, spring, vessel, word } from './tools.ts';

export const steamCylinder: Picture = (say) => [
  rectShape('body', 30, 90, 130, 54),
  rectShape('solid', 84, 92, 10, 50),
  lineShape('bold', 94, 117, 210, 117),
  lineShape('bold', 210, 117, 330, 92),
  disc(340, 118, 66),
  disc(340, 118, 6, 'solid'),
  disc(330, 92, 5, 'solid'),
  rail(184),
  measure(44, 160, 146, 160, say('stroke'), 0, 18),
  measure(18, 90, 18, 144, say('bore'), 40, -34),
  word(130, 80, say('pressure')),
  word(340, 40, say('wheel')),
  arrow(390, 178, 460, 178, say('force'), 4, -10),
];

/** Cylinder, lever and block on a wheel. */
export const rigging: Picture = (say) => [
  rectShape('body', 20, 118, 96, 50),
  rectShape('solid', 70, 120, 8, 46),
  lineShape('bold', 78, 143, 190, 143),
  lineShape('bold', 190, 30, 190, 160),
  disc(190, 78, 5, 'solid'),
  lineShape('bold', 190, 40, 268, 62),
  rectShape('engine', 264, 46, 16, 44),
  disc(350, 84, 70),
  disc(350, 84, 6, 'solid'),
  rail(154, 260, 460),
  measure(20, 182, 116, 182, say('bore'), 0, 18),
  word(68, 108, say('pressure')),
  word(198, 118, say('lever'), 'start'),
  word(292, 30, say('friction'), 'end'),
  arrow(366, 148, 300, 148, say('force'), -2, -12),
];

export const handBrake: Picture = (say) => [
  lineShape('bold', 60, 34, 140, 34),
  lineShape('bold', 100, 34, 100, 150),
  ...[70, 84, 98, 112].map((y) => lineShape('ink', 92, y + 4, 108, y - 2)),
  arrow(140, 44, 176, 44, say('pull'), 44, 4),
  measure(100, 20, 140, 20, say('radius'), 48, 4),
  measure(82, 84, 82, 98, say('lead'), -34, 4),
  lineShape('bold', 100, 150, 260, 150),
  disc(216, 150, 5, 'solid'),
  lineShape('bold', 260, 150, 260, 96),
  rectShape('engine', 252, 66, 16, 44),
  disc(340, 88, 68),
  word(176, 176, say('lever')),
  arrow(258, 60, 282, 68),
  word(250, 50, say('blocks')),
];

export const blockOnWheel: Picture = (say) => [
  disc(250, 104, 78),
  disc(250, 104, 6, 'solid'),
  rectShape('engine', 156, 76, 16, 58),
  rail(182),
  arrow(96, 104, 152, 104),
  word(148, 64, say('friction'), 'end'),
  arrow(336, 60, 380, 96, say('speed'), 30, -16),
];

/** A retarding force against a weight. */
export const ratio: Picture = (say) => [
  rail(150),
  car(140, 150, 190, 40),
  arrow(136, 144, 66, 144, say('force'), -4, -12),
  arrow(235, 24, 235, 88, say('mass'), 56, -10),
  word(240, 184, say('ratio')),
];

export const orifice: Picture = (say) => [
  vessel(40, 50, 190, 110, say('pressure')),
  rectShape('paper', 224, 96, 12, 18),
  arrow(230, 105, 320, 105, say('free-air'), 30, -12),
  measure(246, 96, 246, 114, say('diameter'), 40, 34),
  word(400, 150, say('downstream')),
];

export const twoVessels: Picture = (say) => [
  vessel(30, 46, 190, 104, say('reservoir')),
  vessel(320, 66, 130, 72, say('cylinder')),
  lineShape('bold', 220, 102, 320, 102),
  disc(270, 102, 9, 'open'),
  word(125, 176, say('pressure')),
  word(385, 162, say('cylinder-pressure')),
  word(270, 40, say('equalised')),
];

export const filling: Picture = (say) => [
  vessel(220, 46, 210, 110, say('volume')),
  lineShape('bold', 40, 102, 220, 102),
  rectShape('paper', 214, 94, 12, 16),
  arrow(60, 88, 160, 88, say('supply'), 0, -8),
  measure(200, 93, 200, 111, say('diameter'), -30, 34),
  word(325, 84, say('to')),
  word(325, 140, say('from')),
];

export const emptying: Picture = (say) => [
  vessel(40, 46, 210, 110, say('volume')),
  lineShape('bold', 250, 102, 360, 102),
  arrow(300, 102, 430, 102),
  measure(270, 92, 270, 112, say('diameter'), 40, 34),
  word(145, 84, say('from')),
  word(145, 140, say('to')),
];

export const pumped: Picture = (say) => [
  vessel(230, 50, 200, 104, say('volume')),
  disc(110, 102, 40, 'body'),
  lineShape('bold', 150, 102, 230, 102),
  arrow(20, 102, 66, 102),
  word(110, 106, say('free-air')),
  word(330, 86, say('from')),
  word(330, 140, say('to')),
];

export const sucked: Picture = (say) => [
  vessel(40, 50, 200, 104, say('volume')),
  disc(360, 102, 40, 'body'),
  lineShape('bold', 240, 102, 320, 102),
  arrow(402, 102, 456, 102),
  word(360, 106, say('suction')),
  word(140, 86, say('from')),
  word(140, 140, say('to')),
];

export const chamber: Picture = (say) => [
  shape('rect', { class: 'body', x: 150, y: 20, width: 170, height: 160, rx: 20 }),
  rectShape('solid', 152, 112, 166, 10),
  lineShape('bold', 235, 122, 235, 196),
  word(235, 72, say('chamber')),
  word(192, 152, say('swept')),
  word(334, 70, say('left'), 'start'),
  word(334, 150, say('vacuum'), 'start'),
  arrow(136, 150, 136, 122),
];

export const airColumn: Picture = (say) => [
  pathShape('earth', 'M20,180L160,180L260,60L330,120L460,180Z'),
  lineShape('fine', 20, 180, 460, 180),
  measure(260, 60, 260, 180, say('altitude'), -62, 20),
  disc(260, 52, 6, 'solid'),
  word(276, 46, say('pressure'), 'start'),
  word(276, 72, say('vacuum'), 'start'),
];

const link = (x: number, y: number, wide: number) =>
  shape('rect', { class: 'ink', x, y: y - 11, width: wide, height: 22, rx: 11 });

export const chainInLine: Picture = (say) => [
  rectShape('body', 10, 66, 46, 64),
  rectShape('body', 424, 66, 46, 64),
  pathShape('bold', 'M56,98H86q14,0 14,12t-12,10'),
  ...[100, 136, 172, 208, 244, 280].map((x) => link(x, 104, 44)),
  shape('rect', { class: 'bold', x: 320, y: 90, width: 52, height: 28, rx: 8 }),
  lineShape('bold', 372, 104, 424, 104),
  word(84, 62, say('hook')),
  word(200, 140, say('chain')),
  word(346, 76, say('link')),
  word(410, 156, say('attachment')),
];

export const chainSize: Picture = (say) => [
  ...[40, 140, 240, 340].map((x) =>
    shape('rect', { class: 'bold', x, y: 70, width: 116, height: 58, rx: 29 }),
  ),
  measure(196, 128, 196, 140, say('size'), 0, 22),
  arrow(40, 99, 8, 99),
  arrow(456, 99, 476, 99),
  word(240, 44, say('working-load')),
];

export const snatch: Picture = (say) => [
  rail(150),
  car(20, 150, 130),
  car(330, 150, 130),
  pathShape('bold', 'M150,122q45,44 90,0'),
  spring(240, 330, 122),
  measure(150, 172, 240, 172, say('slack'), 0, 18),
  word(290, 100, say('stiffness')),
  word(86, 90, say('other-mass')),
  word(396, 90, say('mass')),
  arrow(396, 66, 452, 66, say('speed'), -6, -8),
];

export const stretched: Picture = (say) => [
  rail(150),
  car(20, 150, 130),
  car(330, 150, 130),
  pathShape('bold', 'M150,112q45,44 90,0'),
  shape('rect', { class: 'bold', x: 240, y: 104, width: 90, height: 16, rx: 8 }),
  measure(150, 172, 240, 172, say('slack'), 0, 18),
  measure(240, 172, 330, 172, say('length'), 0, 18),
  word(286, 92, say('breaking')),
  arrow(396, 66, 452, 66, say('pull'), -6, -8),
];

export const twoChains: Picture = (say) => [
  rail(150),
  car(20, 150, 130),
  car(330, 150, 130),
  pathShape('bold', 'M150,112q90,26 180,0'),
  pathShape('bold', 'M150,130q90,64 180,0'),
  word(240, 100, say('slack')),
  measure(240, 125, 240, 162, say('slack-difference'), 0, 30),
  word(86, 90, say('other-mass')),
  word(396, 90, say('mass')),
  arrow(396, 66, 452, 66, say('speed'), -6, -8),
];

export const collision: Picture = (say) => [
  rail(150),
  car(20, 150, 130),
  car(330, 150, 130),
  spring(150, 330, 122),
  arrow(60, 76, 130, 76, say('speed'), 0, -10),
  arrow(370, 76, 420, 76, say('other-speed'), 0, -10),
  word(84, 186, say('mass')),
  word(396, 186, say('other-mass')),
  word(240, 100, say('stiffness')),
];

export const bufferStop: Picture = (say) => [
  rail(150),
  car(40, 150, 150),
  spring(190, 360, 122),
  group({}, [rectShape('engine', 360, 84, 16, 66), lineShape('bold', 376, 92, 420, 150)]),
  arrow(70, 76, 150, 76, say('speed'), 0, -10),
  word(114, 186, say('mass')),
  word(280, 98, say('stiffness')),
  word(280, 186, say('squeeze')),
];

export const bar: Picture = (say) => [
  rectShape('body', 20, 60, 60, 84),
  rectShape('engine', 80, 94, 260, 16),
  car(340, 144, 120),
  measure(80, 130, 340, 130, say('length'), 0, 18),
  measure(210, 94, 210, 110, say('diameter'), 0, -26),
  arrow(380, 70, 440, 70, say('speed'), 0, -10),
  word(400, 184, say('mass')),
];
