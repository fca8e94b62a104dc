import { it } from 'vitest';
import { assumedValues } from '../../../../data/index.ts';
import { printedIn } from '../../../support/measured.ts';

const standard = printedIn(import.meta.url, 'A');
const remembered = printedIn(import.meta.url, 'C');

it('two couplers within the standard differ by 3/16 in at most', () => {
  const { swing, heightDifference } = assumedValues.coupler;
  standard.figure('height', heightDifference.value, (3 / 16) * 0.0254, 5e-11, 'm');
  remembered.figure('swing', (swing.value * 180) / Math.PI, 13, 0.05, '°');
  remembered.figure('swing, least', (swing.low * 180) / Math.PI, 7, 0.05, '°');
});
