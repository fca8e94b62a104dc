/**
 * Laws of a stop on which wheels slide: no step anywhere in what a driver graduates. The stops are those of random
 * trains on every rail state, each input moved by 1 %.
 */
import { describe, expect, it } from 'vitest';
import { exact, type Quantity } from '../../engine/base/quantity.ts';
import { modelOf } from '../../engine/motion/model.ts';
import { likely } from '../../engine/motion/scenario.ts';
import { stopDistance } from '../../engine/motion/stop.ts';
import { heldOn, type StopInputs } from '../../engine/motion/stop-inputs.ts';
import { drawer, randomOuting } from '../support/random-outings.ts';
import { ready } from '../support/ready.ts';

const OUTINGS = 150;
/** A stop that hangs on a balance of brake and fall moves with every pound: left to the laws of stopping. */
const LONGEST = 120;
const states = ['dry', 'damp', 'wet', 'greasy'] as const;

const scaled = (q: Quantity, by: number): Quantity => ({ ...q, value: q.value * by });
const changes: Readonly<Record<string, (inputs: StopInputs) => StopInputs>> = {
  '1 % more adhesion': (k) => ({ ...k, adhesion: scaled(k.adhesion, 1.01), bare: scaled(k.bare, 1.01) }),
  '1 % less adhesion': (k) => ({ ...k, adhesion: scaled(k.adhesion, 0.99), bare: scaled(k.bare, 0.99) }),
  '1 % more brake': (k) => ({ ...k, blockValue: k.blockValue.map((b) => b * 1.01) }),
  '1 % less brake': (k) => ({ ...k, blockValue: k.blockValue.map((b) => b * 0.99) }),
  '1 % more brake on one group': (k) => ({
    ...k,
    blockValue: k.blockValue.map((b, i) => (i === 0 ? b * 1.01 : b)),
  }),
};

const cases = Array.from({ length: OUTINGS }, (_, i) => {
  const seed = i + 1;
  const outing = randomOuting(seed);
  const railState = states[seed % states.length];
  const r = ready({ ...outing, conditions: { ...outing.conditions, railState } });
  const draw = drawer(seed + 7);
  return { inputs: r.prepared.inputs(railState), at: draw(0, outing.line.length * 0.9), speed: draw(1, 5) };
});

const stop = (inputs: StopInputs, at: number, speed: number): number =>
  stopDistance(modelOf(inputs, likely, false), at, speed);

describe('a driver who eases', () => {
  it('is asked of enough trains that slide', () => {
    const sliding = cases.filter(({ inputs }) => modelOf(inputs, likely, false).notice > 0);
    expect(sliding.length).toBeGreaterThan(OUTINGS / 3);
  });

  for (const [what, change] of Object.entries(changes)) {
    it(`${what} never changes a stop by more than 3 %`, () => {
      for (const { inputs, at, speed } of cases) {
        const before = stop(inputs, at, speed);
        if (before > LONGEST) continue;
        expect(Math.abs(stop(change(inputs), at, speed) / before - 1)).toBeLessThan(0.03);
      }
    });
  }

  it('a little less adhesion never shortens a stop, also as the wheels of a second handle begin to slide', () => {
    const { prepared } = ready(randomOuting(809_722));
    const inputs = prepared.inputs('dry');
    const slides = (adhesion: number) =>
      modelOf({ ...inputs, adhesion: exact(adhesion), bare: exact(adhesion) }, likely, false);
    const models = Array.from({ length: 60 }, (_, i) => slides(0.25 - 0.002 * i));
    expect(new Set(models.map((model) => model.sliding)).size).toBeGreaterThan(3);
    for (const speed of [0.5, 1, 3]) {
      const stops = models.map((model) => stopDistance(model, 168.45, speed));
      for (let i = 1; i < stops.length; i++) expect(stops[i] / stops[i - 1]).toBeGreaterThan(0.999);
    }
  });

  it('held full on, wheels that lock make a step: the law is not idle', () => {
    const steps = cases.map(({ inputs, at, speed }) => {
      const held = heldOn(inputs);
      return Math.abs(stop(changes['1 % less adhesion'](held), at, speed) / stop(held, at, speed) - 1);
    });
    expect(Math.max(...steps.filter(Number.isFinite))).toBeGreaterThan(0.035);
  });

  it('stops a train of one brake that slides all the way at its share of adhesion', () => {
    const { inputs } = cases[0];
    const one: StopInputs = {
      ...inputs,
      adhesion: exact(0.1),
      bare: exact(0.1),
      blockValue: inputs.blockValue.map((_, g) => 3 * 0.1 * inputs.load[g]),
      material: inputs.material.map(() => 0),
      handle: inputs.handle.map(() => 0),
      handles: 1,
    };
    const model = modelOf(one, likely, false);
    const load = inputs.load.reduce((sum, n) => sum + n, 0);
    for (const force of model.force) {
      expect(force / (0.1 * load * inputs.easing.utilisation.value)).toBeCloseTo(1, 9);
    }
  });
});
