import { describe, it } from 'vitest';
import { assumedValues } from '../../../../data/index.ts';
import { printedIn } from '../../../support/measured.ts';

const read = printedIn(import.meta.url, 'A');
const remembered = printedIn(import.meta.url, 'C');
const instructor = printedIn(import.meta.url, 'B');

describe('a driver who eases', () => {
  const { utilisation, notice } = assumedValues.easing;

  it('uses the share that half of the riders tested reached, and at most what a machine must reach', () => {
    read.figure('share used by half of the riders', utilisation.value, 0.56, 0.005);
    remembered.figure('share that a machine must reach', utilisation.high, 0.75, 0);
    // Novices: 0.5 of what the machine can do.
    instructor.bound('share used by novices', utilisation.low, 0, 0.5);
  });

  it('feels the slide between an expected signal and an unexpected one', () => {
    read.figure('time to notice, middle', notice.value, (0.725 + 1.25) / 2, 0.05, 's');
    read.bound('expected signal', notice.low, 0, 0.7);
    read.bound('unexpected signal', notice.high, 1.25, Infinity);
  });
});
