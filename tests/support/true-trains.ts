/**
 * Random true trains and the tests that a club makes with them: the truth drawn from what is assumed, the readings made by
 * the independent witness and then read in error. What the fit is given is the outing as it was assumed.
 */
import { assumedValues, instruments } from '../../data/index.ts';
import { between, exact, type Quantity } from '../../engine/base/quantity.ts';
import type { Around } from '../../engine/calibrate/instruments.ts';
import type { CoastDown, CoastRun } from '../../engine/calibrate/tests/coast-down.ts';
import type { Stop, StopTest } from '../../engine/calibrate/tests/stop-test.ts';
import { openOuting } from '../../engine/outing/open.ts';
import type { Outing } from '../../engine/outing/types.ts';
import { chance, drawn } from '../witness/chance.ts';
import { groundOf } from '../witness/ground.ts';
import { type Hand, hand, likelyDeal, tableOf } from '../witness/hand.ts';
import { rollPast } from '../witness/roll.ts';
import { nothingTold, stop, wayAhead } from '../witness/stop.ts';
import { answering, carsOf } from '../witness/train.ts';
import { drawer, randomOuting, randomVehicle } from './random-outings.ts';

export const asked = (outing: Outing): Around => ({
  instruments,
  assumed: outing.assumed,
  outing: openOuting(outing),
});

const assumedRolling = between(0.003, 0.006, 0.012, 'assumed');

/** Two cars behind an engine that has a brake, as their papers have them: nothing measured. */
export function assumedOuting(seed: number): Outing {
  const draw = drawer(seed);
  const base = randomOuting(seed, 2);
  const hard = draw(0.06, 0.09);
  const rolling = { rolling: assumedRolling, perSpeed: exact(0), perSpeedSquared: 0 };
  const vehicles = ['engine', 'car1', 'car2'].map((id, i) => {
    const v = randomVehicle(draw, id, i === 0);
    return {
      ...v,
      tare: exact(v.tare.value),
      rotatingShare: between(0.03, 0.06, 0.1, 'assumed'),
      resistance: rolling,
      ...(i === 0 ? { supplies: ['straight-air' as const] } : {}),
      brakes: [
        {
          id: 'brake',
          name: 'brake',
          kind: 'straight-air' as const,
          on: v.groups.map((g) => g.id),
          // Short of what a wet rail holds: a wheel that slides tells nothing of its brake.
          force: spreadAbout(v.tare.value * 9.80665 * hard, 0.8, 1.15),
          deadTime: between(0.2, 0.5, 1, 'assumed'),
          buildUp: between(0.5, 1, 2, 'assumed'),
          workedBy: 'driver' as const,
          parking: false,
        },
      ],
    };
  });
  const waves = [0, 60, 130, 210, 300, 400].map((at) => ({ at, height: draw(-0.25, 0.25) }));
  return {
    ...base,
    line: {
      ...base.line,
      loop: false,
      length: 400,
      heights: waves,
      heightQuality: 'levelled',
      curves: [{ from: 150, to: 190, startCurvature: 0.02, endCurvature: 0.02, gaugeWidening: 0 }],
      cants: [],
      places: [],
    },
    train: { name: 'random', vehicles, pipeBrokenAfter: [], chainsFastened: true },
    riders: [],
    direction: 'forward',
    wayBack: 'none',
    otherTrains: 'none',
    assumed: assumedValues,
  };
}

const spreadAbout = (value: number, low: number, high: number): Quantity =>
  between(value * low, value, value * high, 'stated');

export interface Truth {
  readonly outing: Outing;
  readonly rolling: number;
  readonly perSpeed: number;
  readonly grade: number;
  /** True ÷ stated force, of each of its brakes. */
  readonly brake: number;
  readonly deadTime: number;
  readonly buildUp: number;
}

/** One true train of those that are assumed. */
export function trueTrain(outing: Outing, u: () => number): Truth {
  const take = (q: Quantity): number => drawn(q, u(), 'halves');
  const rolling = take(assumedRolling);
  const perSpeed = take(instruments.perSpeed);
  const wheels = take(outing.train.vehicles[0].rotatingShare);
  const [gear] = outing.train.vehicles[0].brakes;
  const brake = take(gear.force as Quantity) / (gear.force as Quantity).value;
  const deadTime = take(gear.deadTime as Quantity);
  const buildUp = take(gear.buildUp as Quantity);
  const vehicles = outing.train.vehicles.map((v) => ({
    ...v,
    rotatingShare: exact(wheels),
    resistance: { rolling: exact(rolling), perSpeed: exact(perSpeed), perSpeedSquared: 0 },
    brakes: v.brakes.map((b) => ({
      ...b,
      force: exact(brake * (b.force as Quantity).value),
      deadTime: exact(deadTime),
      buildUp: exact(buildUp),
    })),
  }));
  const adhesion = { ...outing.assumed.adhesion, dry: exact(take(outing.assumed.adhesion.dry)) };
  return {
    rolling,
    perSpeed,
    brake,
    grade: take(outing.assumed.gradeSpread[outing.line.heightQuality]),
    deadTime,
    buildUp,
    outing: {
      ...outing,
      train: { ...outing.train, vehicles },
      conditions: { ...outing.conditions, reaction: exact(0) },
      assumed: { ...outing.assumed, adhesion, curveConstant: exact(take(outing.assumed.curveConstant)) },
    },
  };
}

export function handOf({ outing, grade }: Truth, way: 'forward' | 'reverse'): { ran: Outing; hand: Hand } {
  const missed = { ...outing.assumed.gradeSpread, levelled: exact(way === 'forward' ? grade : -grade) };
  const ran: Outing = { ...outing, direction: way, assumed: { ...outing.assumed, gradeSpread: missed } };
  return { ran, hand: hand(tableOf(ran, answering(ran)), likelyDeal) };
}

/** Readings as a club makes them. */
class Readers {
  readonly tape: number;
  readonly speedometer: number;
  readonly #u: () => number;
  constructor(u: () => number) {
    this.#u = u;
    this.tape = drawn(instruments.tape, u(), 'halves');
    this.speedometer = drawn(instruments.speedometer, u(), 'halves');
  }
  off(q: Quantity): number {
    return drawn(q, this.#u(), 'halves');
  }
}

/** Both ways over the same ground, let go at about a walk and a half, timed at marks 12 m apart and where it rests. */
export function coastedDown(truth: Truth, u: () => number): CoastDown {
  const read = new Readers(u);
  const runs = (['forward', 'reverse'] as const).flatMap((way): CoastRun[] =>
    [3.4, 2.4].map((aimed) => {
      const { ran, hand: h } = handOf(truth, way);
      const length = ran.line.length;
      const from = way === 'forward' ? 110 : length - 290;
      const v0 = aimed + 0.4 * (u() - 0.5);
      const marks = [12, 24, 36, 48];
      const told = rollPast(
        wayAhead(groundOf(ran), carsOf(ran), from),
        h,
        v0,
        marks.map((m) => m * read.tape),
      );
      const late = read.off(instruments.stopwatch);
      const at = (m: number): number => (way === 'forward' ? from + m : length - from - m);
      const passes = marks.flatMap((m, i) =>
        Number.isNaN(told.time[i])
          ? []
          : [{ at: at(m), time: told.time[i] + read.off(instruments.stopwatch) - late }],
      );
      const rests = told.rest < 90;
      return {
        way,
        from: at(0),
        passes,
        ...(rests ? { rest: { at: at(told.rest / read.tape + read.off(instruments.mark)) } } : {}),
      };
    }),
  );
  return { kind: 'coast-down', source: 'coast-down', date: '2026-05-31', runs };
}

/** Six stops at three speeds, both ways. */
export function stoppedShort(truth: Truth, u: () => number): StopTest {
  const read = new Readers(u);
  const stops = [1.6, 2.4, 3.4, 1.6, 2.4, 3.4].map((aimed, i): Stop => {
    const way = i % 2 === 0 ? 'forward' : 'reverse';
    const { ran, hand: h } = handOf(truth, way);
    const length = ran.line.length;
    const from = way === 'forward' ? 120 : length - 250;
    const v0 = aimed + 0.4 * (u() - 0.5);
    const told = nothingTold();
    stop(wayAhead(groundOf(ran), carsOf(ran), from), h, v0, told);
    const on = told.distance / read.tape + read.off(instruments.mark);
    return {
      way,
      from: way === 'forward' ? from : length - from,
      speed: v0 / read.speedometer + read.off(instruments.speed),
      restAt: way === 'forward' ? from + on : length - from - on,
      time: told.time + read.off(instruments.stopwatch) + read.off(instruments.stopwatch),
    };
  });
  return { kind: 'stop-test', source: 'stop test', begins: 'action', rail: 'dry', stops };
}

/** Neighbouring seeds begin alike: these lie apart. */
export const luck = (seed: number): (() => number) => chance(seed * 7_919_317 + 104_729);
