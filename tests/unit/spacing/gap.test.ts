/** How far behind the train ahead, on a map laid by hand: 100 m of level line, a point every 10 m. */
import { describe, expect, it } from 'vitest';
import { prepare } from '../../../engine/motion/prepare.ts';
import { openOuting } from '../../../engine/outing/open.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import { askGap } from '../../../engine/questions/gap/ask.ts';
import { gapNeeded } from '../../../engine/questions/gap/needed.ts';
import { gapRemedies } from '../../../engine/questions/gap/remedies.ts';
import type { SpeedMap } from '../../../engine/questions/speed/types.ts';
import { plain, rule } from '../../support/rules.ts';

const base = plain(2);
const heights = [
  { at: 0, height: 0 },
  { at: 100, height: 0 },
];
const outing = (least?: number, plannedSpeed?: number): Outing => ({
  ...base,
  line: { ...base.line, loop: false, length: 100, heights },
  host: { name: 'host', ...(least === undefined ? {} : { leastGap: rule(least) }) },
  ...(plannedSpeed === undefined ? {} : { plannedSpeed }),
});
/** 20 m everywhere but where it is said; the line allows 3 m/s. */
const map = (gaps: Record<number, number>): SpeedMap => {
  const at = Float64Array.from({ length: 11 }, (_, j) => 10 * j);
  return {
    railState: 'dry',
    step: 10,
    at,
    limit: at.map(() => 3),
    reason: new Uint16Array(11),
    reasons: [],
    likelyStop: at,
    cautiousStop: at,
    gap: at.map((_, j) => gaps[j] ?? 20),
  };
};
const said = (of: Outing, gaps: Record<number, number> = { 4: 30, 5: 25 }) =>
  askGap(prepare(openOuting(of), 1, 0), map(gaps));

it('is the stop and what must be kept, and no less than the rule', () => {
  expect(gapNeeded(20, 3)).toBe(23);
  expect(gapNeeded(20, 3, 30)).toBe(30);
  expect(gapNeeded(Infinity, 3, 30)).toBe(Infinity);
});

describe('the gap that is needed', () => {
  it('without a rule is a note, of the place that needs most', () => {
    const [only, ...more] = said(outing());
    expect(more).toEqual([]);
    expect(only).toMatchObject({
      code: 'gap-needed',
      severity: 'notes',
      where: {},
      found: { si: 30 },
      facts: { at: { si: 40 }, speed: { si: 3 } },
      sum: { id: 'stopping-distance', differs: 'margin' },
    });
    expect(only.required).toBeUndefined();
    expect(only.margin).toBeUndefined();
  });
  it('limits where it is more than the host’s, from the first such place to the last', () => {
    expect(said(outing(24))).toMatchObject([
      {
        severity: 'limits',
        where: { from: 40, to: 50 },
        required: { si: 24 },
        margin: -0.25,
        source: 'rule book, p. 3',
      },
    ]);
    expect(said(outing(24), { 2: 25, 7: 30 })[0].where).toEqual({ from: 20, to: 70 });
  });
  it('just the host’s is a note, and the rule its figure', () => {
    const [only] = said(outing(30));
    expect(only).toMatchObject({ severity: 'notes', where: {}, margin: 0 });
    expect(only.sum).toBeUndefined();
  });
  it('is of the speed that is planned, where that is lower', () => {
    expect(said(outing(undefined, 2))[0].facts).toMatchObject({ speed: { si: 2 } });
    expect(said(outing(undefined, 4))[0].facts).toMatchObject({ speed: { si: 3 } });
  });
  it('is no figure where the brake does not hold, which is told elsewhere', () =>
    expect(said(outing(24), { 4: Infinity })).toEqual([]));
});

it('is made less by running slower, another order, fewer cars, more of them braked, in this order', () => {
  const bare = { ...outing(), plannedSpeed: 3 };
  const [engine, first, last] = bare.train.vehicles;
  const one = { ...bare, train: { ...bare.train, vehicles: [engine, first, { ...last, brakes: [] }] } };
  const families = gapRemedies['gap-needed']?.(one, said(one)[0]) ?? [];
  const sizes = families
    .filter((f) => f.changes.length > 0)
    .map(({ size, changes }) => [changes[0].kind, size]);
  const kinds = sizes.map(([kind]) => kind);
  expect(kinds).toContain('slower-everywhere');
  expect(sizes).toContainEqual(['fewer-cars', 8]);
  expect(sizes).toContainEqual(['brake-car', 12]);
});
