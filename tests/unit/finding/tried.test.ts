/**
 * What is tried for a finding, and how large a change it is taken for: the smaller is told first. A wet rail, four cars behind
 * the engine of which the second has no brake and stands before one that has, two riders on the first.
 */
import { describe, expect, it } from 'vitest';
import { familiesFor } from '../../../engine/answer/families.ts';
import { exact } from '../../../engine/base/quantity.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import type { Finding } from '../../../engine/questions/finding.ts';
import { brakedTrain } from '../../support/braked-trains.ts';
import { gearOf } from '../../support/brakes-left.ts';
import { altered, plain, rider } from '../../support/rules.ts';

const base = plain(4, { train: brakedTrain('straight-air', 4), plannedSpeed: 3 });
const outing: Outing = {
  ...altered(altered(base, 2, { brakes: [] }), 1, { brakes: [gearOf('straight-air')] }),
  riders: [rider('light', '1', { mass: exact(40) }), rider('heavy', '2')],
  conditions: { ...base.conditions, railState: 'wet' },
};
const finding = (code: Finding['code'], more: object = {}): Finding =>
  ({
    code,
    where: { vehicle: 'car1', gap: 1, from: 10, to: 20 },
    found: { kind: 'speed', si: 1 },
    required: { kind: 'speed', si: 2 },
    facts: {},
    remedies: [],
    ...more,
  }) as unknown as Finding;
const tried = (of: Outing, code: Finding['code'], more?: object) =>
  familiesFor(of, finding(code, more)).filter(({ changes }) => changes.length > 0);
const sizes = (of: Outing, code: Finding['code'], more?: object): string =>
  tried(of, code, more)
    .map(({ size, changes }) => `${changes[0].kind} ${size}`)
    .join(', ');

const lighter = 'fewer-riders 4, fewer-cars 6, brake-car 12';
const chains = 'chain-size 1, chain-size 2, chain-size 3, chain-size 4';

it('what fails and runs off a dead end is tried slower there, from twice its way before; what rolls back off it is not', () => {
  const off = (more: object) => ({
    facts: { outcome: 'leaves-line', side: 'on', way: { kind: 'length', si: 4 }, ...more },
  });
  const slower = (of: Outing, more: object = {}) =>
    tried(of, 'failure-runs-away', off(more)).flatMap(({ changes }) =>
      changes.filter((c) => c.kind === 'slower'),
    );
  const { length } = outing.line;
  expect(slower(outing)[0]).toMatchObject({ from: 2, to: length });
  expect(slower(outing, { way: { kind: 'length', si: 40 } })[0]).toMatchObject({ from: 0, to: length });
  expect(slower({ ...outing, direction: 'reverse' })[0]).toMatchObject({ from: 0, to: length - 2 });
  const mph = slower(outing).map((c) => (c.kind === 'slower' ? c.speed / 0.44704 : 0));
  expect([Math.max(...mph), Math.min(...mph)]).toEqual([6.5, 2]);
  expect(slower(outing, { side: 'back' })).toEqual([]);
  expect(slower(outing, { outcome: 'overturns' })).toEqual([]);
});

it.each([
  ['cannot-stop', `rail-state 3, order 2, slower-everywhere 1.5, ${lighter}`],
  ['too-slow-to-drive', `rail-state 3, order 2, ${lighter}`],
  ['brake-does-not-hold-fall', `rail-state 3, order 2, ${lighter}`],
  ['speed-limited', 'slower 1, order 2, fewer-cars 8, brake-car 12'],
  ['gap-needed', 'slower-everywhere 1.5, order 2, fewer-cars 8, brake-car 12'],
  ['sight-unknown', 'slower-everywhere 1.5'],
  ['cannot-start', 'rail-state 1, rail-state 3, fewer-riders 3, fewer-cars 6'],
  ['slow-on-grade', 'rail-state 1, rail-state 3, fewer-riders 3, fewer-cars 6'],
  ['does-not-hold', 'fewer-riders 3, fewer-cars 6, parking-brake 9'],
  ['holds-only-while-brake-is-tight', 'fewer-riders 3, fewer-cars 6, parking-brake 9'],
  ['no-parking-brake', 'parking-brake 9'],
  ['wheels-slide', 'rail-state 3'],
  ['no-brake-answers', 'driver-brake 10'],
  ['brake-pipe-broken', 'order 2, fewer-cars 5'],
  ['coupler-overloaded', 'fewer-riders 3, fewer-cars 6'],
  [
    'tail-runs-away',
    `chains 1, ${chains}, guard 2, brake-kind 7, fewer-cars 6, brake-car 12, slower-everywhere 1.5`,
  ],
  [
    'held-train-runs-away',
    `chains 1, ${chains}, guard 2, brake-kind 7, fewer-cars 6, brake-car 12, slower-everywhere 1.5`,
  ],
  ['chain-too-weak', chains],
  ['flange-strikes-floor', 'fewer-cars 5'],
  ['back-to-back-varies', 'fewer-cars 5'],
  ['standard-refused', 'fewer-cars 5'],
] as const)('for %s: %s', (code, families) => expect(sizes(outing, code)).toBe(families));

describe('a change', () => {
  const of = (code: Finding['code'], kind: string, more?: object) =>
    tried(outing, code, more)
      .map(({ changes }) => changes)
      .filter(([first]) => first.kind === kind);
  it('leaves cars from the rear, and one of them stays', () =>
    expect(of('cannot-stop', 'fewer-cars')).toMatchObject([
      [{ leave: ['car4'] }, { leave: ['car3', 'car4'] }, { leave: ['car2', 'car3', 'car4'] }],
    ]));
  it('leaves the heaviest rider first', () =>
    expect(of('cannot-stop', 'fewer-riders')).toMatchObject([
      [{ leave: ['heavy'] }, { leave: ['heavy', 'light'] }],
    ]));
  it('puts braked cars first', () =>
    expect(of('cannot-stop', 'order')).toMatchObject([
      [{ order: ['engine', 'car1', 'car3', 'car4', 'car2'] }],
    ]));
  it('brakes the car that has none like one that is braked', () =>
    expect(of('cannot-stop', 'brake-car')).toMatchObject([[{ vehicle: 'car2', like: 'car1' }]]));
  it('makes straight air automatic', () =>
    expect(of('tail-runs-away', 'brake-kind')).toMatchObject([[{ brake: 'automatic-air' }]]));
  it('runs slower by halves of a mile an hour, from just below what is planned to what somebody drives', () => {
    const halves = of('cannot-stop', 'slower-everywhere')[0].map((c) =>
      'speed' in c ? c.speed / 0.22352 : 0,
    );
    // 3 m/s are 13.42 halves; four are 2 mph.
    expect(halves.map((h) => Math.round(h * 1e6) / 1e6)).toEqual(
      Array.from({ length: 10 }, (_, i) => 13 - i),
    );
  });
  it('runs slower there, rounded down to a half, in the line’s own chainage', () => {
    const [[slower]] = of('speed-limited', 'slower');
    expect(slower).toMatchObject({ from: 10, to: 20 });
    expect('speed' in slower ? slower.speed : 0).toBeCloseTo(4 * 0.22352, 9);
    const [{ changes }] = tried({ ...outing, direction: 'reverse' }, 'speed-limited');
    const { length } = outing.line;
    expect(changes).toMatchObject([{ from: length - 20, to: length - 10 }]);
    expect(of('speed-limited', 'slower', { found: { kind: 'speed', si: 0.1 } })).toEqual([]);
  });
  it('of a chain is on its gap, or on all where several are too weak', () => {
    expect(of('chain-too-weak', 'chain-size')[0][0]).toMatchObject({ gap: 1, grade: 30 });
    expect(of('chain-too-weak', 'chain-size', { facts: { others: 1 } })[0][0]).not.toHaveProperty('gap');
  });
  it('on a dry rail is sand, and none once it is sanded', () => {
    const on = (railState: Outing['conditions']['railState']) => ({
      ...outing,
      conditions: { ...outing.conditions, railState },
    });
    expect(tried(on('dry'), 'wheels-slide')).toMatchObject([{ size: 1, changes: [{ state: 'sanded' }] }]);
    expect(tried(outing, 'wheels-slide')).toMatchObject([{ size: 3, changes: [{ state: 'dry' }] }]);
    expect(tried(on('sanded'), 'wheels-slide')).toEqual([]);
  });
  it('leaves no engine, and no car where no engine stays', () => {
    const engine = { where: { vehicle: 'engine' } };
    expect(sizes(outing, 'back-to-back-varies', engine)).toBe('');
    const cars = { ...outing, train: { ...outing.train, vehicles: outing.train.vehicles.slice(1) } };
    expect(sizes(cars, 'back-to-back-varies')).toBe('');
  });
});
