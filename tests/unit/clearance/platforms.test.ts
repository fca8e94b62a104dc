/** How riders step across at a platform. All made up; figures by hand. */
import { describe, expect, it } from 'vitest';
import { answerOuting } from '../../../engine/answer/complete.ts';
import { exact } from '../../../engine/base/quantity.ts';
import { openOuting } from '../../../engine/outing/open.ts';
import type { HostRules, Outing } from '../../../engine/outing/types.ts';
import { askPlatforms, lookAtPlatforms } from '../../../engine/questions/clearance/platforms.ts';
import type { Line, Structure } from '../../../engine/things/line/types.ts';
import type { Vehicle } from '../../../engine/things/vehicle/types.ts';
import { beside, CAR, post } from '../../support/beside.ts';

const HALF = CAR.width / 2;
interface At {
  readonly platform?: Partial<Structure>;
  readonly line?: Partial<Line>;
  readonly vehicle?: Partial<Vehicle>;
  readonly host?: Partial<HostRules>;
}
/** Its edge 0.4 m from the middle, 0.15 m high; the step 0.2 m high, as wide as the car. */
const at = ({ platform, line = {}, vehicle, host }: At = {}): Outing => {
  const outing = beside({
    structures: [post({ platform: true, from: 60, to: 70, distance: 0.4, top: 0.15, ...platform })],
    line: { curves: [], ...line },
    vehicle: { step: { height: 0.2, width: CAR.width }, ...vehicle },
    ridden: true,
  });
  return { ...outing, ...(host ? { host: { name: 'made up', ...host } } : {}) };
};
const across = (outing: Outing) => lookAtPlatforms(openOuting(outing)).across;
const tight = (outing: Outing): Outing => ({
  ...outing,
  assumed: {
    ...outing.assumed,
    coupler: { ...outing.assumed.coupler, play: { value: 0, low: 0, high: 0, how: 'assumed' } },
  },
});
const codes = (outing: Outing): string[] =>
  askPlatforms(openOuting(outing)).map(({ code, severity, measure }) =>
    [code, severity, measure].join(' ').trim(),
  );

describe('the gap', () => {
  it('is on straight level track what the platform leaves of half the step, the wheels over to the other rail', () => {
    const [one] = across(tight(at()));
    expect(one.gap.value).toBeCloseTo(0.4 - HALF, 9);
    expect(one.step).toBeCloseTo(0.05, 9);
    const outing = at();
    const [loose] = across(outing);
    expect(loose.gap.value - one.gap.value).toBeCloseTo(outing.assumed.coupler.play.high / 2, 9);
  });

  it('grows beside the outside of a curve by the throw of the middle of the car, where its seat is, and shrinks inside', () => {
    const radius = 15;
    const curves = [
      { from: 20, to: 95, startCurvature: 1 / radius, endCurvature: 1 / radius, gaugeWidening: 0 },
    ];
    // Its seat stands midway between its trucks: R − √(R² − a²/4) toward the inside, which is the left.
    const thrown = radius - Math.sqrt(radius ** 2 - CAR.guides ** 2 / 4);
    const gap = (side: 'left' | 'right'): number =>
      across(tight(at({ platform: { side }, line: { curves } })))[0].gap.value;
    expect(gap('right')).toBeCloseTo(0.4 - HALF + thrown, 6);
    expect(gap('left')).toBeCloseTo(0.4 - HALF - thrown, 6);
  });

  it('is the same mirrored, and the line run the other way', () => {
    const curves = (k: number) => [
      { from: 20, to: 95, startCurvature: k, endCurvature: k, gaugeWidening: 0 },
    ];
    const one = across(at({ platform: { side: 'left' }, line: { curves: curves(1 / 20) } }))[0];
    const other = across(at({ platform: { side: 'right' }, line: { curves: curves(-1 / 20) } }))[0];
    expect(other.gap.value).toBeCloseTo(one.gap.value, 9);
    const back = {
      ...at({ platform: { side: 'left' }, line: { curves: curves(1 / 20) } }),
      direction: 'reverse' as const,
    };
    expect(across(back)[0].gap.value).toBeCloseTo(one.gap.value, 6);
  });

  it('is less where canted track leans the car toward it, and what one steps on lies lower there', () => {
    const cants = [
      { at: 0, cant: 0.01 },
      { at: 100, cant: 0.01 },
    ];
    const outing = tight(at({ platform: { side: 'left' }, line: { cants } }));
    const [one] = across(outing);
    const tilt = 0.01 / outing.line.contactWidth;
    expect(one.gap.value).toBeCloseTo(0.4 - HALF - tilt * 0.2, 9);
    expect(one.step).toBeCloseTo(0.05 - (tilt * (CAR.width - outing.line.contactWidth)) / 2, 9);
  });
});

it('steps down where springs sink under people by more than the step is high', () => {
  const suspension = { equalised: true, wheelStiffness: exact(2000) };
  const [one] = across(tight(at({ platform: { top: 0.19 }, vehicle: { suspension } })));
  expect(one.step).toBeLessThan(-0.01);
  const [stiff] = across(tight(at({ platform: { top: 0.19 } })));
  expect(stiff.step).toBeCloseTo(0.01, 9);
});

describe('is told', () => {
  it('as a note beyond what is usual, as a limit beyond what the host allows, and not at all within', () => {
    expect(codes(at())).toEqual([]);
    expect(codes(at({ platform: { distance: HALF + 0.08 } }))).toEqual(['platform-gap notes']);
    expect(
      codes(
        at({ platform: { distance: HALF + 0.08 }, host: { platformGap: { value: 0.1, source: 'rule 7' } } }),
      ),
    ).toEqual([]);
    expect(codes(at({ host: { platformGap: { value: 0.03, source: 'rule 7' } } }))).toEqual([
      'platform-gap limits',
    ]);
    expect(codes(at({ platform: { top: 0.01 } }))).toEqual(['platform-step notes']);
    expect(codes(at({ host: { platformStep: { value: 0.03, source: 'rule 7' } } }))).toEqual([
      'platform-step limits',
    ]);
  });

  it('as something to measure where nobody measured what people step on: cannot tell where the host has a rule', () => {
    const { step: _, ...bare } = at().train.vehicles[0];
    const outing = at();
    const without = { ...outing, train: { ...outing.train, vehicles: [bare] } };
    expect(codes(without)).toEqual(['platform-not-measured notes vehicle.step']);
    const host = { name: 'made up', platformStep: { value: 0.03, source: 'rule 7' } };
    expect(codes({ ...without, host })).toEqual(['platform-not-measured unknown vehicle.step']);
  });

  it('of no structure that nobody calls a platform', () => {
    const { platform: _, ...wall } = post({ distance: 0.9, top: 0.15 });
    expect(across({ ...at(), line: { ...at().line, structures: [wall] } })).toEqual([]);
  });
});

it('offers to set the platform nearer by so much, tried: nothing strikes it then', () => {
  const host = { platformGap: { value: 0.12, source: 'rule 7' } };
  const outing = at({ platform: { distance: HALF + 0.15 }, host });
  const found = answerOuting(outing, { counts: false, samples: 20, couplerRuns: 2, step: 2 }).findings.find(
    (f) => f.code === 'platform-gap',
  );
  const change = found?.remedies.find((r) => r.change.kind === 'set-back')?.change;
  expect(change).toMatchObject({ kind: 'set-back', structure: 'post-1' });
  const by = change && 'by' in change ? (change.by as number) : 0;
  expect(by).toBeLessThan(-0.03);
  expect(by).toBeGreaterThan(-0.05);
});
