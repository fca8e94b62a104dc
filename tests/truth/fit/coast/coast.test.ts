import { describe, expect, it } from 'vitest';
import { placeAt, roll, wayOf } from '../../../../engine/calibrate/roll.ts';
import type { Line } from '../../../../engine/things/line/types.ts';
import { printedIn } from '../../../support/measured.ts';

const level: Line = {
  name: 'level',
  gauge: 0.19,
  contactWidth: 0.2,
  loop: false,
  length: 400,
  heights: [
    { at: 0, height: 0 },
    { at: 400, height: 0 },
  ],
  heightQuality: 'levelled',
  curves: [],
  cants: [],
  places: [],
  speedLimits: [],
  sights: [],
};
const M = 500;
const printed = printedIn(import.meta.url, 'D');
const tram = printedIn(new URL('../tram-1898/', import.meta.url).href, 'A');

/** From 4 m/s with a deceleration of A + C·v + B·v², m/s². */
function coasted(A: number, C: number, B: number, mark: number) {
  const way = wayOf(level, [{ behind: 0, length: 2, mass: M }], 10, [10 + mark], 100);
  const told = roll(way, { terms: { a: A * M, b: C * M, c: B * M }, inertia: M, curve: 0, grade: 0 }, 4);
  return { ...told, atMark: { time: told.time[way.marks[0]], speed: told.speed[way.marks[0]] }, way, told };
}

describe('a coast to rest on the level', () => {
  it('A + B·v²', () => {
    const told = coasted(0.08, 0, 0.0004, 71.44802);
    printed.figure('time to rest', told.restTime, 48.72722, 5e-4, 's');
    printed.figure('distance to rest', told.rest, 96.2013, 5e-4, 'm');
    printed.figure('time to half speed', told.atMark.time, 23.89192, 5e-4, 's');
    printed.figure('place at that time', placeAt(told.way, told.told, 23.89192), 71.44802, 5e-4, 'm');
    printed.figure('speed there', told.atMark.speed, 2, 5e-6, 'm/s');
  });

  it('A + C·v', () => {
    const told = coasted(0.08, 0.02, 0, 30);
    printed.figure('time to rest, linear', told.restTime, 34.65736, 5e-4, 's');
    printed.figure('distance to rest, linear', told.rest, 61.37056, 5e-4, 'm');
  });

  it('let go from rest down a fall: the fall less the resistance', () => {
    const fall: Line = {
      ...level,
      heights: [
        { at: 0, height: 8 },
        { at: 400, height: 0 },
      ],
    };
    const way = wayOf(fall, [{ behind: 0, length: 2, mass: M }], 10, [60], 10);
    const told = roll(
      way,
      { terms: { a: 0.01 * M * 9.80665, b: 0, c: 0 }, inertia: M, curve: 0, grade: 0 },
      0,
    );
    const a = (0.02 - 0.01) * 9.80665;
    expect(told.speed[way.marks[0]]).toBeCloseTo(Math.sqrt(2 * a * 50), 9);
    expect(told.time[way.marks[0]]).toBeCloseTo(Math.sqrt((2 * 50) / a), 9);
  });

  it('the tram that ran out 376 ft from a known drop', () => {
    const [foot, pound] = [0.3048, 4.4482216152605];
    const mass = 2.77 * 1016.0469;
    const drop = (9364 * foot * pound) / (mass * 9.80665);
    const heights = [
      // Its middle begins one metre down a fall of ten.
      { at: 0, height: drop / 0.9 },
      { at: 18, height: drop / 0.9 },
      { at: 28, height: 0 },
      { at: 400, height: 0 },
    ];
    const way = wayOf({ ...level, heights }, [{ behind: 0, length: 2, mass }], 20, [], 200);
    const told = roll(way, { terms: { a: 24.9 * pound, b: 0, c: 0 }, inertia: mass, curve: 0, grade: 0 }, 0);
    tram.figure('run of the tram', told.rest / foot, 376, 0.5, 'ft');
    tram.figure('resistance per long ton', 24.9 / 2.77, 9, 0.5, 'lb');
  });
});
