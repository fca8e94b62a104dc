/** A change written into an outing's paper reads as the changed outing, and leaves alone what it does not touch. */
import { describe, expect, it } from 'vitest';
import { applyChange, type Change } from '../../../engine/outing/change.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import { changedPaper } from '../../../papers/changed.ts';
import { readOuting, writeFile } from '../../../papers/index.ts';
import { examplePaper } from '../../support/papers.ts';

type Json = Record<string, unknown>;

async function read(paper: Json): Promise<Outing> {
  const found = await readOuting({ path: 'x.json', content: writeFile(paper) }, async () => undefined);
  if (!found.ok) throw new Error(found.problems.map((p) => p.message).join('; '));
  return found.value;
}

const paper = await examplePaper('busy-afternoon');
const outing = await read(paper);
const written = (change: Change): Json => changedPaper(paper, outing, applyChange(outing, change));

/** Ids of brake gears count from the vehicle's first, and notes are of what was read. */
const told = ({ assumptions: _notes, ...rest }: Pick<Outing, 'assumptions'>): unknown =>
  JSON.parse(JSON.stringify(rest), (key, value) => (key === 'id' && /-\d+$/.test(value) ? undefined : value));

describe('a change in the paper', () => {
  const changes: Change[] = [
    { kind: 'fewer-cars', leave: ['car-4'] },
    { kind: 'fewer-cars', leave: ['car-2', 'car-3'] },
    { kind: 'fewer-riders', leave: ['rider-1'] },
    { kind: 'slower', from: 12.25, to: 100 / 3, speed: 4 * 0.44704 },
    { kind: 'slower-everywhere', speed: 1 / 3 },
    { kind: 'rail-state', state: 'sanded' },
    { kind: 'order', order: ['engine', 'car-3', 'car-1', 'car-2', 'car-4'] },
    { kind: 'seat', moves: [{ rider: 'rider-1', vehicle: 'car-4', seat: '4' }] },
    { kind: 'ballast', vehicle: 'car-2', mass: 15, height: 0.1 },
    { kind: 'chains' },
    { kind: 'chain-size', gap: 1, grade: 70, size: 0.25 * 0.0254 },
    { kind: 'chain-size', grade: 43, size: 0.375 * 0.0254 },
    { kind: 'longer-coupling', gap: 2, by: 0.0254 },
    { kind: 'coupler-raised', vehicle: 'car-2', end: 'rear', by: 0.003 },
    { kind: 'guard' },
  ];
  it.each(changes)('reads as what was tried: %o', async (change) => {
    expect(told(await read(written(change)))).toEqual(told(applyChange(outing, change)));
  });

  it('leaves behind what is amiss with a car that is left behind', async () => {
    const at = (of: string) => ({ of, what: 'x', rejects: true, since: '2026-05-30' });
    const [first, last] = [outing.train.vehicles[1].name, outing.train.vehicles[4].name];
    const amiss = { ...paper, defects: [at(first), at(last)] };
    const of = await read(amiss);
    const now = changedPaper(amiss, of, applyChange(of, { kind: 'fewer-cars', leave: ['car-4'] }));
    expect(now['defects']).toEqual([at(first)]);
    expect((await read(now)).train.vehicles).toHaveLength(4);
  });

  it('has nobody held by one who stays behind', async () => {
    const [driver, ...rest] = paper['riders'] as Json[];
    const held = {
      ...paper,
      riders: [driver, ...rest.map((r, i) => (i === 1 ? { ...r, heldBy: rest[0]['name'] } : r))],
    };
    const of = await read(held);
    const gone = of.riders[1].id;
    const now = changedPaper(held, of, { ...of, riders: of.riders.filter(({ id }) => id !== gone) });
    expect((now['riders'] as Json[])[1]).not.toHaveProperty('heldBy');
    expect((await read(now)).riders).toHaveLength(of.riders.length - 1);
  });

  it('reads as what was tried where people take over from each other', async () => {
    const at = { name: 'Post', looksOutAt: 'the crossing' };
    const crew = [{ name: 'Relief', weight: '170 lb', age: 40 }, at, { name: 'Other' }];
    const listed = { ...paper, conditions: { ...(paper['conditions'] as Json), brakeTried: true }, crew };
    const of = await read(listed);
    const driver = of.riders.find(({ duty }) => duty === 'driver')?.id ?? '';
    const tried: Change[] = [
      { kind: 'relieve', rider: driver, by: 'relief' },
      { kind: 'relieve', rider: driver, by: 'other' },
      { kind: 'look-out', at: 'the crossing', by: 'other' },
    ];
    for (const change of tried) {
      const after = applyChange(of, change);
      expect(told(after)).not.toEqual(told(of));
      expect(told(await read(changedPaper(listed, of, after)))).toEqual(told(after));
    }
  });

  it('keeps a train that is written by its count so', () => {
    const { vehicles } = written({ kind: 'fewer-cars', leave: ['car-4'] })['train'] as { vehicles: Json[] };
    expect(vehicles.map(({ id, count }) => [id, count])).toEqual([
      ['engine', undefined],
      ['car', 3],
    ]);
  });

  it('forgets what was measured on the rail as it was', () => {
    const measured = { ...paper, conditions: { ...(paper['conditions'] as Json), adhesion: 0.12 } };
    const after = applyChange(outing, { kind: 'rail-state', state: 'dry' });
    expect(changedPaper(measured, outing, after)['conditions']).not.toHaveProperty('adhesion');
  });

  it('leaves line, host and what it does not touch as they were written', () => {
    const now = written({ kind: 'fewer-cars', leave: ['car-4'] });
    for (const key of ['line', 'host', 'conditions', 'plannedSpeed']) expect(now[key]).toBe(paper[key]);
  });

  it('writes wheels pressed and a guard rail moved', async () => {
    const train = paper['train'] as { vehicles: (Json & { vehicle: Json })[] };
    const wheelsets = [
      { name: 'leading', backToBack: ['6.87 in', '174.5 mm'], flangeThickness: '5/32 in' },
      { name: 'trailing', backToBack: ['6.87 in'] },
    ];
    const vehicles = train.vehicles.map((m) => ({ ...m, vehicle: { ...m.vehicle, wheelsets } }));
    const flangeways = [
      { name: 'South', at: '90 m', guardCheck: '179 mm', guardFace: '173 mm' },
      { name: 'North', at: '30 m', frogFlangeway: '5 mm', guardFlangeway: '5 mm', depth: '6 mm' },
    ];
    const measured = {
      ...paper,
      train: { ...train, vehicles },
      line: { ...(paper['line'] as Json), flangeways },
    };
    const from = await read(measured);
    for (const change of [
      { kind: 'wheel-gauge', vehicle: 'car-2', wheelset: 'leading-1', by: -0.0003 },
      { kind: 'guard-rail', flangeway: 'south-1', by: 0.0002 },
      { kind: 'guard-rail', flangeway: 'north-2', by: -0.0002 },
    ] as const) {
      const after = applyChange(from, change);
      expect(told(after), change.kind).not.toEqual(told(from));
      const again = await read(changedPaper(measured, from, after));
      // In order of chainage once written: ids of frogs count anew.
      const bare = (o: Outing) => ({
        ...o,
        line: { ...o.line, flangeways: o.line.flangeways?.map(({ id: _id, ...f }) => f) },
      });
      expect(told(bare(again)), change.kind).toEqual(told(bare(after)));
    }
  });

  it('writes a low part lifted', async () => {
    const train = paper['train'] as { vehicles: (Json & { vehicle: Json })[] };
    const lowParts = [
      { name: 'ash pan', at: '3 ft', height: '1 in' },
      { name: 'step', at: '1 ft', height: '40 mm' },
    ];
    const vehicles = train.vehicles.map((m) => ({ ...m, vehicle: { ...m.vehicle, lowParts } }));
    const low = { ...paper, train: { ...train, vehicles } };
    const from = await read(low);
    const after = applyChange(from, { kind: 'part-lifted', vehicle: 'car-2', part: 'step', by: 0.005 });
    const again = await read(changedPaper(low, from, after));
    expect(again.train.vehicles.map((v) => v.lowParts)).toEqual(after.train.vehicles.map((v) => v.lowParts));
    expect(after.train.vehicles[2].lowParts?.[1].height).toBeCloseTo(0.045, 12);
  });

  it('writes brakes: another kind, one like that of another car, one that parks', async () => {
    const vacuum = await examplePaper('battery-vacuum');
    const train = vacuum['train'] as { vehicles: (Json & { vehicle: Json })[] };
    const [engine, cars] = train.vehicles;
    const bare = { ...cars, vehicle: { ...cars.vehicle, brakes: [] }, id: 'bare', count: 1 };
    const simple = JSON.parse(JSON.stringify(engine).replaceAll('automatic-vacuum', 'simple-vacuum')) as Json;
    const mixed = { ...vacuum, train: { ...train, vehicles: [simple, cars, bare] } };
    const from = await read(mixed);
    for (const change of [
      { kind: 'brake-car', vehicle: 'bare', like: 'car-1' },
      { kind: 'brake-kind', brake: 'automatic-vacuum' },
      { kind: 'parking-brake', vehicle: 'bare', force: 321 },
      { kind: 'driver-brake', vehicle: 'bare', force: 321 },
    ] as const) {
      const to = applyChange(from, change);
      const now = await read(changedPaper(mixed, from, to));
      const brakes = (o: Outing): unknown =>
        o.train.vehicles.map(({ supplies, throughPipe, ...v }) => [
          supplies,
          throughPipe,
          v.brakes.map(({ kind, on, workedBy, parking, force }) => [kind, on, workedBy, parking, force?.low]),
        ]);
      expect(brakes(now), change.kind).toEqual(brakes(to));
    }
  });
});
