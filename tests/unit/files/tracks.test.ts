/** Tracks in the paper of a line: what follows from a tape, what is refused and in which words. All made up. */

import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { answerOnly } from '../../../engine/answer/answer.ts';
import { applyChange } from '../../../engine/outing/change.ts';
import { turnedTrain } from '../../../engine/outing/moves.ts';
import { restrictionsHere } from '../../../engine/outing/restricted.ts';
import { askOrder } from '../../../engine/questions/order/ask.ts';
import type { Line } from '../../../engine/things/line/types.ts';
import { changedPaper } from '../../../papers/changed.ts';
import { readLine, readOuting } from '../../../papers/index.ts';
import { plain } from '../../support/rules.ts';

type Json = Record<string, unknown>;

const start: Json = { at: '20 m', hand: 'right', points: 'facing', frogNumber: 6, lead: '2 m' };
const road = (changes: Json = {}): Json => ({ name: 'Road', length: '20 m', start, ...changes });
const paper = (tracks: readonly Json[], changes: Json = {}): Json => ({
  heedway: 'line',
  version: 1,
  name: 'Line',
  gauge: '184 mm',
  shape: 'point-to-point',
  profile: [
    { at: '0 m', height: '0 m' },
    { at: '200 m', height: '1 m' },
  ],
  tracks,
  ...changes,
});

const read = async (json: Json) =>
  readLine({ path: 'line.json', content: new TextEncoder().encode(JSON.stringify(json)) });

async function lineOf(tracks: readonly Json[], changes: Json = {}): Promise<Line> {
  const found = await read(paper(tracks, changes));
  if (!found.ok)
    throw new Error(found.problems.map((p) => `${p.path}: ${p.found}; ${p.expected}`).join('\n'));
  return found.value;
}

async function refused(tracks: readonly Json[], changes: Json = {}): Promise<string> {
  const found = await read(paper(tracks, changes));
  return found.ok ? '' : found.problems.map((p) => `${p.path}: ${p.found}; ${p.expected}`).join('\n');
}

describe('a turnout', () => {
  it('follows from frog and lead: crossing at lead − G·N, radius 2·N of what is left before it', async () => {
    const [{ start: joint, line }] = (await lineOf([road()])).tracks ?? [];
    const radius = 12 * (2 - 6 * 0.184);
    expect(joint.turnout?.radius).toBeCloseTo(radius, 9);
    expect(line.curves[0]).toMatchObject({ from: 0, startCurvature: -1 / radius });
    expect(line.curves[0].to).toBeCloseTo(radius * 2 * Math.atan(1 / 12), 9);
  });

  it('follows from frog and radius as well', async () => {
    const { lead: _, ...rest } = start;
    const [{ start: joint }] = (await lineOf([road({ start: { ...rest, radius: '10 m' } })])).tracks ?? [];
    expect(joint.turnout?.lead).toBeCloseTo(10 / 12 + 6 * 0.184, 9);
  });

  it('is bent to the curve that it lies in', async () => {
    const curves = [{ from: '10 m', to: '50 m', radius: '40 m', hand: 'right' }];
    const [{ start: joint, line }] = (await lineOf([road()], { curves })).tracks ?? [];
    expect(line.curves[0].startCurvature).toBeCloseTo(-1 / 40 - 1 / (joint.turnout?.radius ?? 0), 9);
    const trailing = { ...start, points: 'trailing', at: '40 m' };
    const [other] = (await lineOf([road({ start: trailing })], { curves })).tracks ?? [];
    expect(other.line.curves[0].startCurvature).toBeCloseTo(1 / 40 - 1 / (joint.turnout?.radius ?? 0), 9);
  });

  it('of which too little is measured stays, and says what to measure', async () => {
    const { lead: _, ...noLead } = start;
    const { frogNumber: __, ...noFrog } = start;
    const lines = await Promise.all([noLead, noFrog].map((s) => lineOf([road({ start: s })])));
    expect(lines.map((l) => l.tracks?.[0].start.lacks)).toEqual(['lead', 'frogNumber']);
  });
});

it('leaves a line without tracks as it was', async () => {
  const { tracks: _, ...bare } = paper([]);
  const found = await read(bare);
  expect(found.ok && 'tracks' in found.value).toBe(false);
});

it('finds tracks that leave one another in any order', async () => {
  const branch = road({ name: 'Branch', start: { ...start, track: 'Road', at: '8 m' } });
  expect((await lineOf([branch, road()])).tracks?.map((t) => t.start.track)).toEqual(['road', 'main']);
});

describe('is refused in clear words:', () => {
  const loop = (end: Json, changes: Json = {}): Json =>
    road({
      length: '40 m',
      end: { ...start, at: '60 m', points: 'trailing', hand: 'left', ...end },
      ...changes,
    });
  const parallel = [
    { from: '5 m', to: '6.99 m', radius: '12 m', hand: 'left' },
    { from: '33.01 m', to: '35 m', radius: '12 m', hand: 'left' },
  ];
  it.each<[string, readonly Json[], RegExp]>([
    ['points off the line', [road({ start: { ...start, at: '300 m' } })], /start\.at: 300.*at most 200/],
    [
      'a track that joins nothing',
      [road({ start: { ...start, track: 'Yard' } })],
      /"Yard", which is no track here/,
    ],
    [
      'a track that joins itself',
      [road({ start: { ...start, track: 'Road' } })],
      /"Road" itself.*none joins itself/,
    ],
    [
      'tracks that leave only one another',
      [road({ start: { ...start, track: 'B' } }), road({ name: 'B', start: { ...start, track: 'Road' } })],
      /reached from no track that leaves the line/,
    ],
    ['a frog of number 0', [road({ start: { ...start, frogNumber: 0 } })], /frogNumber: .*1\.5/],
    [
      'a lead too short for the frog',
      [road({ start: { ...start, lead: '1 m' } })],
      /lead: 1.*more than 1\.10 m/,
    ],
    [
      'a radius too wide for the frog',
      [road({ start: { at: '20 m', hand: 'left', points: 'facing', frogNumber: 6, radius: '20 m' } })],
      /radius: 20.*at most 13\.25/,
    ],
    [
      'a versine that another turnout has',
      [road({ start: { ...start, radius: '20 m' } })],
      /radius: 20.*near 10\.75/,
    ],
    [
      'a number and an angle of two frogs',
      [road({ start: { ...start, frogAngle: '8°' } })],
      /frogAngle: 8\.0°.*9\.5°/,
    ],
    ['a track shorter than its turnout', [road({ length: '1.5 m' })], /length: 1\.50.*where its frog is/],
    [
      'a curve in the turnout',
      [road({ curves: [{ from: '1 m', to: '5 m', radius: '12 m', hand: 'left' }] })],
      /curves\[0\]\.from: 1\.00.*first frog/,
    ],
    [
      'a frog beyond the buffers',
      [road({ start: { ...start, at: '199 m' } })],
      /at: 199.*whose frog lies on that track too/,
    ],
    ['two tracks of one name', [road(), road()], /name: "Road"; a name of its own/],
    ['a track called main', [road({ name: 'Main' })], /"Main"; a name of its own/],
    [
      'a profile of another length',
      [
        road({
          profile: [
            { at: '0 m', height: '0 m' },
            { at: '10 m', height: '0 m' },
          ],
        }),
      ],
      /profile: heights up to 10\.00 m/,
    ],
    [
      'a loop that comes in a metre above the line',
      [
        loop(
          {},
          {
            curves: parallel,
            profile: [
              { at: '0 m', height: '0.1 m' },
              { at: '40 m', height: '1.3 m' },
            ],
          },
        ),
      ],
      /profile: Road ending 1\.00 m above the track that it comes in to/,
    ],
    [
      'a loop whose last points lie on the wrong hand',
      [loop({ hand: 'right' }, { curves: parallel })],
      /ends .* from its last points/,
    ],
  ])('%s', async (_what, tracks, words) => {
    expect(await refused(tracks)).toMatch(words);
  });

  it('and that loop as it should be is taken', async () => {
    expect(await refused([loop({}, { curves: parallel })])).toBe('');
  });
});

describe('a route that an outing names', () => {
  const folder = new URL('../../../examples/', import.meta.url);
  const outing = async (route?: readonly string[]) => {
    const json = JSON.parse(readFileSync(new URL('over-the-loop.json', folder), 'utf8'));
    const content = new TextEncoder().encode(JSON.stringify({ ...json, route }));
    return readOuting({ path: 'outing.json', content }, async (path) => readFileSync(new URL(path, folder)));
  };
  const words = async (route: readonly string[]): Promise<string> => {
    const found = await outing(route);
    return found.ok ? '' : found.problems.map((p) => `${p.path}: ${p.found}; ${p.expected}`).join();
  };

  it('makes the line that it runs over, and keeps the whole one beside it', async () => {
    const [main, over] = await Promise.all([outing(), outing(['main', 'Passing loop', 'main'])]);
    if (!main.ok || !over.ok) throw new Error('not read');
    expect(over.value.line.length - main.value.line.length).toBeCloseTo((120.49 - 120) * 0.3048, 6);
    expect(over.value.whole?.tracks?.length).toBe(4);
    expect(main.value.whole).toBeUndefined();
    expect(over.value.line.name).toBe('Osier Bed line by main, Passing loop, main');
  });

  it('is refused in clear words', async () => {
    expect(await words(['main', 'Yard'])).toMatch(
      /route\[1\]: "Yard", which is no track of this line; "main" or one of: Passing loop/,
    );
    expect(await words(['main', 'Old spur'])).toMatch(/"Old spur", whose heights are not measured/);
    expect(await words(['main', 'Passing loop', 'Passing loop'])).toMatch(
      /route\[2\]: .*no points lead to from Passing loop/,
    );
    // The Engine road leaves against the distances, and has no heights; nor is there room to set back at the buffers.
    expect(await words(['Passing loop', 'Old spur'])).toMatch(/"Old spur", whose heights/);
    expect(await words([])).toMatch(/route/);
  });
});

describe('what a track tells of what stands along it', () => {
  const line = {
    places: [{ name: 'Halt', kind: 'station', at: '10 m', stop: true }],
    structures: [{ name: 'Wall', at: '5 m', distance: '1 m' }],
    sights: [{ from: '0 m', to: '200 m', distance: '30 m' }],
    railStretches: [{ from: '0 m', to: '5 m', state: 'damp' }],
  };
  const lacks = async (own: Json): Promise<readonly string[]> => {
    const [track] = (await lineOf([road(own)], line)).tracks ?? [];
    return (track.line.unstated ?? []).map((u) => u.lacks);
  };

  it('is asked where the line tells its own and the track says nothing; an empty list says that there is none', async () => {
    expect(await lacks({})).toEqual(['places', 'sights', 'structures', 'railStretches']);
    expect(await lacks({ places: [], sights: [], structures: [], railStretches: [] })).toEqual([]);
    expect(await lacks({ places: [] })).toEqual(['sights', 'structures', 'railStretches']);
  });

  it('has a platform only with its edge and its top', async () => {
    const platform = { name: 'Halt', at: '3 m', distance: '0.5 m', top: '0.2 m', platform: true };
    const { top: _, ...low } = platform;
    const { distance: __, ...far } = platform;
    expect(await refused([road({ structures: [platform] })])).toBe('');
    expect(await refused([road({ structures: [low] })])).toMatch(
      /structures\[0\]\.top: a platform without it/,
    );
    expect(await refused([road({ structures: [{ ...far, headroom: '2 m' }] })])).toMatch(
      /structures\[0\]\.distance: a platform without it/,
    );
  });

  it('lies within the track, by its own distances, under an id of its own', async () => {
    const own = { structures: [{ name: 'Wall', at: '19 m', distance: '2 m' }], places: line.places };
    const [track] = (await lineOf([road(own)], line)).tracks ?? [];
    expect(track.line.structures).toMatchObject([{ id: 'road-wall-1', from: 19, distance: 2 }]);
    expect(track.line.places).toMatchObject([{ id: 'road-halt', at: 10 }]);
    expect(await refused([road({ places: [{ ...line.places[0], at: '21 m' }] })])).toMatch(
      /tracks\[0\]\.places\[0\]\.at: 21.*at most 20/,
    );
    expect(await refused([road({ structures: [{ name: 'Post', at: '3 m', distance: '50 mm' }] })])).toMatch(
      /tracks\[0\]\.structures\[0\]\.distance/,
    );
  });
});

describe('over a route', () => {
  const folder = new URL('../../../examples/', import.meta.url);
  const outing = async (changes: Json) => {
    const json = JSON.parse(readFileSync(new URL('over-the-loop.json', folder), 'utf8'));
    const content = new TextEncoder().encode(JSON.stringify({ ...json, ...changes }));
    const found = await readOuting({ path: 'outing.json', content }, async (path) =>
      readFileSync(new URL(path, folder)),
    );
    if (!found.ok) return found.problems.map((p) => `${p.path}: ${p.found}; ${p.expected}`).join('\n');
    return found.value;
  };
  const limit = (from: string, to: string, changes: Json = {}): Json => ({
    of: 'Osier Bed line',
    from,
    to,
    speed: '2 mph',
    why: 'wash-out',
    since: '2026-05-01',
    ...changes,
  });
  const along = async (changes: Json) => {
    const made = await outing(changes);
    if (typeof made === 'string') throw new Error(made);
    return made;
  };

  it('temporary limits of the line hold where the route runs over it', async () => {
    const restrictions = [limit('100 ft', '220 ft'), limit('400 ft', '420 ft'), limit('250 ft', '260 ft')];
    const made = await along({ restrictions });
    const feet = restrictionsHere(made).map(({ from, to }) =>
      [from, to].map((m) => Number((m / 0.3048).toFixed(2))),
    );
    // Up to the tips of the points; beyond the loop half a foot later; beside the loop it is no matter of the route.
    expect(feet).toEqual([
      [100, 200],
      [400.49, 420.49],
    ]);
    const beyond = await along({ restrictions: [limit('950 ft', '960 ft')] });
    expect(askOrder(beyond).map((f) => f.code)).toContain('limit-off-line');
  });

  it('what is amiss with the line and whoever is signed off for it are of the line, whatever route is run', async () => {
    const defects = [{ what: 'broken rail', of: 'Osier Bed line', rejects: true, since: '2026-05-01' }];
    expect(askOrder(await along({ defects })).map((f) => f.code)).toContain('defect-open');
  });

  it('that sets back is answered move by move, the train end for end', async () => {
    const route = ['main', 'Passing loop', 'main', 'Passing loop'];
    const first = await along({ route, restrictions: [limit('321 ft', '322 ft')] });
    expect(first.moves?.map(({ number, turned }) => [number, turned])).toEqual([[2, true]]);
    expect(first.restrictions?.length).toBe(1);
    expect(first.moves?.[0].restrictions?.length).toBe(1);
    const second = await along({ route, move: 2 });
    expect(second.train.vehicles.map((v) => v.id)).toEqual(first.train.vehicles.map((v) => v.id).reverse());
    expect(second.moves?.map(({ number, turned }) => [number, turned])).toEqual([[1, true]]);
    // The cars lead, and nobody looks out on the first.
    const codes = answerOnly(second, { samples: 20, couplerRuns: 2, step: 2 }).findings.map((f) => f.code);
    expect(codes).toContain('propelled-without-lookout');
    expect(codes).toContain('other-move');
  });

  it('a change tried on a move with the train end for end is written as the paper has it', async () => {
    const { examplePaper } = await import('../../support/papers.ts');
    const paper = {
      ...(await examplePaper('over-the-loop')),
      move: 2,
      route: ['main', 'Passing loop', 'main', 'Passing loop'],
    };
    const read = async (json: Json) => {
      const found = await readOuting(
        { path: 'x.json', content: JSON.stringify(json) },
        async () => undefined,
      );
      if (!found.ok) throw new Error(found.problems.map((p) => p.message).join());
      return found.value;
    };
    const before = await read(paper);
    const [last] = before.train.vehicles;
    const [post] = before.line.structures?.filter(({ id }) => id.startsWith('passing-loop-')) ?? [];
    const after = applyChange(before, {
      kind: 'together',
      changes: [
        { kind: 'coupler-raised', vehicle: last.id, end: 'rear', by: 0.003 },
        { kind: 'set-back', structure: post.id, by: 0.02 },
      ],
    });
    const again = await read(changedPaper(paper, before, after));
    expect(again.train.vehicles.map((v) => v.id)).toEqual(after.train.vehicles.map((v) => v.id));
    expect(again.train.vehicles[0].rear.height).toBeCloseTo(after.train.vehicles[0].rear.height ?? 0, 9);
    expect(again.train.vehicles[0].front.height).toBe(before.train.vehicles[0].front.height);
    const moved = again.line.structures?.find(({ id }) => id === post.id);
    expect(moved?.distance).toBeCloseTo((post.distance ?? 0) + 0.02, 9);
  });

  it('that sets back takes nothing that is told along one move alone', async () => {
    const route = ['main', 'Passing loop', 'main', 'Passing loop'];
    expect(await outing({ route, direction: 'reverse' })).toMatch(/direction: reverse; "forward"/);
    const agreedLimits = [{ from: '0 ft', to: '10 ft', speed: '2 mph' }];
    expect(await outing({ route, agreedLimits })).toMatch(/agreedLimits: .*on the tracks themselves/);
    expect(await outing({ route, move: 3 })).toMatch(/move: 3; .*at most 2/);
    expect(await outing({ route: undefined, move: 2 })).toMatch(/move: a move without a route/);
  });
});

it('a train turned round twice is as it was', () => {
  const { train } = plain(3);
  expect(turnedTrain(turnedTrain(train))).toEqual(train);
  const [last] = turnedTrain(train).vehicles;
  const { length, groups } = train.vehicles[train.vehicles.length - 1];
  expect(last.groups[0].at).toBeCloseTo(length - groups[groups.length - 1].at, 12);
});
