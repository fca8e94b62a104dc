/** How hard one may brake today, for a train whose cylinders are known. */
import { describe, expect, it } from 'vitest';
import { between } from '../../../engine/base/quantity.ts';
import { modelOf } from '../../../engine/motion/model.ts';
import { prepare } from '../../../engine/motion/prepare.ts';
import { likely } from '../../../engine/motion/scenario.ts';
import { stopDistance } from '../../../engine/motion/stop.ts';
import { heldOn as heldOnFull } from '../../../engine/motion/stop-inputs.ts';
import { openOuting } from '../../../engine/outing/open.ts';
import { askSliding, heldOn, howHard } from '../../../engine/questions/brakes/how-hard.ts';
import { brakedTrain } from '../../support/braked-trains.ts';
import { randomOuting } from '../../support/random-outings.ts';

const outing = (
  low: number,
  value: number,
  kind: 'automatic-vacuum' | 'straight-air' = 'automatic-vacuum',
  plannedSpeed = 6,
) => {
  const base = randomOuting(3);
  const train = brakedTrain(kind, 2, { bore: 0.12 });
  return prepare(
    openOuting({
      ...base,
      direction: 'forward',
      train,
      riders: [],
      plannedSpeed,
      assumed: {
        ...base.assumed,
        adhesion: { ...base.assumed.adhesion, dry: between(low, value, 0.3, 'assumed') },
      },
    }),
    1,
    0,
  );
};

describe('how hard today', () => {
  it('names the vacuum at which the first wheels begin to slide: with it in the cylinder they just do', () => {
    const hard = howHard(outing(0.1, 0.2)).find((h) => h.handle === 'automatic-vacuum');
    expect(hard?.share).toBeLessThan(1);
    const { rigging } = hard!.group.gear;
    const area = (Math.PI / 4) * rigging!.bore ** 2;
    const force = (area * hard!.gauge!.si - rigging!.springForce!) * 3 * 0.8;
    const all = hard!.group.block.value;
    const full = (area * rigging!.workingPressure.value - rigging!.springForce!) * 3 * 0.8;
    const share = hard!.group.gear.forceShare ?? 1;
    expect(((force / full) * all * 0.33) / share).toBeCloseTo(0.1 * hard!.group.load, 0);
    expect(hard?.gauge?.kind).toBe('vacuum');
  });

  it('air is told as gauge pressure', () => {
    const hard = howHard(outing(0.1, 0.2, 'straight-air')).find((h) => h.handle === 'straight-air');
    expect(hard?.gauge?.kind).toBe('gaugePressure');
  });

  it('who holds full brake likely goes further at speed than who eases; at a walk locked wheels lose little', () => {
    const stops = (speed: number) => {
      const ready = outing(0.05, 0.07, 'automatic-vacuum', speed);
      const { at } = ready.steepest;
      const inputs = ready.inputs('dry');
      const of = (on: typeof inputs): number => stopDistance(modelOf(on, likely, false), at, speed);
      return of(heldOnFull(inputs)) / of(inputs);
    };
    expect(stops(10)).toBeGreaterThan(1.005);
    expect(stops(2)).toBeLessThan(stops(10));
    expect(stops(2)).toBeGreaterThan(0.9);
  });

  it('both are told for the fall that is steepest', () => {
    const on = heldOn(outing(0.05, 0.07));
    expect(on.held).toBeGreaterThan(0.9 * on.eased);
    expect(on.held).toBeLessThan(1.3 * on.eased);
  });

  it('is a note to a driver who can ease, one line for each handle', () => {
    const ready = outing(0.05, 0.07);
    const found = askSliding(ready, { howHard: howHard(ready), heldOn: heldOn(ready) });
    expect(found.map((f) => f.severity)).toEqual(found.map(() => 'notes'));
    expect(found.length).toBeLessThanOrEqual(2);
  });

  it('limits where nobody lets go', () => {
    const ready = outing(0.05, 0.07);
    const alone = howHard(ready).map(({ handle, ...rest }) => ({ ...rest }));
    const found = askSliding(ready, { howHard: alone, heldOn: null });
    expect(found[0].severity).toBe('limits');
  });
});
