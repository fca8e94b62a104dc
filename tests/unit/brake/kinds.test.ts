/** What each kind of brake is, by the trade's rule: what its pipe carries, and what a torn hose or a failed supply does. */
import { describe, expect, it } from 'vitest';
import {
  airBrakeOf,
  airKinds,
  automaticKinds,
  brakeKinds,
  brakeOf,
  isAirKind,
  isByArm,
  isElectric,
  isPushed,
  isThrough,
  isVacuumKind,
  keptIn,
} from '../../../engine/things/brake/kinds/index.ts';

/** Of each kind what is not said is no. */
const trade = {
  'engine-only': {},
  'straight-air': { through: true, air: true },
  'automatic-air': { through: true, air: true },
  'simple-vacuum': { through: true, air: true, vacuum: true },
  'automatic-vacuum': { through: true, air: true, vacuum: true },
  electric: { through: true, electric: true },
  mechanical: { arm: true },
  surge: { pushed: true },
};

it.each(Object.entries(trade))('%s is %o', (kind, is) => {
  const of = kind as keyof typeof trade;
  const said = {
    through: isThrough(of),
    air: isAirKind(of),
    vacuum: isVacuumKind(of),
    electric: isElectric(of),
    arm: isByArm(of),
    pushed: isPushed(of),
  };
  expect(Object.fromEntries(Object.entries(said).filter(([, yes]) => yes))).toEqual(is);
});

it('every kind is one of these, and four carry air', () => {
  expect([...brakeKinds].sort()).toEqual(Object.keys(trade).sort());
  expect([...airKinds].sort()).toEqual([
    'automatic-air',
    'automatic-vacuum',
    'simple-vacuum',
    'straight-air',
  ]);
});

it.each([
  // The gear of an engine alone stays as it is when a hose parts; without steam nobody knows, unless it parks.
  ['engine-only', {}, 'as-set', 'unknown'],
  ['engine-only', { parking: true }, 'as-set', 'as-set'],
  ['straight-air', {}, 'lost', 'as-set'],
  ['automatic-air', {}, 'applies', 'applies'],
  ['simple-vacuum', {}, 'lost', 'lost'],
  ['automatic-vacuum', {}, 'applies', 'applies'],
  ['electric', { onSupplyLoss: 'applies' }, 'applies', 'applies'],
  ['electric', { onSupplyLoss: 'lost' }, 'lost', 'lost'],
  ['electric', {}, 'unknown', 'unknown'],
  ['mechanical', {}, 'as-set', 'as-set'],
  ['surge', {}, 'released', 'as-set'],
] as const)('%s %o: hose parts, %s; supply fails, %s', (kind, gear, parted, engineFails) => {
  expect(brakeOf(kind).supplyLost({ parking: false, ...gear })).toEqual({ parted, engineFails });
});

describe('the pipe', () => {
  // 14.7 lb/in² of air, 70 lb/in² charged, 40 lb/in² of straight air or 20 inHg of vacuum worked with.
  const air = { atmosphere: 101_325, charge: 482_600, working: 275_800 };
  const vacuum = { ...air, working: 67_700 };
  it.each([
    ['straight-air', air, 377_125, 101_325],
    ['automatic-air', air, 101_325, 583_925],
    ['simple-vacuum', vacuum, 33_625, 101_325],
    ['automatic-vacuum', vacuum, 101_325, 33_625],
  ] as const)('of %s stands, applied and released', (kind, day, applied, released) => {
    expect(airBrakeOf(kind).pipe(true, day)).toBe(applied);
    expect(airBrakeOf(kind).pipe(false, day)).toBe(released);
  });
  it.each([
    ['straight-air', 'straight', 'main reservoir'],
    ['automatic-air', 'triple valve', 'car reservoir'],
    ['simple-vacuum', 'straight', undefined],
    ['automatic-vacuum', 'ball valve', undefined],
  ] as const)('of %s works its cylinders by %s, from %s', (kind, cylinder, kept) => {
    expect(airBrakeOf(kind).cylinder).toBe(cylinder);
    expect(keptIn(kind)).toBe(kept);
  });
});

it('a guard has a valve where letting the pipe fill or fall applies; what is lost with its hose can be made so', () => {
  expect(brakeKinds.filter((kind) => brakeOf(kind).guardsValve)).toEqual([
    'automatic-air',
    'automatic-vacuum',
  ]);
  expect(brakeOf('straight-air').madeAutomatic).toBe('automatic-air');
  expect(brakeOf('simple-vacuum').madeAutomatic).toBe('automatic-vacuum');
  expect([...automaticKinds].sort()).toEqual(['automatic-air', 'automatic-vacuum']);
});
