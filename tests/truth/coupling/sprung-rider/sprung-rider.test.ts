import { it } from 'vitest';
import { assumedValues } from '../../../../data/index.ts';
import { printedIn } from '../../../support/measured.ts';

const handbook = printedIn(import.meta.url, 'B');
const remembered = printedIn(import.meta.url, 'C');

it('a rider is at most as stiff as vertically: 31.4 rad/s, damping 0.475', () => {
  const { share, frequency, damping } = assumedValues.sprungRider;
  handbook.figure('frequency', 2 * Math.PI * frequency.high, 31.4, 0.05, 'rad/s');
  handbook.figure('damping', damping.value, 0.475, 0);
  remembered.bound('share that moves', share.high, 0, 43.4 / 50.1);
});
