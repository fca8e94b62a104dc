/** Parts that the drawings share: wheels, levers, cylinders, vehicles, pipes, hoses. */
import {
  AIR,
  arrow,
  bar,
  box,
  disc,
  INK,
  PAPER,
  pipe,
  RAIL,
  SOFT,
  spring,
  text,
  valve,
  WIDTH,
} from './pen.ts';

/** Wheel with a block on its left, and the lever above that presses it. */
export const wheelAndBlock = (x: number): string =>
  [
    disc(x, RAIL - 34, 34),
    disc(x, RAIL - 34, 4, INK),
    `<path d="M${x - 38},${RAIL - 58} q-12,24 0,48 l-12,0 q-12,-24 0,-48 Z" fill="${SOFT}" stroke="${INK}" stroke-width="2"/>`,
    text(x - 56, RAIL + 20, 'block', 'middle', 12),
  ].join('');

/** Lever with its pivot: the rod pulls its top, its foot presses the block. */
export const lever = (x: number, rodY: number): string =>
  [bar(x - 48, RAIL - 34, x - 62, rodY, 4), disc(x - 56, (RAIL - 34 + rodY) / 2, 4, PAPER)].join('');

/** Lever hung at its top: a rod drawn to the right presses the block. */
export const hungLever = (x: number, rodY: number): string =>
  bar(x - 48, RAIL - 34, x - 62, rodY - 34, 4) + disc(x - 62, rodY - 34, 4, PAPER);

/** A cylinder lying, rod to the left; the working side on the right when it pushes. */
export const cylinder = (x: number, y: number, label: string): string =>
  [
    box(x, y - 22, 84, 44),
    bar(x + 34, y - 22, x + 34, y + 22, 5),
    bar(x + 34, y, x - 40, y, 3),
    spring(x + 6, y, 6, 1.5),
    text(x + 46, y + 38, label, 'middle', 12),
  ].join('');

export const vehicle = (x: number, w: number, name: string): string =>
  [box(x, 60, w, 92, 6), text(x + w / 2, 80, name, 'middle', 14), bar(x + 8, 152, x + w - 8, 152, 3)].join(
    '',
  );

export const couplers = (): string =>
  [bar(240, 168, 316, 168, 3), disc(278, 168, 4), text(278, 186, 'coupler and chain', 'middle', 11)].join('');

/** Hose between engine and car with its coupling. */
export const hose = (words = 'hose'): string =>
  [
    `<path d="M232,206 Q278,238 324,206" fill="none" stroke="${AIR}" stroke-width="4"/>`,
    disc(278, 222, 5),
    text(278, 244, words, 'middle', 12),
  ].join('');

const track = (): string => bar(10, RAIL, WIDTH - 10, RAIL, 4);
export const bothVehicles = (): string =>
  [
    vehicle(20, 212, 'engine'),
    vehicle(324, 416, 'car'),
    couplers(),
    track(),
    disc(70, RAIL - 26, 26),
    disc(180, RAIL - 26, 26),
  ].join('');
export const steering = (words: string): string =>
  [box(34, 98, 70, 36, 4), text(69, 120, words, 'middle', 12)].join('');
export const source = (words: string): string =>
  [box(128, 92, 92, 46, 16), text(174, 119, words, 'middle', 12)].join('');
export const enginePipe = (): string => driversValve([128, 116]).join('');
export const carPipe = (end = 560): string =>
  [pipe([324, 206], [end, 206]), text(500, 224, 'pipe', 'middle', 12)].join('');
/** Wheel, lever, rod and cylinder of the car. */
export const carBrake = (label = 'cylinder'): readonly string[] => [
  wheelAndBlock(410),
  lever(410, 126),
  bar(348, 126, 420, 126, 3),
  cylinder(460, 126, label),
];

/** What makes the vacuum, and the pipe from it by the driver's valve to the hose. */
export const ejector = (words: string): readonly string[] => [
  `<path d="M140,98 L208,110 L208,122 L140,134 Z" fill="${PAPER}" stroke="${INK}" stroke-width="2"/>`,
  text(176, 148, words, 'middle', 12),
  arrow(124, 100, 14, 6),
  ...driversValve([140, 116]),
];

const driversValve = (from: readonly [number, number]): readonly string[] => [
  pipe(from, [116, 116], [116, 206], [232, 206]),
  valve(116, 176),
  text(100, 180, "driver's valve", 'end', 11),
];
