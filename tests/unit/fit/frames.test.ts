/** Rigid frames of three axles in a curve, and wheels of one axle that differ. All made up; figures by hand. */
import { describe, expect, it } from 'vitest';
import type { Outing } from '../../../engine/outing/types.ts';
import type { AxleGroup, Vehicle } from '../../../engine/things/vehicle/types.ts';
import { changedExample, vehiclesOf } from '../../support/changed-examples.ts';
import { altered } from '../../support/rules.ts';
import { wheeled, wheelset, wheelsSay } from '../../support/wheeled.ts';

const IN = 0.0254;
const BASE = 0.6;
const bend = (radius: number, gaugeWidening = 0) => ({
  from: 40,
  to: 60,
  startCurvature: 1 / radius,
  endCurvature: 1 / radius,
  gaugeWidening,
});
/** Gauge 7.25 in less 6.87 in and two flanges of 5/32 in. */
const PLAY = (7.25 - 6.87 - 2 * (5 / 32)) * IN;
/** In 12 m of radius a middle axle between outer ones 0.6 m apart: 0.36 ÷ 96 m. */
const NEEDS = 0.00375;

const framed = (
  { middlePlay, axles = 3 }: { middlePlay?: number; axles?: number },
  curves = [bend(12)],
  changes: Partial<Vehicle> = {},
): Outing => {
  const outing = wheeled({}, [], { curves });
  const [vehicle] = outing.train.vehicles;
  const frame: AxleGroup = {
    ...vehicle.groups[0],
    name: 'drivers',
    axles,
    wheelBase: BASE,
    ...(middlePlay === undefined ? {} : { middlePlay }),
  };
  const wheelsets = Array.from({ length: axles + 4 }, (_, k) => ({
    ...wheelset(),
    backToBack: [6.87 * IN],
    id: `axle-${k}`,
    name: `axle ${k}`,
  }));
  return altered(outing, 0, {
    groups: [frame, ...vehicle.groups.slice(1)],
    wheelsets,
    ratings: {},
    ...changes,
  });
};
const said = (outing: Outing): string[] =>
  wheelsSay(outing).flatMap((f) =>
    f.code === 'frame-binds-in-curve' ? [`${f.severity} ${f.measure ?? ''}`] : [],
  );

describe('a rigid frame in a curve', () => {
  it('that is narrower than the frame is long holds, and is not passed over', () => {
    expect(said(framed({ middlePlay: 0.01 }, [bend(BASE / 2 - 0.01)]))).toEqual(['forbids ']);
    expect(said(framed({}, [bend(BASE / 2 - 0.01)]))).toEqual(['unknown vehicle.axleGroups.middlePlay']);
  });

  it('goes round where play and the middle axle give what the curve asks for, and not with less', () => {
    expect(said(framed({ middlePlay: NEEDS - PLAY + 1e-5 }))).toEqual([]);
    expect(said(framed({ middlePlay: NEEDS - PLAY - 1e-5 }))).toEqual(['forbids ']);
    expect(said(framed({ middlePlay: NEEDS - PLAY - 1e-5, axles: 2 }))).toEqual([]);
  });

  it('widening counts, and the curve that has least of it', () => {
    const short = framed({ middlePlay: 0 }, [bend(12, NEEDS - PLAY + 1e-5)]);
    expect(said(short)).toEqual([]);
    expect(said(framed({ middlePlay: 0 }, [bend(12, 0.005), { ...bend(20), from: 70, to: 80 }]))).toEqual([
      'forbids ',
    ]);
  });

  it('asks for what nobody measured, unless the owner states how sharp a curve it runs', () => {
    expect(said(framed({}))).toEqual(['unknown vehicle.axleGroups.middlePlay']);
    expect(said(framed({ middlePlay: 0 }, [bend(12)], { wheelsets: [] }))).toEqual([
      'unknown vehicle.wheelsets.backToBack',
    ]);
    expect(said(framed({}, [bend(12)], { ratings: { leastRadius: 12 } }))).toEqual([]);
    expect(said(framed({}, [bend(12)], { ratings: { leastRadius: 12.5 } }))).toHaveLength(1);
    // What was measured throughout speaks against the owner's word.
    expect(said(framed({ middlePlay: 0 }, [bend(12)], { ratings: { leastRadius: 10 } }))).toEqual([
      'forbids ',
    ]);
  });

  it('says how much more is needed', () => {
    const [finding] = wheelsSay(framed({ middlePlay: 0 })).filter((f) => f.code === 'frame-binds-in-curve');
    expect(finding.found?.si).toBeCloseTo(NEEDS, 5);
    expect(finding.required?.si).toBeCloseTo(PLAY, 9);
  });
});

it('two wheels of one axle may differ by 3/32 in on 56.5 in of gauge, and no more', () => {
  const most = ((3 / 32) * 7.25 * IN) / 56.5;
  const odd = (by: number) =>
    wheelsSay(wheeled({ diameters: [0.11, 0.11 + by] }, [])).filter(
      (f) => f.code === 'wheel-diameters-differ',
    );
  expect(odd(most - 1e-6)).toEqual([]);
  expect(odd(most + 1e-6)).toMatchObject([
    { severity: 'limits', source: '49 CFR 230.112(a): 3/32 in on 56.5 in' },
  ]);
});

it('what a paper says of an axle group reaches the question, field by field', async () => {
  const said = {
    name: 'coupled wheels',
    at: '4 ft',
    axles: 3,
    wheelBase: '28 in',
    middlePlay: '1/8 in',
    wheelRadius: '5 in',
    driven: true,
    tareShare: 0.7,
  };
  const outing = await changedExample('steam-light', (paper) => {
    const [engine] = vehiclesOf(paper);
    engine['axleGroups'] = [
      said,
      { name: 'tender', at: '8 ft', axles: 2, wheelBase: '14 in', tareShare: 0.3 },
    ];
  });
  const [group] = outing.train.vehicles[0].groups;
  expect(Object.keys(group)).toEqual(expect.arrayContaining(Object.keys(said)));
  expect(group.middlePlay).toBeCloseTo(0.003175, 12);
});
