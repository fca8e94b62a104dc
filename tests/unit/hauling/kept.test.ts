/**
 * Starting where booked and keeping a speed: exact inputs give the closed form, on a made-up incline without curves, with
 * an engine of constant pull and two cars.
 */

import { describe, expect, it } from 'vitest';
import { inquire } from '../../../engine/answer/inquiry.ts';
import { exact } from '../../../engine/base/quantity.ts';
import { type OutingContext, openOuting } from '../../../engine/outing/open.ts';
import { askHauling } from '../../../engine/questions/haul/ask.ts';
import { drawHaul, failsAt, NUISANCE, pullsAlong } from '../../../engine/questions/haul/draws.ts';
import { carefulKeep, speedKept } from '../../../engine/questions/haul/keep.ts';
import { haul } from '../../../engine/questions/haul/question.ts';
import { bookedStops, carefulStart, START_OF_RUN, startsAt } from '../../../engine/questions/haul/start.ts';
import { base, G, GRADE, laid, type OnClimb, PER_SPEED, ROLLING } from '../../support/on-a-climb.ts';
import { assumedValues } from '../../support/random-outings.ts';

const KEPT = assumedValues.practice['kept-speed'].value;

const weightOf = ({ loaded }: OutingContext): number => loaded.mass * G;
/** Pull at a stand at which the train just keeps a speed up the climb. */
const justKeeps = (context: OutingContext, v: number): number =>
  (weightOf(context) * (GRADE + ROLLING + PER_SPEED * v)) / (1 - v / 10);
const keepOf = (set: OnClimb) => {
  const context = laid(set);
  return carefulKeep(context, pullsAlong(context, 1), 'dry', 100)!;
};

describe('a speed is kept', () => {
  const just = justKeeps(laid({}), KEPT);
  it('where the pull at that speed is grade and resistance at that speed', () => {
    const keep = keepOf({ pull: just });
    expect(keep.need).toBeCloseTo(weightOf(laid({})) * (GRADE + ROLLING + PER_SPEED * KEPT), 3);
    expect(keep.pull).toBeCloseTo(just * (1 - KEPT / 10), 3);
    expect(keep.grip).toBe(false);
    expect(keepOf({ pull: just * 1.01 }).fails).toBe(0);
    expect(keepOf({ pull: just * 0.99 }).fails).toBe(1);
  });
  it('and how fast is the speed at which both are equal', () => {
    const speed = 2.2;
    const context = laid({ pull: justKeeps(laid({}), speed) });
    const pulls = pullsAlong(context, 1);
    const { node } = carefulKeep(context, pulls, 'dry')!;
    const kept = speedKept(context, pulls, 'dry', node)!;
    expect(kept).toBeLessThanOrEqual(speed);
    expect(kept).toBeGreaterThan(speed - 0.02);
    expect(speedKept(laid({ pull: 10 }), pulls, 'dry', node)).toBe(0);
  });
  it('over a short oily spot with what the train comes with, over a long one not, nor without any to spare', () => {
    const spot = (long: number, plannedSpeed: number) =>
      keepOf({
        pull: just * 1.2,
        stretches: [{ from: 200 - long, to: 200, state: 'greasy' }],
        plannedSpeed,
      });
    expect(spot(1, 3).fails).toBe(0);
    expect(spot(60, 3)).toMatchObject({ fails: 1, rail: 'greasy', grip: true });
    expect(spot(1, KEPT).fails).toBe(1);
  });
  it('as the speed meant is: another is asked anew', () => {
    const stretches = [{ from: 199, to: 200, state: 'greasy' }] as const;
    const fast = laid({ pull: just * 1.2, stretches, plannedSpeed: 3 }).written;
    const slow = { ...fast, plannedSpeed: KEPT };
    const before = inquire(fast);
    const kept = before.of(haul).data!.balancingSpeed!;
    const after = inquire(slow, {}, before).of(haul).data;
    expect(after).toEqual(inquire(slow).of(haul).data);
    expect(after!.balancingSpeed).toBeLessThan(kept);
  });
  it('or nobody can tell where a boiler’s power is not known', () => {
    const context = laid({});
    const [engine, ...cars] = context.loaded.vehicles;
    const steam = {
      kind: 'steam' as const,
      cylinders: 2,
      bore: 0.05,
      stroke: 0.08,
      wheelDiameter: 0.2,
      boilerPressure: 6e5,
      meanPressureFactor: exact(0.8),
    };
    const vehicles = [{ ...engine, vehicle: { ...engine.vehicle, traction: steam } }, ...cars];
    const loaded = { ...context.loaded, vehicles };
    expect(carefulKeep({ ...context, loaded }, pullsAlong(context, 1), 'dry')).toBeUndefined();
    expect(carefulStart({ ...context, loaded }, pullsAlong(context, 1), 'dry')).toBeDefined();
  });
  it('or beyond the last speed at which a pull was measured, unless it was none', () => {
    const measured = (last: { speed: number; force: number }) => {
      const context = laid({});
      const [engine, ...cars] = context.loaded.vehicles;
      const curve = [{ speed: 0, force: just }, last];
      const traction = { kind: 'drawbar' as const, how: 'measured' as const, curve };
      const vehicles = [{ ...engine, vehicle: { ...engine.vehicle, traction } }, ...cars];
      const held = { ...context, loaded: { ...context.loaded, vehicles } };
      const pulls = pullsAlong(held, 1);
      const start = carefulStart(held, pulls, 'dry')!;
      return [carefulKeep(held, pulls, 'dry')?.fails, speedKept(held, pulls, 'dry', start.node)];
    };
    expect(measured({ speed: KEPT * 0.99, force: just })).toEqual([undefined, undefined]);
    expect(measured({ speed: KEPT * 1.01, force: just })).toEqual([0, undefined]);
    const [fails, kept] = measured({ speed: KEPT * 0.99, force: 0 });
    expect(fails).toBe(1);
    expect(kept).toBeLessThan(KEPT * 0.99);
  });
});

describe('a start where booked', () => {
  // Just too weak to start on the climb, strong enough on the level.
  const climb = [150, 250] as const;
  const pull = weightOf(laid({})) * (GRADE + 1.5 * ROLLING) * 0.98;
  const failing = (set: OnClimb) => {
    const context = laid({ pull, climb, ...set });
    const pulls = pullsAlong(context, 1);
    const start = carefulStart(context, pulls, 'dry', 100)!;
    const names = startsAt(start, pulls, bookedStops(context)).filter(({ fails }) => fails > NUISANCE);
    return { fails: start.fails, names: names.map((s) => s.name), asked: askHauling(context).findings[0] };
  };
  it('fails only where there is a stop', () => {
    expect(failing({})).toMatchObject({ fails: 1, names: [] });
    expect(failing({ signal: 100 }).names).toEqual([]);
    expect(failing({ signal: 240 }).names).toEqual(['Signal']);
  });
  it('and where that is the end of the line', () => {
    const context = laid({ pull, climb });
    const pulls = pullsAlong(context, 1);
    const last = pulls.curved.slope.length - 1;
    const end = pulls.curved.from + last * pulls.curved.step;
    const start = carefulStart(context, pulls, 'dry', 100)!;
    const found = startsAt(start, pulls, [
      { name: 'End', at: end },
      { name: 'Beyond', at: end + 1 },
      { name: 'Before', at: -1 },
    ]);
    expect(found.map(({ node }) => node)).toEqual([last, last, 0]);
  });
  it('counts the start of the run, with the whole train on the line', () => {
    const begins = failing({ climb: [0, 100] });
    expect(begins.names).toEqual([START_OF_RUN]);
    expect(begins.asked).toMatchObject({ code: 'cannot-start', facts: { places: START_OF_RUN } });
    const { loaded } = laid({});
    expect(bookedStops(laid({}))).toEqual([{ name: START_OF_RUN, at: loaded.length }]);
  });
});

describe('the draws', () => {
  it('that surely do are not looked at, and give what looking gives', () => {
    const context = openOuting(base);
    const pulls = pullsAlong(context, 5);
    const drawn = drawHaul(context, pulls, 'damp', 50, 0)!;
    const always = { ...drawn, most: { ...drawn.most, curve: Infinity } };
    for (let node = 0; node < pulls.curved.count; node++)
      expect(failsAt(drawn, pulls, node)).toBe(failsAt(always, pulls, node));
  });
});

describe('bad rail that is not the day’s', () => {
  // Pulled by adhesion alone on a greasy stretch, a train of which all is known loses there what it lacks by the way.
  const speed = (share: number, start: boolean): boolean => {
    const context = laid({
      pull: weightOf(laid({})) * 0.06,
      stretches: [{ from: 190, to: 200, state: 'greasy' }],
      plannedSpeed: 1,
    });
    const pulls = pullsAlong(context, 1);
    const kept = start ? 0 : KEPT;
    const drawn = drawHaul(context, pulls, 'dry', 20, kept)!;
    const { curved } = pulls;
    const greasy = Array.from(curved.slope.keys()).filter((j) => drawn.railAt(j) === 'greasy');
    expect(greasy.length).toBeGreaterThan(9);
    const rolls = ROLLING + PER_SPEED * kept;
    const grips = 0.02 * context.loaded.vehicles[0].mass * G;
    const work = greasy.reduce((sum, j) => sum + curved.slope[j] + weightOf(context) * rolls - grips, 0);
    // ½·M·(v₀² − v²) is as much.
    const v0 = Math.sqrt((share * 2 * work) / context.loaded.effectiveMass + kept * kept);
    const fast = { ...context, outing: { ...context.outing, plannedSpeed: v0 } };
    return start
      ? !carefulStart(fast, pulls, 'dry', 20)!.stalls
      : carefulKeep(fast, pulls, 'dry', 20)!.rail === 'dry';
  };
  it('is run over by a train that comes with the work that it takes above the speed kept', () => {
    expect(speed(1.02, false)).toBe(true);
    expect(speed(0.98, false)).toBe(false);
  });
  it('stalls one that comes with less than it takes at all', () => {
    expect(speed(1.02, true)).toBe(true);
    expect(speed(0.98, true)).toBe(false);
  });
});
