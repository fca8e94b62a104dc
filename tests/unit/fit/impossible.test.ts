/** Figures that cannot be, one by one: refused on reading, by their field, with what was found and what could be. */
import { expect, it } from 'vitest';
import { readOuting } from '../../../papers/index.ts';
import { examplePaper } from '../../support/papers.ts';

type Json = any;

/** What reading says of an example with one thing changed; of the example itself: nothing. */
async function refused(change: (outing: Json) => void, example = 'visit-fits'): Promise<readonly string[]> {
  const paper: Json = structuredClone(await examplePaper(example));
  change(paper);
  const read = await readOuting({ path: 'x.json', content: JSON.stringify(paper) }, async () => '');
  return read.ok ? [] : read.problems.map(({ path, found, expected }) => `${path}: ${found}; ${expected}`);
}

const firstCar = ({ train }: Json): Json => train.vehicles[1].vehicle;

it('the example itself is read', async () => {
  expect(await refused(() => {})).toEqual([]);
  expect(await refused(() => {}, 'two-roads')).toEqual([]);
});

it.each<[string, (outing: Json) => void, RegExp]>([
  [
    'back to back wider than the gauge',
    (o) => {
      firstCar(o).wheelsets[0].backToBack = ['7.3 in', '7.3 in'];
    },
    /^train\.vehicles\[1\]\.vehicle\.wheelsets\[0\]\.backToBack\[0\]: .*7\.3 in.*less than the gauge.*7\.25 in/,
  ],
  [
    'a section that crosses itself',
    (o) => {
      firstCar(o).section = [
        { across: '0 in', height: '1 in' },
        { across: '12 in', height: '20 in' },
        { across: '12 in', height: '1 in' },
        { across: '0 in', height: '20 in' },
      ];
    },
    /^train\.vehicles\[1\]\.vehicle\.section.*crosses.*must not cross itself/,
  ],
  [
    'a coupler above its car',
    (o) => {
      firstCar(o).front.height = '20 in';
    },
    /^train\.vehicles\[1\]\.vehicle\.front\.height: .*20 in.*at most.*19 in.*the height of the vehicle/,
  ],
  [
    'a structure between the rails',
    (o) => {
      o.line.structures[0].distance = '3 in';
    },
    /^line\.structures\[0\]\.distance: .*3 in.*more than.*3\.625 in.*half the gauge/,
  ],
  [
    'a structure with neither distance nor headroom',
    (o) => {
      o.line.structures = [{ name: 'Arch', at: '60 ft', side: 'both', bottom: '40 in' }];
    },
    /^line\.structures\[0\]\.distance: .*neither distance nor headroom/,
  ],
  [
    'a curve sharper than any track is laid',
    (o) => {
      o.line.curves[0].radius = '2 ft';
    },
    /^line\.curves\[0\]\.radius: .*2 ft.*3\.29 ft/,
  ],
  [
    'a truck beyond the end of its car',
    (o) => {
      firstCar(o).axleGroups[1].at = '12 ft';
    },
    /^train\.vehicles\[1\]\.vehicle\.axleGroups\[1\]\.at: .*the vehicle's length/,
  ],
])('%s', async (_, change, says) => {
  const problems = await refused(change);
  expect(
    problems.some((p) => says.test(p)),
    problems.join('\n'),
  ).toBe(true);
});

it('points too short for their frog, and frogs of no number', async () => {
  const start = (change: object) =>
    refused((o) => {
      Object.assign(o.line.tracks[0].start, change);
    }, 'two-roads');
  expect((await start({ lead: '4 in' })).join('\n')).toMatch(
    /tracks\[0\]\.start\.lead: .*gauge times number of the frog/,
  );
  expect((await start({ frogNumber: 0.2 })).join('\n')).toMatch(
    /tracks\[0\]\.start\.frogNumber: .*1\.5 to 30/,
  );
});
