/** What class 1 warp does to a car of four feet between trucks, by hand and by the room. */
import { describe, expect, it } from 'vitest';
import { dropAbsent } from '../../../../engine/base/absent.ts';
import { exact } from '../../../../engine/base/quantity.ts';
import { POOREST_TWIST } from '../../../../engine/questions/balance/limits.ts';
import { checkTwist, judgeBlock } from '../../../../engine/questions/balance/twist.ts';
import { car } from '../../../support/balance.ts';
import { printedIn } from '../../../support/measured.ts';
import { drawer } from '../../../support/random-outings.ts';

const FOOT = 0.3048;
const vehicle = (suspension: object) => ({
  ...car(drawer(1), { length: 7 * FOOT, trucks: [1.5 * FOOT, 5.5 * FOOT] }),
  suspension: { equalised: false, ...suspension },
});

const rule = printedIn(import.meta.url, 'A');
const byHand = printedIn(import.meta.url, 'D', { source: 'Warp under a car, by hand' });

describe('49 CFR 213.63, class 1', () => {
  it('is 4.03 mm per m', () => {
    rule.figure('class 1', POOREST_TWIST.value * 1000, 4.03, 0.005, 'mm/m');
  });

  it('lifts one corner of a car with trucks 4 ft apart by 4/62 of 3 in', () => {
    const check = checkTwist(vehicle({ twistFreedom: 0.01 }), POOREST_TWIST.value, 500);
    byHand.figure('lift', (check?.lift ?? 0) / 0.0254, (3 * 4) / 62, 5e-10, 'in');
    byHand.figure('unloading', check?.unloading ?? NaN, (((3 * 4) / 62) * 0.0254) / 0.01, 5e-10);
  });

  it('a spring car: a corner lifts where four corners of stiffness K have moved it by 4·Q/K', () => {
    // Four springs under a stiff plate, one raised by d: loads change by K·d/4 (three equations of balance).
    const stiffness = 40_000;
    const load = 300;
    const check = checkTwist(vehicle({ wheelStiffness: exact(stiffness) }), POOREST_TWIST.value, load);
    const lift = ((3 * 4) / 62) * 0.0254;
    byHand.figure('on springs', check?.unloading ?? NaN, (stiffness * lift) / 4 / load, 5e-10);
  });

  it('the block must stand for the limit of 0.6: 1/0.6 of the lift without a scale', () => {
    const v = vehicle({});
    const lift = ((3 * 4) / 62) * 0.0254;
    const judge = (block: number, otherWheelLifted: boolean, before?: number, after?: number) =>
      judgeBlock(v, POOREST_TWIST.value, {
        block,
        otherWheelLifted,
        ...dropAbsent({ before, with: after }),
      });
    expect(judge(lift / 0.6, false)).toMatchObject({ accepted: true, why: 'stays' });
    expect(judge(lift / 0.6, true)).toMatchObject({ accepted: false, why: 'lifts' });
    expect(judge(lift, false)).toMatchObject({ accepted: false, why: 'block-too-low' });
    expect(judge(lift * 3, true)).toMatchObject({ accepted: false, why: 'block-too-high' });
    expect(judge(lift, false, 500, 201)).toMatchObject({ accepted: true, why: 'stays-loaded' });
    expect(judge(lift, false, 500, 199)).toMatchObject({ accepted: false, why: 'unloads' });
    expect(judge(lift * 2, false, 500, 0)).toMatchObject({ accepted: true, unloading: 0.5 });
  });
});
