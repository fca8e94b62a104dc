/**
 * Draws the brake kinds for their pages: `docs/brakes/<kind>.svg`. Plain schematics on paper: air lines thick,
 * mechanical parts thin, every part named. Run with `npx tsx scripts/brake-drawings.ts`; a test holds the
 * drawings to this script.
 */
import { writeFileSync } from 'node:fs';
import type { BrakeKind } from '../engine/vehicle/types.ts';

const INK = '#22303a';
const PAPER = '#fbf9f3';
const SOFT = '#8a949b';
const AIR = '#2c6e8f';
const WIDTH = 760;
const HEIGHT = 320;
const RAIL = 284;

const text = (x: number, y: number, words: string, anchor = 'middle', size = 13): string =>
  `<text x="${x}" y="${y}" text-anchor="${anchor}" font-size="${size}">${words}</text>`;
const line = (points: readonly (readonly [number, number])[], stroke = INK, width = 2, dash = ''): string =>
  `<polyline points="${points.map((p) => p.join(',')).join(' ')}" fill="none" stroke="${stroke}" stroke-width="${width}"${dash ? ` stroke-dasharray="${dash}"` : ''}/>`;
const box = (x: number, y: number, w: number, h: number, r = 0, fill = PAPER): string =>
  `<rect x="${x}" y="${y}" width="${w}" height="${h}" rx="${r}" fill="${fill}" stroke="${INK}" stroke-width="2"/>`;
const disc = (x: number, y: number, r: number, fill = PAPER): string =>
  `<circle cx="${x}" cy="${y}" r="${r}" fill="${fill}" stroke="${INK}" stroke-width="2"/>`;
const pipe = (...points: (readonly [number, number])[]): string => line(points, AIR, 4);
const arrow = (x: number, y: number, dx: number, dy: number): string => {
  const [ex, ey] = [x + dx, y + dy];
  const size = 6 / Math.hypot(dx, dy);
  const [ux, uy] = [dx * size, dy * size];
  const head = `M${ex},${ey} L${ex - ux - uy},${ey - uy + ux} L${ex - ux + uy},${ey - uy - ux} Z`;
  return `${line(
    [
      [x, y],
      [ex, ey],
    ],
    INK,
    1.5,
  )}<path d="${head}" fill="${INK}"/>`;
};
/** Two triangles point to point. */
const valve = (x: number, y: number): string =>
  `<path d="M${x - 12},${y - 9} L${x + 12},${y + 9} L${x + 12},${y - 9} L${x - 12},${y + 9} Z" fill="${PAPER}" stroke="${INK}" stroke-width="2"/>`;

/** Wheel with a block on its left, and the lever above that presses it. */
const wheelAndBlock = (x: number): string =>
  [
    disc(x, RAIL - 34, 34),
    disc(x, RAIL - 34, 4, INK),
    `<path d="M${x - 38},${RAIL - 58} q-12,24 0,48 l-12,0 q-12,-24 0,-48 Z" fill="${SOFT}" stroke="${INK}" stroke-width="2"/>`,
    text(x - 56, RAIL + 20, 'block', 'middle', 12),
  ].join('');

/** Lever with its pivot: the rod pulls its top, its foot presses the block. */
const lever = (x: number, rodY: number): string =>
  [
    line(
      [
        [x - 48, RAIL - 34],
        [x - 62, rodY],
      ],
      INK,
      4,
    ),
    disc(x - 56, (RAIL - 34 + rodY) / 2, 4, PAPER),
  ].join('');

/** Lever hung at its top: a rod drawn to the right presses the block. */
const hungLever = (x: number, rodY: number): string =>
  line(
    [
      [x - 48, RAIL - 34],
      [x - 62, rodY - 34],
    ],
    INK,
    4,
  ) + disc(x - 62, rodY - 34, 4, PAPER);

/** A cylinder lying, rod to the left; the working side on the right when it pushes. */
const cylinder = (x: number, y: number, label: string): string =>
  [
    box(x, y - 22, 84, 44),
    line(
      [
        [x + 34, y - 22],
        [x + 34, y + 22],
      ],
      INK,
      5,
    ),
    line(
      [
        [x + 34, y],
        [x - 40, y],
      ],
      INK,
      3,
    ),
    line(
      [
        [x + 6, y - 10],
        [x + 12, y + 10],
        [x + 18, y - 10],
        [x + 24, y + 10],
        [x + 30, y - 10],
      ],
      SOFT,
      1.5,
    ),
    text(x + 46, y + 38, label, 'middle', 12),
  ].join('');

const vehicle = (x: number, w: number, name: string): string =>
  [
    box(x, 60, w, 92, 6),
    text(x + w / 2, 80, name, 'middle', 14),
    line(
      [
        [x + 8, 152],
        [x + w - 8, 152],
      ],
      INK,
      3,
    ),
  ].join('');

const couplers = (): string =>
  [
    line(
      [
        [240, 168],
        [316, 168],
      ],
      INK,
      3,
    ),
    disc(278, 168, 4),
    text(278, 186, 'coupler and chain', 'middle', 11),
  ].join('');

/** Hose between engine and car with its coupling. */
const hose = (words = 'hose'): string =>
  [
    `<path d="M232,206 Q278,238 324,206" fill="none" stroke="${AIR}" stroke-width="4"/>`,
    disc(278, 222, 5),
    text(278, 244, words, 'middle', 12),
  ].join('');

const track = (): string =>
  line(
    [
      [10, RAIL],
      [WIDTH - 10, RAIL],
    ],
    INK,
    4,
  );
const bothVehicles = (): string =>
  [
    vehicle(20, 212, 'engine'),
    vehicle(324, 416, 'car'),
    couplers(),
    track(),
    disc(70, RAIL - 26, 26),
    disc(180, RAIL - 26, 26),
  ].join('');
const steering = (words: string): string =>
  [box(34, 98, 70, 36, 4), text(69, 120, words, 'middle', 12)].join('');
const source = (words: string): string =>
  [box(128, 92, 92, 46, 16), text(174, 119, words, 'middle', 12)].join('');
const enginePipe = (): string =>
  [
    pipe([128, 116], [116, 116], [116, 206], [232, 206]),
    valve(116, 176),
    text(100, 180, "driver's valve", 'end', 11),
  ].join('');
const carPipe = (end = 560): string =>
  [pipe([324, 206], [end, 206]), text(500, 224, 'pipe', 'middle', 12)].join('');
const carBrake = (label = 'cylinder'): string =>
  [
    wheelAndBlock(410),
    lever(410, 126),
    line(
      [
        [348, 126],
        [420, 126],
      ],
      INK,
      3,
    ),
    cylinder(460, 126, label),
  ].join('');

const drawings: Readonly<Record<BrakeKind, readonly string[]>> = {
  'engine-only': [
    bothVehicles(),
    steering('brake'),
    text(174, 118, 'hand, steam or motor', 'middle', 11),
    wheelAndBlock(180),
    disc(400, RAIL - 34, 34),
    disc(660, RAIL - 34, 34),
    text(532, 122, 'cars run free: only the couplers hold them', 'middle', 14),
  ],
  'straight-air': [
    bothVehicles(),
    source('reservoir'),
    enginePipe(),
    hose(),
    carPipe(),
    carBrake(),
    pipe([560, 206], [560, 126], [544, 126]),
    text(640, 130, 'air in: brake on', 'middle', 12),
    arrow(600, 150, -36, -12),
  ],
  'automatic-air': [
    bothVehicles(),
    source('reservoir'),
    enginePipe(),
    hose(),
    carPipe(600),
    carBrake(),
    box(580, 160, 46, 34, 4),
    text(603, 181, 'triple', 'middle', 12),
    pipe([600, 206], [600, 194]),
    pipe([590, 160], [590, 126], [544, 126]),
    box(646, 96, 82, 54, 18),
    text(687, 120, "car's", 'middle', 12),
    text(687, 136, 'reservoir', 'middle', 12),
    pipe([626, 177], [687, 177], [687, 150]),
    text(640, 224, 'pipe falls: brake on', 'middle', 12),
  ],
  'simple-vacuum': [
    bothVehicles(),
    `<path d="M140,98 L208,110 L208,122 L140,134 Z" fill="${PAPER}" stroke="${INK}" stroke-width="2"/>`,
    text(176, 148, 'ejector', 'middle', 12),
    arrow(124, 100, 14, 6),
    pipe([140, 116], [116, 116], [116, 206], [232, 206]),
    valve(116, 176),
    text(100, 180, "driver's valve", 'end', 11),
    hose(),
    carPipe(470),
    wheelAndBlock(410),
    lever(410, 126),
    line(
      [
        [348, 126],
        [420, 126],
      ],
      INK,
      3,
    ),
    cylinder(460, 126, 'cylinder'),
    pipe([470, 206], [470, 148]),
    text(644, 128, 'open to the air', 'middle', 12),
    arrow(600, 124, -48, 0),
    text(640, 224, 'vacuum in the pipe: brake on', 'middle', 12),
  ],
  'automatic-vacuum': [
    bothVehicles(),
    `<path d="M140,98 L208,110 L208,122 L140,134 Z" fill="${PAPER}" stroke="${INK}" stroke-width="2"/>`,
    text(176, 148, 'ejector or pump', 'middle', 12),
    arrow(124, 100, 14, 6),
    pipe([140, 116], [116, 116], [116, 206], [232, 206]),
    valve(116, 176),
    text(100, 180, "driver's valve", 'end', 11),
    hose(),
    carPipe(536),
    wheelAndBlock(410),
    lever(410, 126),
    line(
      [
        [348, 126],
        [420, 126],
      ],
      INK,
      3,
    ),
    cylinder(460, 126, ''),
    pipe([536, 206], [536, 148]),
    text(546, 184, 'train side', 'start', 12),
    pipe([470, 104], [470, 92], [646, 92]),
    box(646, 68, 82, 50, 18),
    text(687, 96, 'chamber', 'middle', 12),
    disc(590, 126, 9, SOFT),
    pipe([544, 126], [580, 126]),
    pipe([600, 126], [687, 126], [687, 118]),
    text(600, 146, 'ball valve: out only', 'start', 11),
    text(640, 224, 'air let into the pipe: brake on', 'middle', 12),
  ],
  electric: [
    bothVehicles(),
    source('battery'),
    steering('controller'),
    line(
      [
        [104, 116],
        [128, 116],
      ],
      INK,
      2,
    ),
    line(
      [
        [116, 134],
        [116, 206],
        [232, 206],
      ],
      INK,
      2,
      '6 3',
    ),
    `<path d="M232,206 Q278,238 324,206" fill="none" stroke="${INK}" stroke-width="2" stroke-dasharray="6 3"/>`,
    text(278, 244, 'cable and plug', 'middle', 12),
    line(
      [
        [324, 206],
        [500, 206],
        [500, 150],
      ],
      INK,
      2,
      '6 3',
    ),
    wheelAndBlock(410),
    lever(410, 126),
    line(
      [
        [348, 126],
        [456, 126],
      ],
      INK,
      3,
    ),
    box(456, 102, 90, 48, 4),
    text(501, 130, 'magnet', 'middle', 12),
    text(640, 108, 'as wired:', 'middle', 13),
    text(640, 126, 'current on: brake on, or', 'middle', 12),
    text(640, 142, 'current off: spring brakes', 'middle', 12),
  ],
  mechanical: [
    bothVehicles(),
    wheelAndBlock(410),
    hungLever(410, 166),
    line(
      [
        [355, 166],
        [600, 166],
      ],
      INK,
      3,
    ),
    disc(640, 166, 6),
    line(
      [
        [600, 166],
        [640, 166],
      ],
      INK,
      5,
    ),
    line(
      [
        [640, 166],
        [640, 40],
      ],
      INK,
      4,
    ),
    `<ellipse cx="640" cy="36" rx="44" ry="10" fill="none" stroke="${INK}" stroke-width="4"/>`,
    text(596, 26, 'handwheel', 'end', 12),
    text(654, 110, 'screw', 'start', 12),
    text(500, 184, 'rod', 'middle', 12),
    text(532, 112, 'worked by a person on this car', 'middle', 13),
  ],
  surge: [
    bothVehicles(),
    wheelAndBlock(430),
    hungLever(430, 168),
    line(
      [
        [316, 168],
        [368, 168],
      ],
      INK,
      5,
    ),
    line(
      [
        [324, 158],
        [332, 178],
        [340, 158],
        [348, 178],
        [356, 158],
      ],
      SOFT,
      2,
    ),
    text(346, 146, 'spring', 'middle', 12),
    arrow(216, 196, 60, 0),
    text(206, 200, 'push', 'end', 12),
    text(560, 118, 'coupler pushed in: brake on', 'middle', 13),
    text(560, 138, 'pulled or parted: off', 'middle', 13),
    disc(660, RAIL - 34, 34),
  ],
};

const title: Readonly<Record<BrakeKind, string>> = {
  'engine-only': 'Brake on the engine only',
  'straight-air': 'Straight air, drawn released',
  'automatic-air': 'Automatic air, drawn released',
  'simple-vacuum': 'Simple vacuum, drawn released',
  'automatic-vacuum': 'Automatic vacuum, drawn released',
  electric: 'Electric brake on the cars',
  mechanical: 'Hand brake of a car',
  surge: 'Surge brake',
};

export function brakeDrawing(kind: BrakeKind): string {
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${WIDTH} ${HEIGHT}" role="img" aria-label="${title[kind]}" font-family="sans-serif" fill="${INK}">
<rect width="${WIDTH}" height="${HEIGHT}" fill="${PAPER}"/>
${text(20, 34, title[kind], 'start', 18)}
${drawings[kind].join('\n')}
</svg>
`;
}

export const drawnKinds = Object.keys(drawings) as BrakeKind[];

if (process.argv[1]?.endsWith('brake-drawings.ts')) {
  for (const kind of drawnKinds) {
    writeFileSync(new URL(`../docs/brakes/${kind}.svg`, import.meta.url), brakeDrawing(kind));
  }
}
