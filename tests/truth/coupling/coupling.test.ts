import { describe, it } from 'vitest';
import { type Row, type RowBody, runRow } from '../../../engine/motion/row.ts';
import { printedIn } from '../../support/measured.ts';

const body = (mass: number, rolling = 0): RowBody => ({ mass, rolling, starting: rolling });

const openStax = printedIn(new URL('openstax-train/', import.meta.url).href, 'A');
const wolfson = printedIn(new URL('wolfson-9-43/', import.meta.url).href, 'A');
const law = printedIn(new URL('wolfson-9-43/', import.meta.url).href, 'D');

describe('OpenStax, College Physics, chapter 4: two engines and 45 cars', () => {
  it('settles to 0.0500 m/s² and 149,660 N between cars 37 and 38', () => {
    const friction = 7.5e5 / 47;
    const bodies = Array.from({ length: 47 }, (_, i) => body(i < 2 ? 8e4 : 5.5e4, friction));
    const row: Row = {
      bodies,
      couplers: bodies.slice(1).map(() => ({ slack: 0.02, stiffness: 1e7, damping: 5e6, start: 0 })),
      efforts: [0, 1].map((vehicle) => ({ vehicle, force: 4.41e5, dead: 0, rise: 20 })),
      brakes: [],
      head: 0,
      speeds: bodies.map(() => 5),
      time: 240,
    };
    const end = runRow(row);
    const before = runRow({ ...row, time: 230 });
    const gained = (end.speeds[40] - before.speeds[40]) / 10;
    openStax.figure('acceleration', gained, 0.05, 0.0005, 'm/s²');
    // Behind car 37 (index 38) run eight cars.
    openStax.figure('between cars 37 and 38', end.last[38], 149_660, 0.002 * 149_660, 'N');
  });
});

describe('Wolfson, Essential University Physics, 9.43: two cars couple', () => {
  const k = 0.32e6;
  const row: Row = {
    bodies: [body(11_000), body(9_400)],
    // So long a slack that they part again instead of being pulled.
    couplers: [{ slack: 100, stiffness: k, damping: 0, start: -50 }],
    efforts: [],
    brakes: [],
    head: 0,
    speeds: [0, 8.5],
    time: 0.19,
  };
  it('share 3.9 m/s at the greatest compression of 1.07 m', () => {
    const end = runRow({ ...row, time: 2 });
    law.figure('greatest compression', end.push[0] / k, 1.0698, 1.0698e-3, 'm');
    // Without damping each comes away with its start mirrored at the common speed.
    wolfson.figure('together, the one struck', end.speeds[0] / 2, 3.9, 0.05, 'm/s');
    law.figure('together, the one struck', end.speeds[0] / 2, 3.917, 0.01, 'm/s');
    law.figure('together, the striking one', (8.5 + end.speeds[1]) / 2, 3.917, 0.01, 'm/s');
  });
});
