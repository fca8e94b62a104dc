/** Wheelsets on their track: the engine beside boxes that are slid from side to side. */
import { expect, it } from 'vitest';
import type { Outing } from '../../engine/outing/types.ts';
import type { Flangeway } from '../../engine/things/line/types.ts';
import type { Wheelset } from '../../engine/things/wheel/types.ts';
import { runs } from '../support/tier.ts';
import { between, wheeled } from '../support/wheeled.ts';
import { lookAt } from './against/wheelsets.ts';
import { chance } from './chance.ts';
import { placed } from './wheelset.ts';

const GAUGE = 0.18415;
const STEP = 0.00002;
/** The witness stands at most a step from the best place, and a pair has two sides. */
const WITHIN = 2 * STEP;

interface Case {
  readonly outing: Outing;
  readonly wheelset: Wheelset;
}

/** Around what just passes: a frog and a curve of random measures, some of them left out; worn wheels and new. */
function randomCase(seed: number): Case {
  // Neighbouring seeds begin alike.
  const next = chance(seed * 1_000_003);
  const mm = (from: number, to: number): number => (from + (to - from) * next()) / 1000;
  const back = mm(171, 176);
  const flange = mm(2.5, 4.5);
  const wheelset: Wheelset = {
    id: 'axle',
    name: 'axle',
    backToBack: [back, back + mm(-0.4, 0.4), back + mm(-0.4, 0.4)],
    flangeThickness: between(flange, flange + mm(0, 1)),
    flangeHeight: mm(3, 5),
    width: mm(5.5, 18),
  };
  const way = (at: number): Flangeway => {
    const gaps = next() < 0.7;
    return {
      id: `frog-${at}`,
      name: `Frog ${at}`,
      at,
      ...(next() < 0.2 ? { gauge: GAUGE + mm(-1, 2) } : {}),
      ...(gaps ? { guard: mm(5, 8) } : {}),
      ...(gaps && next() < 0.6 ? { frog: mm(4, 8) } : {}),
      ...(next() < 0.3 ? { guardCheck: mm(174, 182) } : {}),
      ...(next() < 0.4 ? { guardFace: mm(168, 175) } : {}),
    };
  };
  const curves = [
    {
      from: 40,
      to: 60,
      startCurvature: 0.05,
      endCurvature: 0.05,
      gaugeWidening: next() < 0.5 ? mm(0.5, 4) : 0,
    },
  ];
  const base = wheeled({}, [way(30), way(50)], { gauge: GAUGE, curves });
  // All its wheelsets alike: a finding names the worst of the train.
  const vehicles = base.train.vehicles.map((v) => ({
    ...v,
    wheelsets: v.wheelsets?.map((w) => ({ ...wheelset, id: w.id, name: w.name })) ?? [],
  }));
  return { wheelset, outing: { ...base, train: { ...base.train, vehicles } } };
}

it('each pair has left what sliding it finds, and is forbidden where it does not pass', () => {
  const met = new Map<string, number>();
  for (let seed = 1; seed <= runs(60, 500); seed++) {
    const { outing, wheelset } = randomCase(seed);
    const { left, forbidden } = lookAt(outing);
    const by = placed(wheelset, outing.line, STEP);
    for (const of of ['frog', 'guard', 'gauge', 'tread'] as const) {
      const [is, should] = [left[of], by[of]];
      // Nothing to place: the engine has nothing to say either.
      if (should === undefined) {
        expect(is, `${of} of case ${seed}`).toBeUndefined();
        continue;
      }
      // A wheelset that does not go between the rails leans on neither: what lies on the other is nobody's.
      if (should === Infinity) continue;
      expect(Math.abs((is ?? Infinity) - should), `${of} of case ${seed}`).toBeLessThan(WITHIN);
      if (Math.abs(should) < WITHIN) continue;
      expect(forbidden.has(of), `${of} of case ${seed}, ${should} left`).toBe(should < 0);
      const key = `${of} ${should < 0 ? 'forbidden' : 'passes'}`;
      met.set(key, (met.get(key) ?? 0) + 1);
    }
  }
  // Both sides of every rule were met, not one alone.
  for (const of of ['frog', 'guard', 'gauge', 'tread'])
    for (const how of ['forbidden', 'passes'])
      expect(met.get(`${of} ${how}`) ?? 0, `${of} ${how}`).toBeGreaterThan(1);
});
