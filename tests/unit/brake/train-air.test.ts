/** What of a train's air hangs on what, with its volumes, passages and pressures at the start: laid by hand. All made up. */
import { describe, expect, it } from 'vitest';
import { cylinderParts, hoseArea, pipeParts } from '../../../engine/things/brake/parts.ts';
import { trainAir } from '../../../engine/things/brake/train-air.ts';
import { loadTrain } from '../../../engine/things/train/loaded.ts';
import type { Train } from '../../../engine/things/train/types.ts';
import type { BrakeGear, BrakeRigging, Vehicle } from '../../../engine/things/vehicle/types.ts';
import { brakedTrain, riggingFor, supplyFor } from '../../support/braked-trains.ts';
import { assumedValues } from '../../support/random-outings.ts';

const sea = 101_325;
const { brakeParts: values } = assumedValues;
const disc = (d: number): number => (Math.PI / 4) * d * d;
const choke = (d: number): number => 0.65 * disc(d);
type Kind = Parameters<typeof trainAir>[1];
const laid = (kind: Kind, action: 'apply' | 'release', train: Train = brakedTrain(kind, 2)) =>
  trainAir(loadTrain(train, []), kind, action, sea, values);
const withCars = (train: Train, change: (v: Vehicle, i: number) => Vehicle): Train => ({
  ...train,
  vehicles: train.vehicles.map(change),
});
/** One gear of the kind with its rigging otherwise. */
const gearOf = (kind: Kind, rigging: Partial<BrakeRigging> = {}): BrakeGear => ({
  ...(brakedTrain(kind, 1).vehicles[1].brakes[0] as BrakeGear),
  rigging: riggingFor(kind, rigging),
});

describe('parts of a cylinder', () => {
  it('sweep the bore’s disc by the stroke, each, and leave what is stated, or 15 %', () => {
    const parts = cylinderParts(gearOf('straight-air', { cylinders: 2 }));
    if ('missing' in parts) throw new Error(parts.missing);
    const swept = 2 * disc(0.05) * 0.04;
    expect(parts.area).toBeCloseTo(2 * disc(0.05), 12);
    expect(parts.piston.swept).toBeCloseTo(swept, 12);
    expect(parts.piston.clearance).toBeCloseTo(0.15 * swept, 12);
    expect(parts.piston.strokeAt).toBeCloseTo(80 / disc(0.05), 6);
    expect(parts.choke).toBeCloseTo(2 * choke(0.003), 15);
    expect(parts.assumed).toEqual(['cylinderVolume']);
  });

  it('as stated where more than is swept; a choke as wide as its hose where none is', () => {
    const { chokeDiameter: _, springForce: __, ...open } = riggingFor('straight-air');
    const swept = disc(0.05) * 0.04;
    const parts = (cylinderVolume: number) =>
      cylinderParts({ ...gearOf('straight-air'), rigging: { ...open, cylinderVolume } });
    expect(parts(1.2 * swept)).toMatchObject({
      piston: { clearance: expect.closeTo(0.2 * swept, 12) },
      choke: expect.closeTo(choke(0.006), 15),
      assumed: ['chokeDiameter', 'springForce'],
    });
    expect(parts(swept)).toMatchObject({ piston: { clearance: expect.closeTo(0.15 * swept, 12) } });
  });

  it('asks for what is not said: rigging, stroke, hose', () => {
    const gear = gearOf('straight-air');
    const { rigging: _, ...bare } = gear;
    expect(cylinderParts(bare)).toEqual({ missing: 'rigging' });
    const { stroke: _s, ...noStroke } = riggingFor('straight-air');
    expect(cylinderParts({ ...gear, rigging: noStroke })).toEqual({ missing: 'rigging.stroke' });
    const { chokeDiameter: _c, hoseDiameter: _h, ...noHose } = riggingFor('straight-air');
    expect(cylinderParts({ ...gear, rigging: noHose })).toEqual({ missing: 'rigging.hoseDiameter' });
  });

  it('a hose passes as much as an orifice that loses two and a half heads and its friction', () => {
    expect(hoseArea(0.01, 3)).toBeCloseTo(disc(0.01) / Math.sqrt(2.5 + 9), 15);
  });

  it('a vehicle’s pipe is its own, or as the train’s; as large as stated, or by its length', () => {
    const [engine, car] = brakedTrain('straight-air', 1).vehicles;
    expect(pipeParts(car, 0.02)).toEqual({
      volume: expect.closeTo(disc(0.006) * 2.4, 15),
      diameter: 0.006,
      assumed: ['pipeVolume'],
    });
    const { brakeSupply: _, ...bare } = engine;
    expect(pipeParts(bare, 0.02)).toMatchObject({ diameter: 0.02, assumed: ['hoseDiameter', 'pipeVolume'] });
    const stated = { ...car, brakes: [gearOf('straight-air', { pipeVolume: 1e-4 })] };
    expect(pipeParts(stated, 0.02)).toMatchObject({ volume: 1e-4, assumed: [] });
  });
});

describe('straight air', () => {
  it('is let from the reservoir into the pipe and on into each cylinder', () => {
    const { nodes, gears, missing } = laid('straight-air', 'apply');
    expect(missing).toEqual([]);
    expect(nodes.map((n) => [n.name, n.parent, n.way, n.start])).toEqual([
      ['main reservoir', -1, 'both', sea + 500_000],
      ['pipe of the engine', 0, 'in', sea],
      ['pipe of car1', 1, 'both', sea],
      ['pipe of car2', 2, 'both', sea],
      ['cylinder of car1', 2, 'both', sea],
      ['cylinder of car2', 3, 'both', sea],
    ]);
    expect(nodes[0]).toMatchObject({ area: 0, body: { kind: 'rigid', volume: 0.02 } });
    expect(nodes[0].pump).toBeUndefined();
    // The driver shuts the valve as the pipe comes to what works.
    expect(nodes[1].laps).toEqual({ at: sea + 300_000, over: values.lapsOver * 300_000 });
    expect(nodes[1].area).toBeCloseTo(choke(0.006), 15);
    expect(nodes[2].area).toBeCloseTo(hoseArea(0.006, 2.2), 15);
    expect(nodes[3].area).toBeCloseTo(hoseArea(0.006, 2.4), 15);
    expect(nodes[4].body).toMatchObject({ kind: 'piston', behind: { pressure: sea }, pull: false });
    expect(gears.map((g) => [g.vehicle, g.along, g.spring])).toEqual([
      [1, expect.closeTo(2.2, 12), 80],
      [2, expect.closeTo(4.6, 12), 80],
    ]);
    expect(gears[0].working).toBeCloseTo(300_000 * disc(0.05) - 80, 6);
    const p = Float64Array.of(0, 0, sea + 200_000, 0, sea + 150_000, 0);
    expect(gears[0].difference(p)).toBe(150_000);
    expect(gears[0].waits(p)).toBe(true);
    p[4] = sea + 197_001;
    expect(gears[0].waits(p)).toBe(false);
    p[4] = sea + 196_999;
    expect(gears[0].waits(p)).toBe(true);
  });

  it('is let out to the open, from what works down to nothing', () => {
    const { nodes } = laid('straight-air', 'release');
    expect(nodes.map((n) => n.name)).not.toContain('main reservoir');
    expect(nodes[0]).toMatchObject({
      parent: -1,
      start: sea + 300_000,
      vents: [{ area: choke(0.006), pressure: sea, way: 'both' }],
    });
    expect(nodes.at(-1)?.start).toBe(sea + 300_000);
  });

  it('without a reservoir that was measured comes from a supply without end; a pump fills one that was', () => {
    const { reservoirVolume: _, ...endless } = supplyFor('straight-air');
    const supplied = (brakeSupply: NonNullable<Vehicle['brakeSupply']>) =>
      laid(
        'straight-air',
        'apply',
        withCars(brakedTrain('straight-air', 1), (v, i) => (i === 0 ? { ...v, brakeSupply } : v)),
      );
    expect(supplied(endless).nodes[0]).toMatchObject({
      name: 'pipe of the engine',
      vents: [{ pressure: sea + 300_000, way: 'both' }],
    });
    expect(supplied({ ...supplyFor('straight-air'), rate: 0.001 }).nodes[0].pump).toEqual({
      freeAir: 0.001,
      upTo: sea + 500_000,
    });
  });

  it('reaches both ways from an engine in the middle, no farther than a brake needs', () => {
    const train = brakedTrain('straight-air', 3);
    const [engine, a, b, c] = train.vehicles;
    const { brakes: _, ...rest } = c;
    const { nodes } = laid('straight-air', 'apply', {
      ...train,
      vehicles: [a, engine, b, { ...rest, brakes: [] }],
    });
    expect(nodes.filter((n) => n.name.startsWith('pipe')).map((n) => [n.name, n.parent])).toEqual([
      ['pipe of the engine', 0],
      ['pipe of car2', 1],
      ['pipe of car1', 1],
    ]);
  });
});

describe('simple and automatic vacuum', () => {
  it('an ejector draws the pipe down to what works, no lower than it reaches', () => {
    const { nodes, gears } = laid('simple-vacuum', 'apply', brakedTrain('simple-vacuum', 1));
    expect(nodes[0]).toMatchObject({
      parent: -1,
      vents: [],
      start: sea,
      suction: {
        rate: 0.004,
        lowest: expect.closeTo(sea - 80_000, 6),
        holds: expect.closeTo(sea - 65_000, 6),
      },
    });
    const cylinder = nodes.findIndex((n) => n.name.startsWith('cylinder'));
    expect(nodes[cylinder].body).toMatchObject({ pull: true });
    const p = new Float64Array(nodes.length).fill(sea - 30_000);
    expect(gears[0].difference(p)).toBeCloseTo(30_000, 9);
    const { rate: _, ...slow } = supplyFor('simple-vacuum');
    const train = withCars(brakedTrain('simple-vacuum', 1), (v, i) =>
      i === 0 ? { ...v, brakeSupply: slow } : v,
    );
    expect(laid('simple-vacuum', 'apply', train)).toMatchObject({
      nodes: [],
      gears: [],
      missing: [{ vehicle: 0, part: 'brakeSupply.rate' }],
    });
  });

  it('automatic: air comes in at the driver’s valve, the chamber keeps its vacuum behind the piston', () => {
    const { nodes, gears } = laid('automatic-vacuum', 'apply', brakedTrain('automatic-vacuum', 1));
    expect(nodes.map((n) => [n.name, n.parent, n.way])).toEqual([
      ['pipe of the engine', -1, 'both'],
      ['pipe of car1', 0, 'both'],
      ['train side of car1', 1, 'both'],
      ['chamber of car1', 2, 'out'],
    ]);
    expect(nodes[0].vents).toEqual([{ area: choke(0.012), pressure: sea, way: 'both' }]);
    expect(nodes.map((n) => n.start)).toEqual(Array(4).fill(expect.closeTo(sea - 65_000, 6)));
    expect(nodes[2].body).toMatchObject({ kind: 'piston', behind: { node: 3 }, pull: false });
    expect(nodes[3].body).toEqual({ kind: 'rigid', volume: 1.6e-3 });
    const p = Float64Array.of(sea, sea, 90_000, 40_000);
    expect(gears[0].difference(p)).toBe(50_000);
    expect(gears[0].waits(p)).toBe(true);
    p[2] = sea - 640;
    expect(gears[0].waits(p)).toBe(false);
    expect(gears[0].charge).toBeUndefined();
  });

  it('automatic, released: the train side at the day’s air, the chamber squeezed by the piston that is out', () => {
    const { nodes } = laid('automatic-vacuum', 'release', brakedTrain('automatic-vacuum', 1));
    const swept = disc(0.1) * 0.04;
    expect(nodes[2].start).toBe(sea);
    expect(nodes[3].start).toBeCloseTo(((sea - 65_000) * 1.6e-3) / (1.6e-3 - swept), 6);
    const missing = (chamberVolume: number | undefined) => {
      const { chamberVolume: _, ...rest } = riggingFor('automatic-vacuum');
      const rigging = chamberVolume === undefined ? rest : { ...rest, chamberVolume };
      const train = withCars(brakedTrain('automatic-vacuum', 1), (v, i) =>
        i === 0 ? v : { ...v, brakes: [{ ...gearOf('automatic-vacuum'), rigging }] },
      );
      return laid('automatic-vacuum', 'apply', train).missing.map((m) => [m.vehicle, m.part]);
    };
    expect(missing(undefined)).toEqual([[1, 'rigging.chamberVolume']]);
    expect(missing(swept)).toEqual([[1, 'rigging.chamberVolume']]);
    expect(missing(1.01 * swept)).toEqual([]);
  });
});

describe('automatic air', () => {
  const one = brakedTrain('automatic-air', 1);
  it('each car’s reservoir is fed from the pipe; the triple valve opens as the pipe falls below it', () => {
    const { nodes, gears } = laid('automatic-air', 'apply', one);
    expect(nodes.map((n) => [n.name, n.parent, n.way])).toEqual([
      ['pipe of the engine', -1, 'both'],
      ['pipe of car1', 0, 'both'],
      ['reservoir of car1', 1, 'in'],
      ['cylinder of car1', 2, 'in'],
    ]);
    expect(nodes[0].vents).toEqual([{ area: choke(0.006), pressure: sea, way: 'both' }]);
    expect(nodes.map((n) => n.start)).toEqual([sea + 500_000, sea + 500_000, sea + 500_000, sea]);
    expect(nodes[2].area).toBeCloseTo(choke(0.001), 15);
    expect(nodes[2].body).toEqual({ kind: 'rigid', volume: 2e-4 });
    const open = (below: number): number | undefined =>
      nodes[3].opening?.(Float64Array.of(0, 400_000, 400_000 + below, 0));
    const { tripleBegins: from, tripleOpens: over } = values;
    expect([open(from), open(from + over / 2), open(from + over), open(from + 2 * over), open(0)]).toEqual(
      [0, 0.5, 1, 1, 0].map((v) => expect.closeTo(v, 9)),
    );
    expect(gears[0].waits(Float64Array.of(0, 0, 300_000, 294_900))).toBe(true);
    expect(gears[0].waits(Float64Array.of(0, 0, 300_000, 295_100))).toBe(false);
    expect(gears[0].difference(Float64Array.of(0, 0, 0, sea + 7))).toBeCloseTo(7, 9);
    expect(gears[0].charge).toBeUndefined();
  });

  it('released: reservoir and cylinder equal, the cylinder let out, the reservoir charged anew', () => {
    const { nodes, gears } = laid('automatic-air', 'release', one);
    const swept = disc(0.05) * 0.04;
    const equal = ((sea + 500_000) * 2e-4 + sea * 0.15 * swept) / (2e-4 + 1.15 * swept);
    const [reservoir, cylinder] = nodes.slice(-2);
    expect([reservoir.start, cylinder.start]).toEqual([equal, equal].map((v) => expect.closeTo(v, 6)));
    expect(cylinder.vents).toEqual([{ area: expect.closeTo(choke(0.003), 15), pressure: sea, way: 'out' }]);
    expect(cylinder.opening?.(new Float64Array(nodes.length).fill(1e6))).toBe(0);
    const at = nodes.length;
    const p = new Float64Array(at).fill(sea + 500_000);
    p[at - 2] = sea + 250_000;
    expect(gears[0].charge?.(p)).toBeCloseTo(0.5, 12);
    expect(gears[0].waits(p)).toBe(true);
    p[at - 2] = sea + 490_001;
    expect(gears[0].waits(p)).toBe(false);
  });

  it('asks for the car’s reservoir and the engine’s pressure; feeds by a third of the choke where nobody says', () => {
    const changed = (rigging: BrakeRigging): Train =>
      withCars(one, (v, i) => (i === 0 ? v : { ...v, brakes: [{ ...gearOf('automatic-air'), rigging }] }));
    const { reservoirVolume: _, ...without } = riggingFor('automatic-air');
    expect(laid('automatic-air', 'apply', changed(without)).missing.map((m) => m.part)).toEqual([
      'rigging.reservoirVolume',
    ]);
    const { feedDiameter: _f, ...unfed } = riggingFor('automatic-air');
    expect(laid('automatic-air', 'apply', changed(unfed)).nodes[2].area).toBeCloseTo(choke(0.001), 15);
    const { chokeDiameter: _c, ...open } = unfed;
    expect(laid('automatic-air', 'apply', changed(open)).nodes[2].area).toBeCloseTo(choke(0.002), 15);
    const { pressure: _p, ...weak } = supplyFor('automatic-air');
    const unknown = withCars(brakedTrain('automatic-air', 2), (v, i) =>
      i === 0 ? { ...v, brakeSupply: weak } : v,
    );
    expect(laid('automatic-air', 'apply', unknown).missing).toEqual([
      { vehicle: 0, part: 'brakeSupply.pressure' },
    ]);
  });
});

it('nothing is laid of a kind that nobody supplies or has; without any hose that is asked for of each', () => {
  expect(laid('straight-air', 'apply', brakedTrain('automatic-vacuum', 1))).toEqual({
    nodes: [],
    gears: [],
    missing: [],
  });
  expect(laid('straight-air', 'apply', brakedTrain('straight-air', 0))).toEqual({
    nodes: [],
    gears: [],
    missing: [],
  });
  const { hoseDiameter: _, ...rigging } = riggingFor('straight-air');
  const { valveDiameter: _v, ...brakeSupply } = supplyFor('straight-air');
  const train = withCars(brakedTrain('straight-air', 2), (v, i) =>
    i === 0 ? { ...v, brakeSupply } : { ...v, brakes: [{ ...gearOf('straight-air'), rigging }] },
  );
  expect(laid('straight-air', 'apply', train).missing.map((m) => [m.vehicle, m.part])).toEqual([
    [1, 'rigging.hoseDiameter'],
    [2, 'rigging.hoseDiameter'],
  ]);
});
