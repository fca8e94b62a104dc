/** Which state the rail is in, and where: the line's usual word, today's, and another state asked about. */
import { beforeAll, describe, expect, it } from 'vitest';
import { openOuting } from '../../../engine/outing/open.ts';
import {
  bestRail,
  railsAlong,
  railsMetBy,
  railsToday,
  worstRail,
  worstUnder,
} from '../../../engine/outing/rails.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import type { RailStretch } from '../../../engine/things/line/types.ts';
import type { RailState, UsualRail } from '../../../engine/things/rail.ts';
import { randomOuting } from '../../support/random-outings.ts';

const base = randomOuting(5, 2);

function on(
  railState: RailState,
  usual: readonly RailStretch<UsualRail>[],
  seen: readonly RailStretch[] = [],
  more: Partial<Outing> = {},
) {
  const line = { ...base.line, loop: false, railStretches: usual };
  const conditions = { ...base.conditions, railState, railStretches: seen };
  return openOuting({ ...base, line, conditions, ...more });
}

const told = (context: ReturnType<typeof on>, state: RailState) =>
  railsAlong(context, state).map((p) => [p.from, p.to, p.state]);

describe('a stretch of the line', () => {
  const usual = [{ from: 10, to: 30, state: 'damp' }] as const;
  it('counts where it is worse than the day', () =>
    expect(told(on('dry', usual), 'dry')).toEqual([[10, 30, 'damp']]));
  it('never makes a day better', () => expect(told(on('greasy', usual), 'greasy')).toEqual([]));
  it('gives way to what was seen there today, better or worse', () => {
    expect(told(on('dry', usual, [{ from: 20, to: 40, state: 'greasy' }]), 'dry')).toEqual([
      [10, 20, 'damp'],
      [20, 40, 'greasy'],
    ]);
    expect(told(on('damp', usual, [{ from: 20, to: 40, state: 'dry' }]), 'damp')).toEqual([[20, 40, 'dry']]);
  });
  it('seen dry on another day than today is not dry', () => {
    const seen = on('damp', [], [{ from: 20, to: 40, state: 'dry' }]);
    expect(told(seen, 'greasy')).toEqual([]);
    expect(told(seen, 'dry')).toEqual([]);
  });
  it.each([
    ['dry', 'damp'],
    // Rain washes a rail: what is worse than damp, or than wet, holds less than it.
    ['damp', 'greasy'],
    ['wet', 'greasy'],
    ['sanded', 'damp'],
  ] as const)('that is one step worse than the day is so on a %s one: %s', (day, worse) => {
    const worseThanDay = [{ from: 10, to: 30, state: 'one-step-worse' }] as const;
    expect(told(on(day, worseThanDay), day)).toEqual([[10, 30, worse]]);
    // And as much worse than another rail that is asked about.
    expect(told(on('dry', worseThanDay), day)).toEqual([[10, 30, worse]]);
    expect(base.assumed.adhesion[worse].value).toBeLessThan(base.assumed.adhesion[day].value);
  });
  it('that is one step worse than a greasy day is as the rest', () =>
    expect(told(on('greasy', [{ from: 10, to: 30, state: 'one-step-worse' }]), 'greasy')).toEqual([]));
  it('of two over each other is the worse', () =>
    expect(told(on('dry', [...usual, { from: 20, to: 50, state: 'greasy' }]), 'dry')).toEqual([
      [10, 20, 'damp'],
      [20, 50, 'greasy'],
    ]));
  it('is told by the line’s own chainage, and met the other way round in reverse', () => {
    const seen = on('dry', [], [{ from: 10, to: 30, state: 'greasy' }], { direction: 'reverse' });
    const { length } = base.line;
    expect(told(seen, 'dry')).toEqual([[length - 30, length - 10, 'greasy']]);
    expect(railsToday(seen.outing)).toEqual([{ from: 10, to: 30, state: 'greasy' }]);
  });
  it('goes over a loop’s origin, lap by lap', () => {
    const line = { ...base.line, loop: true, railStretches: [{ from: 90, to: 5, state: 'wet' as const }] };
    const { length } = line;
    const met = railsMetBy({ outing: { ...base, line }, line }, 'dry', 10, length + 1);
    expect(met.map((p) => [p.from, p.to])).toContainEqual([length, length + 5]);
    expect(met.map((p) => [p.from, p.to])).toContainEqual([90 - length, 0]);
  });
});

describe('the rail of a line', () => {
  let context: ReturnType<typeof on>;
  beforeAll(() => {
    context = on(
      'damp',
      [],
      [
        { from: 20, to: 40, state: 'greasy' },
        { from: 60, to: 90, state: 'dry' },
      ],
    );
  });
  it('has a worst and a best', () => {
    expect(worstRail(context, 'damp')).toBe('greasy');
    expect(bestRail(context, 'damp')).toBe('dry');
  });
  it('is the worst under any of the wheels', () => {
    const under = worstUnder(context, 'damp', [{ front: 1, rear: 9 }], 100);
    expect([under(15), under(22), under(48), under(50), under(65), under(70), under(92)]).toEqual([
      'damp',
      'greasy',
      'greasy',
      'damp',
      'damp',
      'dry',
      'damp',
    ]);
  });
});
