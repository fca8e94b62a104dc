/** Laws of a train that parts and of the flag behind a stopped one. Fixed seeds. */
import { describe, expect, it } from 'vitest';
import { exact, type Quantity } from '../../engine/base/quantity.ts';
import { emptyTrace, modelOf } from '../../engine/motion/model.ts';
import { likely, unsafeBy } from '../../engine/motion/scenario.ts';
import { stopInto } from '../../engine/motion/stop.ts';
import { buildInputs } from '../../engine/motion/stop-inputs.ts';
import type { Outing } from '../../engine/outing/types.ts';
import { flagPlaces } from '../../engine/questions/flag/flag.ts';
import { basisOf } from '../../engine/questions/part/basis.ts';
import { followParting } from '../../engine/questions/part/case.ts';
import { halvesAt } from '../../engine/questions/part/map.ts';
import type { Basis } from '../../engine/questions/part/part.ts';
import { emptyRoll, noTraffic, roll } from '../../engine/questions/part/roll.ts';
import { railStates } from '../../engine/things/rail.ts';
import { dressed } from '../support/dressed-outings.ts';
import { onPlane } from '../support/plane.ts';
import { drawer, randomOuting } from '../support/random-outings.ts';
import { type Ready, ready } from '../support/ready.ts';
import { runs } from '../support/tier.ts';

const basisFor = ({ context }: Ready): Basis =>
  basisOf(context, Math.ceil(context.line.length / 0.5), { rolling: [], grounds: [] });

const seeds = Array.from({ length: runs(30, 300) }, (_, i) => i + 1);

describe('caution of a tail', () => {
  it('is its own: a rail on which it does not slide, as bad as it may be, never makes it better', () => {
    const outing = dressed(20577);
    const { adhesion } = outing.assumed;
    const less = (q: Quantity): Quantity => ({
      ...q,
      low: q.low * 0.9,
      value: q.value * 0.9,
      high: q.high * 0.9,
    });
    const worse = { ...outing.assumed, adhesion: { ...adhesion } };
    for (const state of railStates) worse.adhesion[state] = less(adhesion[state]);
    const [was, is] = [outing, { ...outing, assumed: worse }].map((o) => {
      const r = ready(o);
      return halvesAt(basisFor(r), 1, r.prepared.careful).tail;
    });
    for (const key of ['a', 'b', 'c', 'fullAt'] as const) expect(is[key], key).toBe(was[key]);
    expect(is.model.force).toEqual(was.model.force);
    // It is unlucky all the same.
    expect(was.a).toBeLessThan(halvesAt(basisFor(ready(outing)), 1, likely).tail.a);
  });
});

describe('a chain that holds', () => {
  it('makes the parted tail equal to the coupled train', () => {
    let compared = 0;
    for (const seed of seeds) {
      const r = ready(randomOuting(seed + 300, 4));
      const basis = basisFor(r);
      const draw = drawer(seed);
      const at = r.context.loaded.length + draw(0, r.context.line.length * 0.4);
      const { tail, head } = followParting(basis, 1, at, draw(1, 4), true, likely);
      expect(tail).toBe(head);
      // The coupled train by the engine's own stop: the same brakes, no reaction, for they come on by themselves.
      const inputs = buildInputs(
        r.context.loaded,
        tail.brakes.groups,
        r.prepared.potential,
        r.outing.assumed.adhesion.dry,
        exact(0),
        r.outing.assumed,
      );
      const trace = emptyTrace();
      stopInto(modelOf(inputs, likely, false), tail.at[0], tail.speed[0], trace);
      if (!Number.isFinite(trace.distance) || tail.end.outcome !== 'stands') continue;
      compared++;
      expect(Math.abs(tail.end.at - tail.at[0] - trace.distance) / trace.distance).toBeLessThan(3e-3);
    }
    expect(compared).toBeGreaterThan(seeds.length / 2);
  });
});

describe('a tail without brakes', () => {
  it('turns height into speed and speed into resistance, and nothing is lost', () => {
    const rolling = 0.007;
    const { tail, basis, context } = onPlane(0.03, rolling);
    const out = emptyRoll();
    const start = 1500;
    roll(tail, Math.round(start / basis.grid.step), 3, noTraffic, out);
    const way = out.mostAt - start + (out.mostAt - out.at);
    const height = 0.03 * (out.at - start);
    expect((out.endSpeed * out.endSpeed) / 2).toBeCloseTo(9 / 2 - 9.80665 * (height + rolling * way), 4);
    expect(context.loaded.vehicles.length).toBe(4);
  });

  it('runs no faster with more resistance', () => {
    let last = Infinity;
    for (const rolling of [0.002, 0.005, 0.01, 0.02, 0.028]) {
      const { tail, basis } = onPlane(0.03, rolling);
      const out = emptyRoll();
      roll(tail, Math.round(1500 / basis.grid.step), 2, noTraffic, out);
      expect(out.topSpeed).toBeLessThanOrEqual(last);
      last = out.topSpeed;
    }
  });
});

describe('brakes that come on by themselves', () => {
  it('never let a tail run faster or further back than without them', () => {
    for (const seed of seeds) {
      const braked = randomOuting(seed + 900, 4);
      const loose: Outing = { ...braked, train: { ...braked.train, pipeBrokenAfter: [0] } };
      const [a, b] = [ready(braked), ready(loose)];
      const node = Math.ceil((a.context.loaded.length + drawer(seed)(0, 100)) / 0.5);
      const rolls = [a, b].map((r) => {
        const out = emptyRoll();
        roll(halvesAt(basisFor(r), 0, unsafeBy(1)).tail, node, 3, noTraffic, out);
        return out;
      });
      expect(rolls[0].topSpeed, `seed ${seed}`).toBeLessThanOrEqual(rolls[1].topSpeed + 1e-9);
    }
  });
});

describe('the flag', () => {
  const question = (r: Ready, speed: number) => {
    const nodes = Math.ceil(r.context.line.length / 0.5);
    return {
      context: r.context,
      model: modelOf(r.prepared.inputs('dry'), unsafeBy(1)),
      speeds: new Float64Array(nodes + 1).fill(speed),
      step: r.context.line.length / nodes,
    };
  };
  const rears = Float64Array.of(120, 180, 240);

  it('stands no nearer for a faster follower, and far enough for it to stop', () => {
    for (const seed of seeds.slice(0, runs(12, 30))) {
      const r = ready(randomOuting(seed + 40));
      const [slow, fast] = [flagPlaces(question(r, 1.5), rears), flagPlaces(question(r, 3), rears)];
      slow.forEach((p, i) => {
        expect(fast[i].distance ?? Infinity).toBeGreaterThanOrEqual(p.distance ?? Infinity);
        if (p.distance === null) return;
        expect(p.seenAt + p.stop + r.outing.assumed.stopMargin).toBeLessThanOrEqual(p.rear + 1e-9);
      });
    }
  });

  it('stands no farther where the driver sees farther', () => {
    for (const seed of seeds.slice(0, runs(12, 30))) {
      const base = randomOuting(seed + 40);
      const at = [5, 20, 60].map((distance) => {
        const sight = { from: 0, to: base.line.length, distance, direction: 'both' as const };
        const r = ready({ ...base, line: { ...base.line, sights: [sight] } });
        return flagPlaces(question(r, 3), rears);
      });
      rears.forEach((_, i) => {
        const far = at.map((p) => p[i].distance ?? Infinity);
        expect(far).toEqual([...far].sort((a, b) => b - a));
      });
    }
  });
});
