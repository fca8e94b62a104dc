/** The engine against the witness over random outings: 60 on a push, 1,200 in full, and a quarter as many wider ones. */
import { beforeAll, describe, expect, it } from 'vitest';
import { bundled } from '../support/bundled.ts';
import { beside } from '../support/measured.ts';
import { full, runs } from '../support/tier.ts';
import type { Repeat, Survey } from './against/survey.ts';

const WIDER = runs(15, 300);
const OUTINGS = runs(60, 1200) + WIDER;

/** An empty list, or the first few to repeat. */
const none = (list: readonly Repeat[]): void => expect(list.slice(0, 5), `${list.length} in all`).toEqual([]);

describe('the witness', () => {
  let all: Survey;
  beforeAll(async () => {
    const { survey } = await bundled<typeof import('./against/survey.ts')>('../witness/against/survey.ts');
    all = survey(1, OUTINGS - WIDER, full ? { step: 0.004, most: 3000 } : {}, WIDER);
  });

  it('looked at enough', () => {
    expect(all.outings).toBe(OUTINGS);
    expect(all.mayLeave).toBeGreaterThan(0.3 * OUTINGS);
    expect(all.stops.compared).toBe(12 * OUTINGS);
    expect(all.stops.never).toBeGreaterThan(0);
    expect(all.rooms.places).toBeGreaterThan(3 * OUTINGS);
    expect(all.braking.stops).toBeGreaterThan(0.5 * OUTINGS);
    expect(all.braking.slows).toBeGreaterThan(OUTINGS);
    expect(all.tails.compared - all.tails.near).toBeGreaterThan(1.5 * OUTINGS);
    expect(all.balance.checks).toBeGreaterThan(20 * OUTINGS);
  });

  it('stops where the engine says, within 2 % or 15 cm', () => none(all.stops.apart));

  it('overruns no sight, signal or end of line from the speed run, of outings that may leave', () =>
    none(all.overruns.room));

  it('nor of any other of whose stopping nothing bad is said', () => none(all.overrunsElsewhere.room));

  it('knows no ceiling of speed below the permitted one', () => none(all.rooms.aboveCeiling));

  it('stands at every booked stop, with the margin', () => none(all.braking.stopsBeyondMargin));

  it('rolls its parted tails to the same place and speed', () => none(all.tails.apart));

  it('loads every wheel alike, and bears as much lean', () => {
    expect(Math.max(...all.balance.wheels)).toBeLessThan(1e-9);
    expect(Math.max(...all.balance.leans)).toBeLessThan(1e-6);
  });

  /** What can hurt is told so that one draw in a hundred is worse: no more, and bounds are not stacked. */
  const oneInAHundred = ({ draws, worse }: { draws: number; worse: number }): void => {
    expect(draws).toBeGreaterThan(1000);
    expect(worse / draws).toBeLessThan(0.013);
    expect(worse / draws).toBeGreaterThan(0.002);
  };

  it('goes over in one draw of a hundred when all lean as far as is told', () =>
    oneInAHundred(all.balance.over));

  // Curvature and cant are read from nodes 0.25 m apart: beside the end of a transition less may be left by a little.
  it('keeps as much of its lightest wheel as is told in all draws but one of a hundred', () =>
    expect(all.balance.along.worse / all.balance.along.draws).toBeLessThan(0.013));

  it('two brakes on the same wheels lock together, whichever way their force is told, on wet rail too', () => {
    expect(all.stops.twoGears).toBeGreaterThan(OUTINGS / 2);
    none(all.stops.twoGearsApart);
  });

  // Which of them uses how much of the grip the engine takes from what both do at a stand (decision 0001).
  it('of which speed weakens one alone, they stop no later than told, to 3 %', () =>
    none(all.stops.twoGearsShort));

  it('is kept for the page', () => {
    const SMALL_STEPS = 'the witness, in small steps of time';
    const BALANCE = 'the witness, by the balance of moments in space';
    const { stops, tails, balance } = all;
    beside(import.meta.url, 'likely stops of awkward outings', SMALL_STEPS, stops.errors);
    beside(import.meta.url, 'parted tails that come to rest: way', SMALL_STEPS, tails.errors, 'm');
    beside(
      import.meta.url,
      'wheel loads, of the vehicle’s weight: worst of an outing',
      BALANCE,
      balance.wheels,
    );
    beside(import.meta.url, 'leans that lift a wheel: worst of an outing', BALANCE, balance.leans);
  });

  describe('what is promised', () => {
    it('from the permitted speed one hand in a hundred stops beyond the room less the margin', () =>
      none(all.overruns.limit));
    it('one in a hundred beyond the gap told, less the margin', () => none(all.overruns.gap));
    it('where no sight is stated on the line the stop fits into the usual one, or the outing does not leave', () =>
      none(all.overruns.unstated));
    it('no train that may leave gains speed under full brake', () => none(all.overruns['speeds up']));
    it('nor one of whose stopping nothing bad is said', () => none(all.overrunsElsewhere['speeds up']));
    it('stands at every booked stop', () => none(all.braking.stopsLate));
    it('has slowed where a lower limit begins', () => none(all.braking.slowsLate));
  });
});
