/** A name written wrongly switches nothing off: it is refused with its field and place, and the names that there are. */
import { describe, expect, it } from 'vitest';
import { restrictionsHere } from '../../../engine/outing/restricted.ts';
import { askOrder } from '../../../engine/questions/order/ask.ts';
import { readOuting } from '../../../papers/index.ts';
import { examplePaper } from '../../support/papers.ts';

type Json = Record<string, unknown>;

const paper = await examplePaper('steam-light');
const loop = await examplePaper('over-the-loop');
const line = (paper['line'] as Json)['name'] as string;
const read = (json: Json) =>
  readOuting({ path: 'outing.json', content: JSON.stringify(json, undefined, 1) }, async () => undefined);

/** `field at row: what is wrong` */
async function told(json: Json): Promise<string[]> {
  const got = await read(json);
  if (got.ok) return [];
  return got.problems.map((p) => {
    expect(p.row).toBeGreaterThan(1);
    return p.message;
  });
}
const outing = async (json: Json) => {
  const got = await read(json);
  if (!got.ok) throw new Error(got.problems.map((p) => p.message).join('\n'));
  return got.value;
};

const defect = (of: string) => ({ of, what: 'cracked tire', rejects: true, since: '2026-05-30' });
const shut = (of: string) => ({ of, from: '20 ft', to: '30 ft', why: 'washed out', since: '2026-05-30' });
const withRider = (more: Json): Json => {
  const [driver, first, ...rest] = paper['riders'] as Json[];
  return { ...paper, riders: [driver, { ...first, ...more }, ...rest] };
};
const withTrain = (more: Json): Json => ({ ...paper, train: { ...(paper['train'] as Json), ...more } });
/** The engine's brakes made over. */
const withBrakes = (more: Json): Json => {
  const [engine, ...cars] = (paper['train'] as Json)['vehicles'] as Json[];
  const vehicle = engine['vehicle'] as Json;
  const brakes = (vehicle['brakes'] as Json[]).map((b) => ({ ...b, ...more }));
  return withTrain({ vehicles: [{ ...engine, vehicle: { ...vehicle, brakes } }, ...cars] });
};
const withTracks = (change: (track: Json) => Json): Json => {
  const whole = loop['line'] as Json;
  return { ...loop, line: { ...whole, tracks: (whole['tracks'] as Json[]).map(change) } };
};

describe('a name that is none of these', () => {
  const cases: readonly [string, Json, RegExp][] = [
    [
      'of what is amiss',
      { ...paper, defects: [defect('Light cra 1')] },
      /^defects\[0\]\.of: found "Light cra 1"; expected a vehicle of the train or the line: .*"Light car 1".*"Larkfield Hollow/,
    ],
    [
      'of a number that there is not',
      { ...paper, defects: [defect('Light car 9')] },
      /^defects\[0\]\.of: found "Light car 9"/,
    ],
    [
      'of the line that is shut',
      { ...paper, restrictions: [shut('Larkfeld')] },
      /^restrictions\[0\]\.of: found "Larkfeld"; expected "Larkfield Hollow/,
    ],
    [
      'of whoever holds a child',
      withRider({ heldBy: 'Ridder 2' }),
      /^riders\[1\]\.heldBy: found "Ridder 2"; expected a rider by name: "Driver", "Rider 2"/,
    ],
    [
      'of the vehicle that one sits on',
      withRider({ vehicle: 'cra-1' }),
      /^riders\[1\]\.vehicle: found "cra-1"; expected a vehicle of the train: engine, car-1/,
    ],
    ['of a seat', withRider({ seat: '9' }), /^riders\[1\]\.seat: found "9"; expected a seat of car-1/],
    [
      'of where the pipe is parted',
      withTrain({ pipeBrokenAfter: ['cra-1'] }),
      /^train.*pipeBrokenAfter\[0\]: found "cra-1"; expected a vehicle of the train/,
    ],
    [
      'of what a brake works on',
      withBrakes({ on: ['divers'] }),
      /brakes\[0\]\.on\[0\]: found "divers"; expected an axle group/,
    ],
    [
      'of a track of the route',
      { ...loop, route: ['main', 'Pasing loop'] },
      /^route\[1\]: found "Pasing loop", which is no track/,
    ],
    [
      'of the track that points lie on',
      withTracks((t) => ({ ...t, start: { ...(t['start'] as Json), track: 'mian' } })),
      /tracks\[0\]\.start\.track: found "mian", which is no track here/,
    ],
    [
      'of the engine by kind of rail',
      { ...paper, conditions: { ...(paper['conditions'] as Json), railState: 'drie' } },
      /^conditions\.railState: found "drie"; expected/,
    ],
  ];
  it.each(cases)('%s is refused', async (_, json, words) => {
    expect((await told(json)).join('\n')).toMatch(words);
  });

  it('but for those there is nothing against the papers', async () => {
    expect(await told(paper)).toEqual([]);
    expect(await told(loop)).toEqual([]);
  });
});

describe('a name that is spelled otherwise', () => {
  it('is meant, by cars one by one and all of a count', async () => {
    const codes = async (of: string) =>
      askOrder(await outing({ ...paper, defects: [defect(of)] })).map(({ code, where }) =>
        `${code} ${where.vehicle ?? ''}`.trim(),
      );
    expect(await codes('LIGHT  car 1')).toEqual(['defect-open car-1']);
    expect(await codes('light car')).toEqual(['defect-open car-1', 'defect-open car-2']);
    expect(await codes(line.toUpperCase())).toEqual(['defect-open']);
  });

  it('over a route too: what is amiss with the line, and where it is shut', async () => {
    const of = ((loop['line'] as Json)['name'] as string).toUpperCase();
    const run = await outing({ ...loop, defects: [defect(of)], restrictions: [shut(of)] });
    expect(restrictionsHere(run)).toHaveLength(1);
    expect(
      askOrder(run)
        .map((f) => f.code)
        .sort(),
    ).toEqual(['defect-open', 'line-closed']);
  });

  it('is one party', async () => {
    const riders = (paper['riders'] as Json[]).map((r, i) => ({
      ...r,
      ...(i === 0 ? {} : { group: i % 2 ? 'The Mill ' : 'the mill' }),
    }));
    const groups = (await outing({ ...paper, riders })).riders.map((r) => r.group);
    expect(new Set(groups.slice(1)).size).toBe(1);
  });
});
