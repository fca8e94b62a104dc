/** Wear of wheels: rates by hand, what is worn out, what will be by the day of the outing. All made up. */
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lookAtFit } from '../../../desk/fit.ts';
import { exact, type Quantity } from '../../../engine/base/quantity.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import type { WearReading } from '../../../engine/things/wheel/types.ts';
import { daysLeft, wearRate } from '../../../engine/things/wheel/wear.ts';
import { dayNumber } from '../../../papers/due/day.ts';
import { wearTable } from '../../../views/tables/fit.ts';
import { tellFinding } from '../../../words/finding.ts';
import { changedExample, vehiclesOf } from '../../support/changed-examples.ts';
import { runs } from '../../support/tier.ts';
import { wheeled, wheelsSay } from '../../support/wheeled.ts';

const IN = 0.0254;
const FLANGE = (5 / 32) * IN;
const said = (outing: Outing): string[] =>
  wheelsSay(outing)
    .filter((f) => f.code.startsWith('wheel-w'))
    .map((f) => `${f.severity} ${f.code}${f.measure ? ` ${f.measure}` : ''}`);
const read = (
  ...points: readonly [number, number][]
): { readonly wear: WearReading[]; flangeThickness: Quantity } => ({
  wear: points.map(([day, flangeThickness]) => ({ day, flangeThickness })),
  flangeThickness: exact(points[points.length - 1][1]),
});
const voice = (outing: Outing) => ({ system: 'imperial', wording: 'us', outing }) as const;

describe('a rate', () => {
  const points = (...of: readonly [number, number][]) => of.map(([day, value]) => ({ day, value }));

  it('of two days is their difference; of more the line through all, or the last two where they wear faster', () => {
    expect(wearRate(points([0, 4], [100, 3]), -1)).toBeCloseTo(0.01, 12);
    expect(wearRate(points([0, 4], [100, 3.5], [200, 3]), -1)).toBeCloseTo(0.005, 12);
    expect(wearRate(points([0, 4], [100, 4], [200, 3]), -1)).toBeCloseTo(0.01, 12);
    // Least squares by hand: days −100 0 100, values 4 3 2.9: 110/20 000.
    expect(wearRate(points([0, 4], [100, 3], [200, 2.9]), -1)).toBeCloseTo(0.0055, 12);
    expect(wearRate(points([0, 4], [100, 5]), 1)).toBeCloseTo(0.01, 12);
  });

  it('is not told of one day, of one day twice, of what has grown back', () => {
    expect(wearRate(points([0, 4]), -1)).toBeUndefined();
    expect(wearRate(points([7, 4], [7, 3]), -1)).toBeUndefined();
    expect(wearRate(points([0, 3], [100, 4]), -1)).toBeUndefined();
    expect(wearRate(points([0, 5], [100, 3], [200, 4]), -1)).toBeUndefined();
    expect(wearRate(points([0, 4], [100, 4]), -1)).toBeUndefined();
  });

  it('more wear never leaves more days; a day later never fewer than a day less', () => {
    const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    fc.assert(
      fc.property(real(0.002, 0.004), real(1e-5, 1e-3), real(1e-5, 1e-3), (start, a, more) => {
        const left = (worn: number): number => {
          const rate = wearRate(points([0, start], [100, start - worn]), -1) ?? Number.NaN;
          return daysLeft(start - worn, 0.001, rate, -1);
        };
        expect(left(a + more)).toBeLessThanOrEqual(left(a));
      }),
      { numRuns: runs(50, 500) },
    );
    expect(daysLeft(3, 1, 0.01, -1)).toBe(200);
    expect(daysLeft(3, 1, 0.0101, -1)).toBe(198);
    expect(daysLeft(0.5, 1, 0.01, -1)).toBe(0);
  });
});

describe('a wheelset', () => {
  // 49 CFR 230.113 by gauge: 15/16 of 56 1/2; 49 CFR 229.75: 5/16.
  const [thin, hollow] = [15 / 16, 5 / 16].map((n) => (n / 56.5) * 7.25 * IN);

  it('is worn out by published practice where the host has no sheet', () => {
    expect(said(wheeled({ flangeThickness: exact(thin - 1e-6) }))).toEqual(['limits wheel-worn']);
    expect(said(wheeled({ flangeThickness: exact(thin + 1e-6) }))).toEqual([]);
    expect(said(wheeled({ hollow: hollow + 1e-6 }))).toEqual(['limits wheel-worn']);
    expect(said(wheeled({ hollow: hollow - 1e-6 }))).toEqual([]);
  });

  it('of its tread and its flange’s height is reckoned as its thickness is, in whatever order it was read', () => {
    const outing = wheeled({
      hollow: 5e-4,
      flangeHeight: 0.0045,
      wear: [
        { day: 200, hollow: 5e-4, flangeHeight: 0.0045 },
        { day: 0, hollow: 1e-4, flangeHeight: 0.0041 },
      ],
    });
    const standards = { flangeHeight: { most: 0.005, source: 'sheet' } };
    const { wear } = lookAtFit({ ...outing, host: { ...outing.host, standards } });
    const row = (of: string) => wear.find((w) => w.of === of && w.read !== null);
    // 0.4 mm in 200 days; 0.5 mm left of the height, 0.5 mm of what is left of the tread.
    expect(row('flangeHeight')).toMatchObject({ reaches: 450, host: true });
    expect(row('flangeHeight')?.rate).toBeCloseTo(2e-6, 15);
    expect(row('hollow')?.reaches).toBe(200 + Math.floor((hollow - 5e-4) / 2e-6));
    expect(row('hollow')?.read).toEqual({ first: 0, last: 200, days: 2 });
  });

  it('beyond the limit is told once: it is worn out, not that it will be', () => {
    const last = thin - 1e-5;
    expect(said({ ...wheeled(read([0, FLANGE], [100, last])), day: 5000 })).toEqual(['limits wheel-worn']);
  });

  it('by the host’s sheet where it has one: that question judges it', () => {
    const outing = wheeled({ flangeThickness: exact(thin - 1e-6) });
    const standards = { flangeThickness: { least: thin - 1e-4, source: 'sheet' } };
    expect(said({ ...outing, host: { ...outing.host, standards } })).toEqual([]);
  });

  it('is measured anew where it has worn to the limit by the day of the outing', () => {
    // Half a millimetre in 100 days; what is left lasts as long as it takes.
    const last = FLANGE - 5e-4;
    const days = Math.floor((last - thin) / 5e-6);
    const on = (day?: number): Outing => ({
      ...wheeled(read([0, FLANGE], [100, last])),
      ...(day === undefined ? {} : { day }),
    });
    expect(said(on(100 + days - 1))).toEqual([]);
    expect(said(on(100 + days))).toEqual(['limits wheel-wears-out vehicle.wheelsets.flangeThickness']);
    expect(said(on())).toEqual([]);
    const [finding] = wheelsSay(on(100 + days)).filter((f) => f.code === 'wheel-wears-out');
    expect(tellFinding(finding, voice(on())).what).toContain('a year it has worn to');
  });

  it('has a row for each figure with its rate and its day', () => {
    const outing = wheeled(read([20_000, FLANGE], [20_100, FLANGE - 5e-4]));
    const rows = wearTable(lookAtFit(outing), voice(outing)).rows;
    const row = rows.find((r) => r[7] === '2025-01-12, 2 days');
    expect(row?.[1]).toBe('flange thickness');
    expect(row?.[6]).toBe('0.072 in');
    expect(row?.[3]).toMatch(/^2025-0\d-\d\d$/);
  });
});

describe('in a paper', () => {
  const paper = (wheels: object, more: object = {}) =>
    changedExample('steam-light', (p) => {
      Object.assign(vehiclesOf(p)[1], { wheelsets: [{ name: 'leading', ...wheels }] }, more);
    });
  const wear = [
    { date: '2025-06-01', flangeThickness: '5/32 in' },
    { date: '2026-06-01', flangeThickness: '0.14 in', hollow: '0.01 in' },
  ];

  it('the latest reading counts beside what is stated, whichever is more worn', async () => {
    const only = await paper({ wear });
    const [w] = only.train.vehicles[1].wheelsets ?? [];
    expect(w.flangeThickness?.low).toBeCloseTo(0.14 * IN, 12);
    expect(w.hollow).toBeCloseTo(0.01 * IN, 12);
    expect(w.wear?.map((r) => r.day)).toEqual(wear.map((r) => dayNumber(r.date)));
    const both = await paper({ wear, flangeThickness: '5/32 in', hollow: '0.02 in' });
    const [of] = both.train.vehicles[1].wheelsets ?? [];
    expect(of.flangeThickness?.low).toBeCloseTo(0.14 * IN, 12);
    expect(of.flangeThickness?.high).toBeCloseTo((5 / 32) * IN, 12);
    expect(of.hollow).toBeCloseTo(0.02 * IN, 12);
  });

  it.each([
    [{ wear: [{ date: '2026-02-30', hollow: '1 mm' }] }, {}, /wear.*date.*2026-02-30.*a day such as/s],
    [
      {},
      { front: { height: '31 in' }, envelope: { width: '20 in', height: '30 in' } },
      /height.*the height of the vehicle/s,
    ],
    [{}, { rear: { height: '2 in', face: '5 in' } }, /face.*half of it lies below the middle/s],
    [
      {},
      { lowParts: [{ name: 'step', at: '90 ft', height: '1 in' }] },
      /lowParts.*at most.*the vehicle's length/s,
    ],
  ])('bad figures are named: %j %j', async (wheels, more, says) => {
    await expect(paper(wheels, more)).rejects.toThrow(says);
  });
});
