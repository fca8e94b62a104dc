import { describe, expect, it } from 'vitest';
import { GRAVITY } from '../../../../engine/base/constants.ts';
import { emptyRoll, noTraffic, roll } from '../../../../engine/questions/part/roll.ts';
import { printedIn } from '../../../support/measured.ts';
import { onPlane } from '../../../support/plane.ts';

const START = 1200;
const law = printedIn(import.meta.url, 'D');

describe('a tail on an even grade, against the closed form', () => {
  it.each([
    [0.01, 0.004, 0, 2],
    [0.02, 0.006, 0.08, 1],
    [0.03, 0.01, 0.05, 3],
    [0.05, 0.012, 0.12, 4],
    [0.08, 0.005, 0.02, 2],
  ])(
    'runs back down %f with resistance %f, rotating share %f, parted at %f m/s',
    (grade, rolling, share, v0) => {
      const { tail, basis } = onPlane(grade, rolling, 0, share);
      const out = emptyRoll();
      const node = Math.round(START / basis.grid.step);
      roll(tail, node, v0, noTraffic, out);
      const up = (v0 * v0 * (1 + share)) / (2 * GRAVITY * (grade + rolling));
      law.figure('way up', out.mostAt - START, up, 5e-7, 'm');
      // From there back until its rear is at the beginning of the line, told at the last whole cell.
      const way = START + up - out.at;
      const v = Math.sqrt((2 * GRAVITY * (grade - rolling) * way) / (1 + share));
      expect(out.outcome).toBe('leaves-line');
      expect(out.at - tail.rear).toBeLessThan(basis.grid.step);
      law.figure('speed back', out.endSpeed, v, 5e-7 * v, 'm/s');
      const time = (v0 * (1 + share)) / (GRAVITY * (grade + rolling)) + (2 * way) / v;
      law.figure('time', out.time, time, 5e-5 * time, 's');
    },
  );

  it('comes near the speed that air allows, by the closed form with v²', () => {
    const [grade, rolling, square] = [0.04, 0.008, 12];
    const { tail, basis, context } = onPlane(grade, rolling, square);
    const out = emptyRoll();
    roll(tail, Math.round(START / basis.grid.step), 0, noTraffic, out);
    const mass = context.loaded.vehicles.slice(1).reduce((sum, v) => sum + v.mass, 0);
    const k = (square * 3) / mass;
    const a = GRAVITY * (grade - rolling);
    const v = Math.sqrt((a / k) * (1 - Math.exp(-2 * k * (START - out.at))));
    law.figure('speed that air allows', out.endSpeed, v, 5e-5 * v, 'm/s');
  });

  it('stays where the resistance holds the grade', () => {
    const { tail, basis } = onPlane(0.008, 0.01);
    const out = emptyRoll();
    roll(tail, Math.round(START / basis.grid.step), 2, noTraffic, out);
    expect(out.outcome).toBe('stands');
    expect(out.turns).toBe(0);
  });
});
