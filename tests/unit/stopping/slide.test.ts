/** Sliding, easing, pushes and bad spots inside a stop, each against a figure worked by hand. */
import { describe, expect, it } from 'vitest';
import { exact } from '../../../engine/base/quantity.ts';
import { spotAdds } from '../../../engine/motion/bad-spot.ts';
import { brakeForce, modelOf } from '../../../engine/motion/model.ts';
import { likely } from '../../../engine/motion/scenario.ts';
import { slidingShare, untilNoticed } from '../../../engine/motion/slide.ts';
import { stopDistance } from '../../../engine/motion/stop.ts';
import { badSpotAdds } from '../../../engine/things/adhesion/bad-spot.ts';
import { settlePush } from '../../../engine/things/brake/push.ts';
import { shareBySpeed } from '../../../engine/things/brake/speed-share.ts';
import { blockWetness } from '../../../engine/things/brake/wet.ts';
import { assumedValues, randomOuting } from '../../support/random-outings.ts';
import { ready } from '../../support/ready.ts';

describe('share of the way that slides', () => {
  it.each([
    [0.7, 0],
    [0.75, 0],
    [1, 0.5],
    [1.25, 1],
    [2, 1],
  ])('brake ÷ adhesion %f: %f', (ratio, share) => expect(slidingShare(ratio)).toBeCloseTo(share, 12));
});

describe('wheels that slide on part of the way, until it is noticed', () => {
  // r = 0.8: 0.1 of the way slides. A wheel that the rail turns with more than 0.8 of adhesion is not stopped by such a brake.
  it.each([
    [0.8, 1, 0.8],
    [0.8, 0.3, 0.9 * 0.8 + 0.1 * 0.3],
    [1, 0.4, 0.5 + 0.5 * 0.4],
    [2, 0.9, 0.9],
  ])('brake ÷ adhesion %f, friction of sliding ÷ adhesion %f: %f', (ratio, skid, holds) =>
    expect(untilNoticed(ratio, skid)).toBeCloseTo(holds, 12),
  );
});

describe('a brake that came on by itself', () => {
  const r = ready(randomOuting(12, 4));
  const inputs = r.prepared.inputs('dry');
  const alone = {
    ...inputs,
    handle: inputs.handle.map(() => -1),
    material: inputs.material.map(() => 0),
    adhesion: exact(0.1),
    bare: exact(0.1),
    blockValue: inputs.blockValue.map((_, g) => 0.2 * inputs.load[g]),
  };
  const load = inputs.load.reduce((sum, n) => sum + n, 0);

  it('locks, holds all of adhesion at rest and a third at speed, and nobody eases it', () => {
    const model = modelOf(alone, likely, false);
    expect(model.notice).toBe(0);
    expect(model.force[0] / (0.1 * load)).toBeCloseTo(1, 9);
    expect(model.force[20] / (0.1 * load)).toBeLessThan(0.3);
  });

  it('rolls where adhesion holds it', () => {
    const model = modelOf({ ...alone, adhesion: exact(0.25), bare: exact(0.25) }, likely, false);
    expect(model.sliding).toBe(0);
    expect(model.force[5] / (0.2 * load)).toBeCloseTo(1, 9);
  });
});

describe('sand', () => {
  it('holds only the wheels that it lies under', () => {
    const inputs = ready(randomOuting(12, 4)).prepared.inputs('sanded');
    expect([...inputs.unsanded]).toContain(1);
    expect([...inputs.unsanded]).toContain(0);
    expect(inputs.bare.value).toBe(assumedValues.adhesion.dry.value);
    expect(inputs.adhesion.value).toBe(assumedValues.adhesion.sanded.value);
  });
});

describe('sand under one of two groups that are braked alike', () => {
  const outing = randomOuting(12, 0);
  const [engine] = outing.train.vehicles;
  const [gear] = engine.brakes;
  const [drivers, truck] = engine.groups;
  /** So strong that both slide. */
  const braked = (sander: boolean) => ({
    ...outing,
    train: {
      ...outing.train,
      vehicles: [
        {
          ...engine,
          sander,
          groups: [drivers, { ...truck, driven: false }],
          brakes: [{ ...gear, rigging: undefined, force: exact(3 * engine.tare.value * 9.80665) }],
        },
      ],
    },
  });
  const inputsOf = (sander: boolean) =>
    ready(braked(sander) as unknown as typeof outing).prepared.inputs('sanded');

  it('lies under the driven one alone: each does 0.6 of what its own rail holds, once eased', () => {
    const inputs = inputsOf(true);
    expect([...inputs.unsanded]).toEqual([0, 1]);
    const [on, off] = inputs.load;
    // 3 tares on both ask for far more than the rail holds: it slides all the way, and is eased by its hardest group.
    const hardest = (inputs.blockValue[1] * 1) / (0.22 * off);
    const ratio = Math.max(inputs.blockValue[0] / (0.25 * on), hardest);
    const eased = inputs.easing.utilisation.value / ratio;
    const full = inputs.blockValue[0] + inputs.blockValue[1];
    expect(modelOf(inputs, likely, false).force[0] / (eased * full)).toBeCloseTo(1, 9);
    expect(modelOf(inputs, likely, false).scratch.limit[1] / off).toBeCloseTo(0.22, 9);
    expect(modelOf(inputs, likely, false).scratch.limit[0] / on).toBeCloseTo(0.25, 9);
  });

  it('of an engine without a sander lies nowhere', () =>
    expect([...inputsOf(false).unsanded]).toEqual([1, 1]));
});

describe('wet blocks and forces measured at a stand', () => {
  it('damp is half of wet; dry and sanded are dry', () => {
    const of = (state: 'dry' | 'damp' | 'wet' | 'greasy' | 'sanded'): number =>
      blockWetness('cast-iron', state, assumedValues).value;
    expect([of('dry'), of('sanded'), of('damp'), of('wet'), of('greasy')]).toEqual([1, 1, 0.9, 0.8, 0.8]);
  });

  it('a force of blocks that nobody named falls as cast iron; of composition it stays', () => {
    const at = (block: 'unknown' | 'composition', i: number): number | undefined =>
      shareBySpeed(block, assumedValues)[i]?.friction.value;
    expect(at('unknown', 0)).toBe(1);
    expect(at('unknown', 2)).toBeCloseTo(0.242 / 0.33, 9);
    expect(at('composition', 1)).toBeUndefined();
  });
});

describe('a surge brake', () => {
  const surge = {
    leverRatio: 4,
    efficiency: exact(1),
    springForce: 0,
    block: 'cast-iron' as const,
  };
  const pushed = [{ vehicle: 1, surge }];

  it('of one car behind one braked engine: m·a = F + P with P = F ÷ gain', () => {
    // Gain 4·0.25 = 1: half of the car's push goes into its brake, F = m·a/2; a = (900 + F)/300.
    const [force] = settlePush(pushed, Float64Array.of(200, 100), Float64Array.of(900, 0), [1e9], [0.25], 0);
    expect(force).toBeCloseTo((100 * (900 + force)) / 300 / 2, 1);
    expect(force).toBeCloseTo(180, 0);
  });

  it('is pressed by so much less as another brake of its own car holds back', () => {
    // F = (m·a − 100)/2; a = (1000 + F)/300: F = 140 N.
    const [force] = settlePush(
      pushed,
      Float64Array.of(200, 100),
      Float64Array.of(900, 100),
      [1e9],
      [0.25],
      0,
    );
    expect(force).toBeCloseTo(140, 0);
  });

  it('gives a fifth when the engine slides at a fifth', () => {
    const [all] = settlePush(pushed, Float64Array.of(200, 100), Float64Array.of(900, 0), [1e9], [0.25], 0);
    const [less] = settlePush(pushed, Float64Array.of(200, 100), Float64Array.of(180, 0), [1e9], [0.25], 0);
    expect(less / all).toBeCloseTo(0.2, 2);
  });

  it('ahead of a car that its own brake holds back is pressed by so much less', () => {
    // Two cars of 100 kg, the rear one held by 600 N: a = (1500 + F)/400, F = (200·a − 600)/2: 100 N; its pull forgotten 214 N.
    const masses = Float64Array.of(200, 100, 100);
    const [force] = settlePush(pushed, masses, Float64Array.of(900, 0, 600), [1e9], [0.25], 0);
    expect(force).toBeCloseTo(100, 0);
  });

  it('gives no more than was measured with it pushed in wholly', () => {
    const measured = [{ ...pushed[0], atMost: exact(60) }];
    const [force] = settlePush(
      measured,
      Float64Array.of(200, 100),
      Float64Array.of(900, 0),
      [1e9],
      [0.25],
      0,
    );
    expect(force).toBeCloseTo(60, 6);
  });

  it('never holds more than its wheels do', () => {
    const [force] = settlePush(pushed, Float64Array.of(200, 100), Float64Array.of(900, 0), [50], [0.25], 0);
    expect(force).toBeCloseTo(50, 6);
  });
});

describe('a bad spot', () => {
  it('adds to a stop that adhesion limits what energy says', () => {
    const { prepared, context } = ready(randomOuting(12, 4));
    const inputs = prepared.inputs('dry');
    const flat = {
      ...inputs,
      potential: {
        ...inputs.potential,
        W: new Float64Array(inputs.potential.count),
        slope: new Float64Array(inputs.potential.count),
      },
      material: inputs.material.map(() => 0),
      handle: inputs.handle.map(() => -1),
      adhesion: exact(0.1),
      bare: exact(0.1),
      blockValue: inputs.blockValue.map((_, g) => 0.1 * inputs.load[g]),
    };
    const model = modelOf(flat, likely, false);
    model.a = 0;
    const distance = stopDistance(model, 0, 5);
    expect(distance).toBeGreaterThan(20);
    const share = inputs.load.reduce((sum, n) => sum + n, 0) / (context.loaded.mass * 9.80665);
    Object.assign(model, { spot: 4, spotFactor: 0.25 });
    expect(spotAdds(model, 0, 5, model.trace)).toBeCloseTo(badSpotAdds(4, 0.25, 0.1 * share, 0), 6);
  });

  it('adds nothing to a brake so light that the spot still holds it', () => {
    const { prepared } = ready(randomOuting(12, 4));
    const inputs = prepared.inputs('dry');
    const light = { ...inputs, blockValue: inputs.blockValue.map((_, g) => 0.02 * inputs.load[g]) };
    const model = modelOf(light, likely, false);
    stopDistance(model, 0, 1);
    Object.assign(model, { spot: 6, spotFactor: 0.5 });
    expect(spotAdds(model, 0, 1, model.trace)).toBe(0);
  });

  it.each([
    ['falls into a hollow and ends on the rise', 0.5],
    ['climbs over a brow and ends on the fall', -0.5],
  ])('of a stop that %s adds what small steps say, wherever it lies', (_what, depth) => {
    const { prepared } = ready(randomOuting(12, 4));
    const inputs = prepared.inputs('dry');
    const { from, step, count } = inputs.potential;
    // Per unit of mass: a hollow, or a brow, every 60 m.
    const wave = (2 * Math.PI) / 60;
    const at = (j: number): number => from + j * step;
    const W = Float64Array.from({ length: count }, (_, j) => inputs.mass * depth * Math.cos(wave * at(j)));
    const slope = Float64Array.from(W, (_, j) => -inputs.mass * depth * wave * Math.sin(wave * at(j)));
    const model = modelOf({ ...inputs, potential: { ...inputs.potential, W, slope } }, likely, false);
    Object.assign(model, { b: 0, c: 0, spot: 4, spotFactor: 0.25 });
    const brake = brakeForce(model.force, 3 * Math.SQRT1_2);
    const lost = brake - 0.25 * model.scratch.grip[0];
    expect(lost).toBeGreaterThan(0);
    // From 5 m on at full brake, so fast that it would stand at 45 m.
    const rise = (a: number, b: number): number =>
      model.massFactor * inputs.mass * depth * (Math.cos(wave * b) - Math.cos(wave * a));
    const energy = (brake + model.a) * 40 + rise(5, 45);
    const end = (spot: number): number => {
      let [s, left] = [5, energy];
      for (; left > 0; s += 1e-3) {
        const here = s >= spot && s < spot + 4 ? lost : 0;
        left -= (brake - here + model.a) * 1e-3 + rise(s, s + 1e-3);
      }
      return s;
    };
    const adds = spotAdds(model, 0, 3, { ...model.trace, distance: 45, beforeFullBrake: 5 });
    for (const spot of [6, 20, 38]) expect(end(spot) - 45).toBeCloseTo(adds, 1);
  });
});

describe('two brakes on the same wheels', () => {
  const outing = randomOuting(12, 0);
  const [engine] = outing.train.vehicles;
  const [gear] = engine.brakes;
  const both = (railState: 'dry' | 'wet') => {
    const common = { ...gear, rigging: undefined, on: ['a'] };
    const brakes = [
      { ...common, id: 'iron', force: exact(300), block: 'cast-iron' },
      { ...common, id: 'soft', force: exact(300), block: 'composition' },
    ];
    const train = { ...outing.train, vehicles: [{ ...engine, brakes }] };
    const on = { ...outing, train, conditions: { ...outing.conditions, railState } };
    return ready(on as unknown as typeof outing).prepared.inputs(railState);
  };

  it('share the rail by what each does there today: wet, composition gives the more of it up', () => {
    const [iron, soft] = both('dry').load;
    expect(soft / iron).toBeCloseTo(1, 9);
    const wet = both('wet').load;
    const { 'cast-iron': w, composition } = assumedValues.blockWet;
    expect(composition.value).toBeLessThan(w.value);
    expect(wet[1] / wet[0]).toBeCloseTo(composition.value / w.value, 9);
    expect(wet[0] + wet[1]).toBeCloseTo(iron + soft, 6);
  });
});
