/** heedway siding on the example with tracks, beside another train, and on a line that states none. */
import { expect, it } from 'vitest';
import { heedwayOnce } from '../../support/cli.ts';

const example = 'examples/two-roads.json';

it('says where the train stands clear, what is to be measured, and how near two come', () => {
  const { stdout, status } = heedwayOnce('siding', example);
  expect(status).toBe(0);
  expect(stdout).toMatch(/Passing loop +26 ft: fits +88 ft +9 ft 4[-\d/ ]* in +2 ft 1[-\d/ ]* in/);
  expect(stdout).toMatch(/Old spur +cannot tell +measure the lead/);
  expect(stdout).toMatch(/Coal road +Passing loop +40 ft +right +facing +no\. 5/);
  expect(stdout).toMatch(/people on one can touch the other/);
  const { standing } = JSON.parse(heedwayOnce('siding', example, '--json').stdout);
  const loop = standing[0].roads.find((r: { track: string }) => r.track === 'Passing loop');
  // 40 in between the tracks, less 12-1/16 in to either side.
  expect(loop.least.room / 0.0254).toBeCloseTo(40 - 2 * 12.06, 0);
});

it('holds each of two trains against the other', () => {
  const { standing } = JSON.parse(
    heedwayOnce('siding', example, '--other', 'examples/visit-fits.json', '--json').stdout,
  );
  expect(standing).toHaveLength(2);
  expect(heedwayOnce('siding', 'examples/visit-fits.json').stdout).toMatch(/states no tracks/);
});
