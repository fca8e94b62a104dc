/** Couplers in curves: the engine beside brute force. */
import { expect, it } from 'vitest';
import { bundled } from '../support/bundled.ts';
import * as measured from '../support/measured.ts';
import { runs } from '../support/tier.ts';

const { beside } = await bundled<typeof import('./against/bends.ts')>('../witness/against/bends.ts');

const HUNDREDTHS = Math.PI / 180 / 100;
const degrees = (angle: number): number => angle / HUNDREDTHS / 100;

it('couplers of random pairs stand as brute force has them, within 0.02°', () => {
  let bent = 0;
  const errors: number[] = [];
  for (let seed = 1; seed <= runs(30, 100); seed++) {
    const { apart, worstApart, worst } = beside(seed);
    errors.push(degrees(apart));
    expect(apart, `pair ${seed}`).toBeLessThan(2 * HUNDREDTHS);
    // Brute force looks at some places alone: it may miss the worst, and finds no worse one.
    expect(worstApart, `worst of pair ${seed}`).toBeLessThan(2 * HUNDREDTHS);
    if (worst > 0.1) bent++;
  }
  measured.beside(
    import.meta.url,
    'angles of couplers in curves',
    'the witness, by brute force',
    errors,
    '°',
  );
  expect(bent).toBeGreaterThan(15);
});
