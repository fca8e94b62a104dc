/** What stood in for a figure that nobody stated is said where it acts, and is silent once the figure is stated. */
import { describe, expect, it } from 'vitest';
import { inquire } from '../../../engine/answer/inquiry.ts';
import { exact } from '../../../engine/base/quantity.ts';
import { openOuting } from '../../../engine/outing/open.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import { askBrakes } from '../../../engine/questions/brakes/ask.ts';
import { couplers } from '../../../engine/questions/couplers/question.ts';
import { singleFailures } from '../../../engine/questions/failures/question.ts';
import type { Finding } from '../../../engine/questions/finding.ts';
import type { Coupling, Vehicle } from '../../../engine/things/vehicle/types.ts';
import { brakedTrain } from '../../support/braked-trains.ts';
import { changedExample } from '../../support/changed-examples.ts';
import { factOf } from '../../support/facts.ts';
import { randomOuting } from '../../support/random-outings.ts';
import { plain } from '../../support/rules.ts';

const keys = (findings: readonly Finding[]): unknown[] =>
  findings.filter((f) => f.code === 'assumed').map((f) => factOf(f, 'key'));
const all = (outing: Outing, change: (v: Vehicle) => Vehicle): Outing => ({
  ...outing,
  train: { ...outing.train, vehicles: outing.train.vehicles.map(change) },
});

describe('of couplers', () => {
  const base = randomOuting(5, 2);
  const coupled = (more: Partial<Coupling>): Outing =>
    all(base, (v) => ({ ...v, front: { ...v.front, ...more }, rear: { ...v.rear, ...more } }));
  const asked = (more: Partial<Coupling>): unknown[] => keys(inquire(coupled(more)).of(couplers).findings);
  const strength = exact(1e5);

  it('slack, stiffness, damping and throttle, where a strength is held against their peaks', () => {
    expect(asked({ strength })).toEqual([
      'coupler-slack',
      'coupler-stiffness',
      'coupler/damping',
      'throttle',
    ]);
  });

  it('no slack or stiffness that is stated', () => {
    const stated = { strength, slack: exact(0.005), stiffness: exact(3e5) };
    expect(asked(stated)).toEqual(['coupler/damping', 'throttle']);
  });

  it('damping moves the peaks', () => {
    const outing = coupled({ strength });
    const most = (damping: number): number =>
      Math.max(
        ...inquire({
          ...outing,
          assumed: { ...outing.assumed, coupler: { ...outing.assumed.coupler, damping: exact(damping) } },
        })
          .of(couplers)
          .data.gaps.map((g) => g.pull.force),
      );
    expect(most(0.4)).toBeLessThan(0.95 * most(0.05));
  });
});

describe('of brakes', () => {
  const brakes = (change: (v: Vehicle) => Vehicle = (v) => v): unknown[] => {
    const base = plain(2);
    return keys(
      askBrakes(openOuting(all({ ...base, train: brakedTrain('straight-air', 2) }, change))).findings,
    );
  };

  it('handle and slack where parts tell the times, not where a stopwatch does', () => {
    expect(brakes()).toContain('brake-parts/mechanical');
    const times = { deadTime: exact(0.5), buildUp: exact(1.5) };
    const timed = brakes((v) => ({ ...v, brakes: v.brakes.map((b) => ({ ...b, ...times })) }));
    expect(timed).not.toContain('brake-parts/mechanical');
  });
});

describe('of a guard', () => {
  const guards = async (workedBy: 'guard' | 'driver'): Promise<unknown[]> => {
    const outing = plain(3);
    const last = outing.train.vehicles.length - 1;
    const guarded = all(outing, (v) =>
      v !== outing.train.vehicles[last]
        ? v
        : {
            ...v,
            role: 'guard',
            brakes: [
              ...v.brakes,
              {
                id: 'screw',
                name: 'screw',
                kind: 'mechanical',
                on: v.groups.map((g) => g.id),
                force: exact(300),
                workedBy,
                parking: false,
              },
            ],
          },
    );
    const rider = {
      id: 'g',
      name: 'g',
      mass: exact(70),
      ageGroup: 'adult',
      duty: 'guard',
      vehicle: outing.train.vehicles[last].id,
      seat: '1',
    } as const;
    return keys(inquire({ ...guarded, riders: [rider] }).of(singleFailures).findings);
  };

  it('how soon he sees that nobody drives, where his own brake is left', async () => {
    expect(await guards('guard')).toContain('guard-notice');
    expect(await guards('driver')).not.toContain('guard-notice');
  });
});

describe('of papers', () => {
  const noted = async (change: Parameters<typeof changedExample>[1]): Promise<string[]> =>
    (await changedExample('steam-light', change)).assumptions.map((a) => a.key);

  it('what a cross wind takes hold of, only where one blows', async () => {
    expect(await noted(() => {})).not.toContain('wind/drag');
    const windy = await noted((paper) => {
      (paper['conditions'] as Record<string, unknown>)['crosswind'] = '20 mph';
    });
    expect(windy).toEqual(expect.arrayContaining(['wind/drag', 'wind/person-area']));
  });

  it('a sander of which nobody spoke, on a day of sand', async () => {
    const sanded = await noted((paper) => {
      (paper['conditions'] as Record<string, unknown>)['railState'] = 'sanded';
    });
    expect(sanded).toContain('sander/engine');
  });

  it('what a driver feels, only where the rail differs', async () => {
    expect(await noted(() => {})).not.toContain('easing/felt');
    const spot = await noted((paper) => {
      const conditions = paper['conditions'] as Record<string, unknown>;
      conditions['railStretches'] = [{ from: '100 ft', to: '150 ft', state: 'greasy' }];
    });
    expect(spot).toContain('easing/felt');
  });
});
