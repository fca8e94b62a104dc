/** Published bands, entered as a host's sheet: accepted, slower at the printed speed, refused, on either side of each bound. */
import { expect, it } from 'vitest';
import { openOuting } from '../../../../engine/outing/open.ts';
import type { Standard } from '../../../../engine/outing/types.ts';
import { hostCeilings } from '../../../../engine/questions/speed/ceilings.ts';
import { lookAtStandards } from '../../../../engine/questions/standards/look.ts';
import { printedIn } from '../../../support/measured.ts';
import { altered, plain } from '../../../support/rules.ts';

const IN = 0.0254;
const MPH = 0.44704;
const source = 'TM 5-628';
const printed = printedIn(import.meta.url, 'A');

/** The word of a length that its sheet limits so, and the speed that it is run at then, mph. */
function judged(inches: number, standard: Standard): readonly [string, number] {
  const bare = altered(plain(0), 0, { envelope: { width: inches * IN, height: 1 } });
  const outing = { ...bare, plannedSpeed: 20, host: { ...bare.host, standards: { bodyWidth: standard } } };
  const context = openOuting(outing);
  const [{ judged: all }] = lookAtStandards(context);
  const speeds = hostCeilings(context, Float64Array.of(0, 10)).map(({ speed }) => speed[1]);
  return [all[0].word, Math.min(...speeds) / MPH];
}

const HAIR = 1e-6;
const bands: readonly (readonly [string, Standard, number, readonly (readonly [number, string])[]])[] = [
  [
    'gauge',
    { least: 56 * IN, most: 58 * IN, slowAbove: 57.5 * IN, slowSpeed: 10 * MPH, source },
    10,
    [
      [55.99, 'refused'],
      [56, 'accepted'],
      [57.5, 'accepted'],
      [57.51, 'slow'],
      [58, 'slow'],
      [58.01, 'refused'],
    ],
  ],
  [
    'gauge, its inner band',
    { least: 56 * IN, most: 58 * IN, slowAbove: 57.75 * IN, slowSpeed: 5 * MPH, source },
    5,
    [
      [57.75, 'accepted'],
      [57.76, 'slow'],
      [58.01, 'refused'],
    ],
  ],
  [
    'width of a flangeway',
    { least: (1.5 + HAIR) * IN, slowBelow: (1.625 + HAIR) * IN, slowSpeed: 10 * MPH, source },
    10,
    [
      [1.63, 'accepted'],
      [1.625, 'slow'],
      [1.51, 'slow'],
      [1.5, 'refused'],
    ],
  ],
  [
    'depth of a flangeway',
    { least: (1.375 + HAIR) * IN, slowBelow: (1.5 + HAIR) * IN, slowSpeed: 10 * MPH, source },
    10,
    [
      [1.51, 'accepted'],
      [1.5, 'slow'],
      [1.375, 'refused'],
    ],
  ],
];

it.each(bands)('%s', (what, standard, speed, readings) => {
  for (const [inches, word] of readings) {
    const [said, slowest] = judged(inches, standard);
    expect(said, `${inches} in`).toBe(word);
    if (word === 'slow') printed.figure(`${what}, ${inches} in`, slowest, speed, 1e-9, 'mph');
    if (word === 'accepted') expect(slowest).toBeGreaterThan(speed);
  }
});
