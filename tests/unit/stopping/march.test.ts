/** The slow march at its edges: a start exactly on a node of the grid, at rest, and beyond the grid's end. */
import { describe, expect, it } from 'vitest';
import { exact } from '../../../engine/base/quantity.ts';
import { marchStop } from '../../../engine/motion/march.ts';
import { emptyTrace } from '../../../engine/motion/model.ts';
import { onPlane } from '../../support/plane.ts';
import { modelFor, ready } from '../../support/ready.ts';

/** A train without any brake and without reaction time. */
const unbraked = (grade: number, rolling: number) => {
  const { outing } = onPlane(grade, rolling);
  return modelFor(
    ready({
      ...outing,
      conditions: { ...outing.conditions, reaction: exact(0) },
      train: { ...outing.train, vehicles: outing.train.vehicles.map((v) => ({ ...v, brakes: [] })) },
    }),
  );
};

describe('the march without brakes', () => {
  it('at rest on a fall, on a node, does not stand', () => {
    const trace = emptyTrace();
    marchStop(unbraked(-0.03, 0.005), 100, 0, trace);
    expect(trace.distance).toBe(Infinity);
  });

  it('at rest where resistance holds it stands where it is', () => {
    const trace = emptyTrace();
    marchStop(unbraked(-0.003, 0.01), 100, 0, trace);
    expect(trace.distance).toBe(0);
  });

  it('beyond the end of the grid it does not stop', () => {
    const model = unbraked(0.01, 0.01);
    const trace = emptyTrace();
    const { from, step, count } = model.potential;
    marchStop(model, from + count * step, 1, trace);
    expect(trace.distance).toBe(Infinity);
  });
});
