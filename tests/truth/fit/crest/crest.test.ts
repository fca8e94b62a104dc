import { it } from 'vitest';
import { crested, crestsOf } from '../../../support/crested.ts';
import { printedIn } from '../../../support/measured.ts';

const IN = 0.0254;
const printed = printedIn(import.meta.url, 'D');
const parabola = (sign: 1 | -1) =>
  Array.from({ length: 1201 }, (_, i) => ({ at: i * IN, height: (sign * (i * IN) ** 2) / (2 * 1200 * IN) }));
const [short, long] = [
  { length: 72 * IN, overhang: 12 * IN },
  { length: 96 * IN, overhang: 15 * IN },
];

it.each([
  ['crest', -1, [short, long], -0.20625],
  ['crest, exchanged', -1, [long, short], 0.20625],
  ['sag', 1, [short, long], 0.20625],
] as const)('%s: as far apart as their ends stand off the rail', (what, sign, shapes, apart) => {
  const [gap] = crestsOf(crested(parabola(sign), shapes)).data.gaps;
  // Between points an inch apart the rail lies up to 0.0001 in off the parabola.
  printed.figure(what, gap.line / IN, apart, 5e-4, 'in');
});
