/** What does not fit is cleared by a change that is tried: the finding is gone when the outing is asked again. */
import { describe, expect, it } from 'vitest';
import { familiesFor } from '../../../engine/answer/families.ts';
import { exact } from '../../../engine/base/quantity.ts';
import { applyChange } from '../../../engine/outing/change.ts';
import { openOuting } from '../../../engine/outing/open.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import type { Finding } from '../../../engine/questions/finding.ts';
import { askHumps } from '../../../engine/questions/humps/ask.ts';
import { askStandards } from '../../../engine/questions/standards/ask.ts';
import { askWheels } from '../../../engine/questions/wheels/ask.ts';
import type { Vehicle } from '../../../engine/things/vehicle/types.ts';
import { crested } from '../../support/crested.ts';
import { party, plain } from '../../support/rules.ts';
import { wheeled } from '../../support/wheeled.ts';

type Ask = (outing: Outing) => readonly Finding[];
const wheels: Ask = (outing) => askWheels(openOuting(outing)).findings;
const standards: Ask = (outing) => askStandards(openOuting(outing)).findings;
const humps: Ask = (outing) => askHumps(openOuting(outing)).findings;

/** The kinds of change after which nothing of that code is found any more. */
function clearing(outing: Outing, ask: Ask, code: Finding['code']): string[] {
  const finding = ask(outing).find((f) => f.code === code);
  if (!finding) throw new Error(`${code} is not found`);
  const changes = familiesFor(outing, finding).flatMap((family) => family.changes);
  const good = changes.filter((c) => ask(applyChange(outing, c)).every((f) => f.code !== code));
  return [...new Set(good.map((c) => c.kind))];
}

describe('wheels that only a workshop puts right stay behind with their car', () => {
  it.each([
    ['wheel-worn', wheeled({ hollow: 0.003 })],
    ['wheel-diameters-differ', wheeled({ diameters: [0.11, 0.112] })],
    ['back-to-back-varies', wheeled({ backToBack: [0.174, 0.1753] })],
  ] as const)('%s', (code, outing) => {
    expect(clearing(outing, wheels, code)).toEqual(['fewer-cars']);
  });
});

describe('a sheet', () => {
  const ruled = (limits: NonNullable<Outing['host']['standards']>, riders = party(2)): Outing => {
    const outing = plain(3, { riders });
    return { ...outing, host: { ...outing.host, standards: limits } };
  };

  it('of the length of the train is met by fewer cars', () => {
    const whole = openOuting(plain(3)).loaded.length;
    const outing = ruled({ trainLength: { most: whole - 0.1, source: 'sheet' } });
    expect(clearing(outing, standards, 'standard-refused')).toEqual(['fewer-cars']);
  });

  it('of the load on an axle is met by fewer riders', () => {
    const whole = ruled({});
    const { loaded } = openOuting(whole);
    const car = loaded.vehicles.findIndex((v) => v.riders.some((r) => r.rider.duty === 'rider'));
    const { id } = loaded.vehicles[car].vehicle;
    const heavier = {
      ...whole,
      riders: whole.riders.map((r) => (r.vehicle === id ? { ...r, mass: exact(2000) } : r)),
    };
    const outing = { ...heavier, host: ruled({ axleLoad: { most: 400, source: 'sheet' } }).host };
    expect(clearing(outing, standards, 'standard-refused')).toContain('fewer-riders');
  });
});

it('what grounds only under people is cleared by fewer of them', () => {
  const heights = [0, 40, 41, 42, 80].map((at) => ({ at, height: at < 41 ? 0.1 * at : 8.2 - 0.1 * at }));
  const base = crested(heights, [
    { length: 1.2, overhang: 0.2 },
    { length: 3.6, overhang: 0.9 },
  ]);
  const over = (height: number, changes: Partial<Outing>): Outing => ({
    ...base,
    ...changes,
    train: {
      ...base.train,
      vehicles: base.train.vehicles.map(
        (v, i): Vehicle =>
          i === 0
            ? v
            : {
                ...v,
                lowParts: [{ name: 'step', at: 1.8, height }],
                suspension: { wheelStiffness: exact(20_000), equalised: true },
              },
      ),
    },
  });
  const strikes = (outing: Outing): boolean => humps(outing).some((f) => f.code === 'part-strikes-track');
  const riders = party(1).map((r) => ({ ...r, vehicle: base.train.vehicles[1].id }));
  const height = Array.from({ length: 300 }, (_, i) => 0.02 + i / 1000).find(
    (h) => !strikes(over(h, { riders: [] })),
  );
  const outing = over(height ?? Number.NaN, { riders });
  expect(strikes(outing)).toBe(true);
  expect(clearing(outing, humps, 'part-strikes-track')).toEqual(
    expect.arrayContaining(['part-lifted', 'fewer-riders', 'fewer-cars']),
  );
});
