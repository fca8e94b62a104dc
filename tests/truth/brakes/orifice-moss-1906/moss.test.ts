import { it } from 'vitest';
import { AirTree } from '../../../../engine/things/brake/network.ts';
import { printedIn } from '../../../support/measured.ts';

const psi = 6894.757293168;
const atmosphere = 14.7 * psi;
const seventyFahrenheit = (70 + 459.67) / 1.8;
const cubicFeetPerMinute = 0.3048 ** 3 / 60;

const table = printedIn(import.meta.url, 'A');

it.each([
  [1 / 8, 5, 3.97],
  [1 / 8, 50, 14.7],
  [1 / 8, 100, 26.0],
  [1 / 4, 12, 24.3],
])('%d in at %d psi passes %d cubic feet of free air a minute', (inches, gauge, printed) => {
  const tree = new AirTree(
    [
      {
        name: 'reservoir',
        parent: -1,
        area: 0,
        way: 'both',
        body: { kind: 'rigid', volume: 100 },
        vents: [{ area: (Math.PI / 4) * (inches * 0.0254) ** 2, pressure: atmosphere, way: 'both' }],
        leak: 0,
        start: (gauge + 14.7) * psi,
      },
    ],
    atmosphere,
    seventyFahrenheit,
  );
  const ran = tree.run(1, () => false);
  const flow = -tree.state.admitted / atmosphere / ran / cubicFeetPerMinute;
  table.figure(`${inches} in at ${gauge} psi`, flow, printed, 0.005 * printed, 'cfm');
});
