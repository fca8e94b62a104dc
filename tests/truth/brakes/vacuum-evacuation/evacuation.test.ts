import { describe, it } from 'vitest';
import { drawDownTime } from '../../../../engine/things/brake/vessel.ts';
import { printedIn } from '../../../support/measured.ts';

const pages = printedIn(import.meta.url, 'B');

describe('drawing a vessel down, published examples', () => {
  it.each([
    [500, 6.9, 0.05],
    [100, 23, 0.5],
    [10, 46, 0.5],
  ])('1 m³ at 0.1 m³/s from 1,000 to %d mbar', (to, seconds, half) => {
    pages.figure(`to ${to} mbar`, drawDownTime(1, 0.1, 100_000, to * 100), seconds, half, 's');
  });

  it('750 ft³ from 760 to 150 Torr takes 405 ft³/min three minutes', () => {
    const cubicFoot = 0.3048 ** 3;
    const time = drawDownTime(750 * cubicFoot, (405 * cubicFoot) / 60, 760, 150);
    pages.figure('750 ft³', time, 180, 0.002 * 180, 's');
  });

  it('1,000 m³ to 200 mbar in ten minutes needs 160 m³/min', () => {
    const time = drawDownTime(1000, 160 / 60, 100_000, 20_000);
    pages.figure('1,000 m³', time, 600, 0.006 * 600, 's');
  });
});
