/** Which brakes of a train answer the driver, and why the others do not, by the trade's rule. */
import { describe, expect, it } from 'vitest';
import { exact } from '../../../engine/base/quantity.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import { gearStates, onlyParks, pipeCrosses, suppliedKinds } from '../../../engine/things/brake/system.ts';
import type { BrakeGear, Vehicle } from '../../../engine/things/vehicle/types.ts';
import { braked, gearOf } from '../../support/brakes-left.ts';
import { altered, rider } from '../../support/rules.ts';

/** One word for each gear: what it does, or why not. */
const said = (outing: Outing): string =>
  gearStates(outing)
    .map((s) => (s.answers ? 'answers' : s.why))
    .join(' ');
const all = 'answers answers answers';
const own = gearOf('engine-only');
const without =
  (...keys: (keyof Vehicle)[]) =>
  (outing: Outing, at: number): Outing => {
    const vehicles = outing.train.vehicles.map((v, i) => {
      if (i !== at) return v;
      const bare = { ...v } as Record<string, unknown>;
      for (const key of keys) delete bare[key];
      return bare as unknown as Vehicle;
    });
    return { ...outing, train: { ...outing.train, vehicles } };
  };
const air = braked({ kind: 'straight-air' });

describe('a brake through the train', () => {
  it.each(['straight-air', 'automatic-air', 'simple-vacuum', 'automatic-vacuum', 'electric'] as const)(
    '%s answers where the engine works it and every car carries it on',
    (kind) => expect(said(braked({ kind }))).toBe(all),
  );
  it('without a supply does not', () => {
    const none = altered(air, 0, { supplies: [] });
    expect(said(none)).toBe('no-supply no-supply no-supply');
    expect(said(altered(air, 0, { supplies: ['automatic-vacuum'] }))).toBe(
      'kinds-differ kinds-differ kinds-differ',
    );
  });
  it('of a car of another kind is of another kind, and so is what stands behind it', () => {
    const mixed = altered(air, 2, { brakes: [gearOf('automatic-vacuum')], throughPipe: [] });
    expect(said(mixed)).toBe('answers kinds-differ kinds-differ');
    expect(said(altered(mixed, 2, { throughPipe: ['straight-air'] }))).toBe('answers kinds-differ answers');
  });
  it('behind a car without a pipe is behind a broken pipe', () => {
    const bare = altered(air, 2, { brakes: [], throughPipe: [] });
    expect(said(bare)).toBe('answers pipe-broken');
    expect(said(altered(bare, 2, { throughPipe: ['straight-air'] }))).toBe('answers answers');
    expect(said(altered(bare, 2, { brakes: [gearOf('mechanical')] }))).toBe(
      'answers out-of-reach pipe-broken',
    );
  });
  it('behind where the pipe is said to be broken does not, and before it does', () => {
    expect(said(braked({ kind: 'straight-air', pipeBrokenAfter: [0] }))).toBe(
      'pipe-broken pipe-broken pipe-broken',
    );
    expect(said(braked({ kind: 'straight-air', pipeBrokenAfter: [2] }))).toBe('answers answers pipe-broken');
  });
  it('is worked from an engine at either end', () => {
    const [engine, ...cars] = air.train.vehicles;
    const pushed = { ...air, train: { ...air.train, vehicles: [...cars, engine] } };
    expect(said(pushed)).toBe(all);
    expect(said({ ...pushed, train: { ...pushed.train, pipeBrokenAfter: [0] } })).toBe(
      'pipe-broken answers answers',
    );
    const both = [engine, ...cars, { ...engine, id: 'second' }];
    const between = { ...air, train: { ...air.train, vehicles: both, pipeBrokenAfter: [1] } };
    // With nobody on it the second engine supplies nobody’s brake.
    expect(said(between)).toBe('answers pipe-broken pipe-broken');
    const manned = ['engine', 'second'].map((vehicle) =>
      rider(vehicle, 'driver', { vehicle, duty: 'driver' }),
    );
    const crewed = { ...between, riders: manned };
    expect(said(crewed)).toBe(all);
  });
  it('that somebody else works is theirs', () =>
    expect(said(braked({ kind: 'straight-air', gear: { workedBy: 'guard' } }))).toBe(
      'worked-by-another worked-by-another worked-by-another',
    ));
});

describe('a surge brake', () => {
  it('is pushed on by an engine ahead that brakes, and by no car or parking screw', () => {
    expect(said(braked({ kind: 'surge', engine: own }))).toBe(`answers ${all}`);
    const none = 'nothing-to-push-it nothing-to-push-it nothing-to-push-it';
    expect(said(braked({ kind: 'surge' }))).toBe(none);
    const screw = gearOf('mechanical', { parking: true });
    expect(said(braked({ kind: 'surge', engine: screw }))).toBe(`only-parks ${none}`);
    const guards = { ...own, workedBy: 'guard' } as const;
    expect(said(braked({ kind: 'surge', engine: guards }))).toBe(`worked-by-another ${none}`);
    const tender = altered(braked({ kind: 'surge', engine: own }), 0, { role: 'tender' });
    expect(said(tender)).toBe(`answers ${all}`);
    const [engine, ...cars] = braked({ kind: 'surge', engine: own }).train.vehicles;
    const behind = { ...air, train: { ...air.train, vehicles: [...cars, engine] } };
    expect(said(behind)).toBe(`${none} answers`);
  });
});

describe('a parking brake worked by arm', () => {
  const parked = (of: Partial<BrakeGear>) =>
    said(braked({ kind: 'straight-air', engine: gearOf('mechanical', { parking: true, ...of }) })).split(
      ' ',
    )[0];
  it('is no part of a stop, but for a lever that stops too', () => {
    expect(parked({})).toBe('only-parks');
    expect(parked({ stops: true })).toBe('answers');
  });
});

describe('what an engine works for the train', () => {
  const [engine, car] = air.train.vehicles;
  it('is what is said, else the kinds through the train that are on it', () => {
    expect(suppliedKinds(engine)).toEqual(['straight-air']);
    expect(suppliedKinds({ ...engine, supplies: ['straight-air', 'mechanical'] })).toEqual(['straight-air']);
    const { supplies: _, ...silent } = engine;
    expect(suppliedKinds(silent)).toEqual([]);
    expect(suppliedKinds({ ...silent, brakes: [own, gearOf('automatic-air')] })).toEqual(['automatic-air']);
    expect(suppliedKinds(car)).toEqual([]);
  });
  it('of an engine that says nothing and has the brake, answers', () => {
    const silent = without('supplies')(altered(air, 0, { brakes: [gearOf('straight-air')] }), 0);
    expect(said(silent)).toBe(`answers ${all}`);
  });
});

it('a pipe crosses a gap where both sides carry it on and it is not broken', () => {
  const crosses = (outing: Outing): boolean[] =>
    [0, 1, 2].map((gap) => pipeCrosses(outing.train, gap, 'straight-air'));
  expect(crosses(air)).toEqual([true, true, true]);
  expect(crosses(braked({ kind: 'straight-air', pipeBrokenAfter: [1] }))).toEqual([true, false, true]);
  expect(crosses(altered(air, 2, { brakes: [], throughPipe: [] }))).toEqual([true, false, false]);
  expect(crosses(altered(air, 0, { supplies: [] }))).toEqual([false, true, true]);
});

it('a screw only parks; a lever that stays where it is pulled stops too; a pipe never only parks', () => {
  const lever = { leverRatio: 6, efficiency: exact(0.8), block: 'cast-iron' } as const;
  const parking = (more: object) => onlyParks(gearOf('mechanical', { parking: true, ...more }));
  expect(parking({})).toBe(true);
  expect(parking({ hand: lever })).toBe(false);
  expect(parking({ hand: { ...lever, screwLead: 0.004 } })).toBe(true);
  expect(parking({ hand: { ...lever, wheelRadius: 0.06 } })).toBe(true);
  expect(onlyParks(gearOf('mechanical'))).toBe(false);
  expect(onlyParks(gearOf('automatic-air', { parking: true }))).toBe(false);
});
