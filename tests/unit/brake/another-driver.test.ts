/** Two drivers: what only the second can work comes on once the leading one has signalled. */

import { describe, expect, it } from 'vitest';
import { stopFrom } from '../../../desk/stops.ts';
import { answerOuting } from '../../../engine/answer/complete.ts';
import { exact } from '../../../engine/base/quantity.ts';
import { openOuting } from '../../../engine/outing/open.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import { casesOf } from '../../../engine/questions/failures/left.ts';
import { brakesLeft } from '../../../engine/questions/part/brakes-left.ts';
import { gearStates } from '../../../engine/things/brake/system.ts';
import type { BrakeGear, Vehicle } from '../../../engine/things/vehicle/types.ts';
import { changedExample } from '../../support/changed-examples.ts';

const gearOf = (kind: BrakeGear['kind'], on: readonly string[]): BrakeGear => ({
  id: kind,
  name: kind,
  kind,
  on,
  force: exact(300),
  workedBy: 'driver',
  parking: false,
  deadTime: exact(0.5),
  buildUp: exact(0.1),
});

const example = await changedExample('steam-light', () => undefined);
const engine = example.train.vehicles.find((v) => v.role === 'engine') as Vehicle;
const car = example.train.vehicles.find((v) => v.role === 'car') as Vehicle;
const driver = example.riders.find((r) => r.duty === 'driver') as Outing['riders'][number];
const groups = ({ groups: of }: Vehicle): string[] => of.map((g) => g.id);
const braked = (v: Vehicle, id: string, ...kinds: BrakeGear['kind'][]): Vehicle & { id: string } => ({
  ...v,
  id,
  name: id,
  brakes: kinds.map((k) => gearOf(k, groups(v))),
});

/** Two engines and two cars; a driver on each engine named. */
function train(
  vehicles: Outing['train']['vehicles'],
  drivers: readonly string[],
  broken: readonly number[] = [],
): Outing {
  return {
    ...example,
    train: { ...example.train, vehicles, pipeBrokenAfter: broken },
    riders: drivers.map((vehicle, i) => ({ ...driver, id: `d${i}`, name: `Driver ${i}`, vehicle })),
  };
}
const engines = [braked(engine, 'pilot', 'engine-only'), braked(engine, 'second', 'engine-only')];
const pipe = 'automatic-vacuum';
const cars = [braked(car, 'one', pipe), braked(car, 'two', pipe)];
const told = (outing: Outing): Record<string, string> =>
  Object.fromEntries(
    gearStates(outing).map((s) => [
      `${outing.train.vehicles[s.vehicle].id} ${s.gear.kind === pipe ? 'pipe' : 'own'}`,
      s.answers ? (s.signalled ? 'signalled' : 'at once') : String(s.why),
    ]),
  );
const flat = (length: number): Outing['line']['heights'] => [
  { at: 0, height: 0 },
  { at: length, height: 0 },
];
const stop = (outing: Outing): ReturnType<typeof stopFrom>['likely'] => stopFrom(outing, 300, 3).likely;

describe('what another driver works', () => {
  it('waits for a signal; without that driver it is nobody’s', () => {
    const vehicles = [...engines, braked(car, 'one')];
    expect(told(train(vehicles, ['pilot', 'second']))).toEqual({
      'pilot own': 'at once',
      'second own': 'signalled',
    });
    expect(told(train(vehicles, ['pilot']))).toEqual({
      'pilot own': 'at once',
      'second own': 'out-of-reach',
    });
    // The leading one is whoever sits in front, whoever is named first.
    expect(told(train(vehicles, ['second', 'pilot']))).toEqual({
      'pilot own': 'at once',
      'second own': 'signalled',
    });
  });

  it('a pipe goes by who can work an engine that supplies it', () => {
    const [pilot, second] = [
      braked(engine, 'pilot', 'engine-only', pipe),
      braked(engine, 'second', 'engine-only', pipe),
    ];
    const of = (first: Vehicle & { id: string }, drivers: string[], broken: number[] = []): string =>
      told(train([first, second, ...cars], drivers, broken))['two pipe'];
    expect(of(pilot, ['pilot', 'second'])).toBe('at once');
    expect(of(pilot, ['pilot', 'second'], [0])).toBe('signalled');
    expect(of(pilot, ['pilot'], [0])).toBe('pipe-broken');
    // A pilot without a pipe: the train engine's driver works it.
    expect(of(engines[0], ['pilot', 'second'])).toBe('signalled');
    // Worked from a car: no driver rides with the supply, so that it may have a valve there.
    expect(of(engines[0], ['one'])).toBe('at once');
  });

  it('comes on so much later, as reckoned by hand', () => {
    // Level and straight, nothing resists, wheels without inertia, motors that brake alike at any speed; 500 kg each.
    const vehicles = engines.map((v) => ({
      ...braked(v, v.id, 'electric'),
      tare: exact(400),
      rotatingShare: exact(0),
      loads: [],
      resistance: { rolling: exact(0), perSpeed: exact(0), perSpeedSquared: 0 },
    }));
    const both = train(vehicles, ['pilot', 'second'], [0]);
    const outing: Outing = {
      ...both,
      line: { ...both.line, loop: false, curves: [], heights: flat(both.line.length) },
      conditions: { ...both.conditions, reaction: exact(1) },
      riders: both.riders.map((r) => ({ ...r, mass: exact(100) })),
      assumed: { ...both.assumed, anotherDriver: exact(2) },
    };
    // 3 m/s for 1.55 s; one brake for 2 s; then both.
    const after = 3 - 0.3 * 2;
    expect(stop(outing).distance).toBeCloseTo(3 * 1.55 + ((3 + after) / 2) * 2 + after ** 2 / (2 * 0.6), 1);
  });

  it('is listed as taken, and asks for the signal until somebody says it', () => {
    const outing = train([...engines, braked(car, 'one')], ['pilot', 'second']);
    const codes = (of: Outing): string[] =>
      answerOuting(of, { remedies: false, counts: false }).findings.flatMap((f) =>
        f.code === 'assumed' && f.facts.key === 'another-driver' ? ['taken'] : [f.code],
      );
    expect(codes(outing)).toContain('taken');
    expect(codes(outing)).toContain('drivers-signals-not-said');
    const said = codes({ ...outing, signals: 'two long: shut off and brake' });
    expect(said).toContain('taken');
    expect(said).not.toContain('drivers-signals-not-said');
    const alone = codes(train([...engines, braked(car, 'one')], ['pilot']));
    expect(alone).not.toContain('taken');
    expect(alone).not.toContain('drivers-signals-not-said');
  });
});

describe('when something fails', () => {
  const left = (outing: Outing, half: 'head' | 'tail', first: number, last: number): (number | undefined)[] =>
    brakesLeft(openOuting(outing), first, last, half).groups.map((g) => g.deadTime.value);
  const outing = train([...engines, braked(car, 'one')], ['pilot', 'second']);
  const { anotherDriver } = outing.assumed;
  const acts = outing.conditions.reaction.value + 0.5;

  it('on the half that the leading driver rides on the other still waits, on the tail he acts by himself', () => {
    expect(new Set(left(outing, 'head', 0, 1))).toEqual(new Set([acts, acts + anotherDriver.value]));
    expect(new Set(left(outing, 'tail', 1, 2))).toEqual(new Set([acts]));
  });

  it('in the whole train too', () => {
    const [nothing] = casesOf(openOuting(outing));
    expect(new Set(nothing.left.groups.map((g) => g.deadTime.value))).toEqual(
      new Set([acts, acts + anotherDriver.value]),
    );
  });
});
