/**
 * Tests of the brake's air by gauge and stopwatch.
 *
 * Leak-down: shut off, how the gauge falls. Air leaves (or enters a vacuum) through one small hole at an even temperature:
 *
 *   dp/dt = ∓(p₁/τ)·ψ(p₂/p₁)/ψ(0)      p₁ the higher, p₂ the lower pressure, absolute; ψ flow of an orifice, choked or not
 *
 * Time to apply: from the hand on the valve to the first touch and to full force, at the last car. Recharge: from shut to
 * working pressure; with the volume it gives what the pump delivers.
 */
import { STANDARD_ATMOSPHERE } from '../../base/constants.ts';
import { flowNumber } from '../../things/air/formulas.ts';
import { type BrakeKind, isVacuumKind } from '../../things/brake/kinds/index.ts';
import { fitReadings, type Reading, type Values } from '../fit.ts';
import { type Around, errorOf, sharedBy } from '../instruments.ts';
import { refuse } from '../refusal.ts';
import { type Belongs, type Looked, type Outcome, resultsOf } from '../result.ts';
import type { Recorded } from './recorded.ts';

export interface LeakDown extends Recorded {
  readonly kind: 'leak-down';
  readonly brake: BrakeKind;
  /** Id of the brake; absent: the vehicle has no rigging in its paper. */
  readonly gear?: string;
  /** Gauge: above the atmosphere, or the vacuum, Pa. */
  readonly readings: readonly { readonly time: number; readonly pressure: number }[];
  /** Pa, absolute; absent: of the outing's day, or the standard one. */
  readonly atmosphere?: number;
}

export interface ApplyTime extends Recorded {
  readonly kind: 'apply-time';
  readonly brake: BrakeKind;
  readonly gear?: string;
  /** s from the hand's movement. */
  readonly tries: readonly { readonly first?: number; readonly full?: number }[];
}

export interface Recharge extends Recorded {
  readonly kind: 'recharge';
  readonly brake: BrakeKind;
  /** Gauge readings between which it was timed, Pa. */
  readonly from: number;
  readonly to: number;
  /** s */
  readonly times: readonly number[];
  /** Of pipe, reservoirs and cylinders together, m³. */
  readonly volume?: number;
  readonly atmosphere?: number;
}

const LEAST_LEAK = 3;
const LEAST_TIMES = 3;
/** Steps over which a leak is followed to the last reading. */
const STEPS = 240;
/** s */
const MINUTE = 60;

const atmosphereOf = ({ atmosphere }: { atmosphere?: number }, { outing }: Around): number =>
  atmosphere ?? outing?.air.pressure ?? STANDARD_ATMOSPHERE;

/** Growth of the gauge's figure, Pa/s: negative. */
function leakRate(gauge: number, tau: number, vacuum: boolean, outside: number): number {
  const inside = vacuum ? outside - gauge : outside + gauge;
  const [high, low] = inside > outside ? [inside, outside] : [outside, inside];
  return high > low ? (-(high / tau) * flowNumber(low / high)) / flowNumber(0) : 0;
}

/** The gauge at each time, by the classical Runge–Kutta rule. */
export function leaked(
  start: number,
  tau: number,
  vacuum: boolean,
  outside: number,
  times: readonly number[],
): number[] {
  const last = Math.max(...times);
  const h = last / STEPS;
  const rate = (g: number): number => leakRate(Math.max(g, 0), tau, vacuum, outside);
  const path = [start];
  for (let i = 0; i < STEPS; i++) {
    const g = path[i];
    const k1 = rate(g);
    const k2 = rate(g + (h / 2) * k1);
    const k3 = rate(g + (h / 2) * k2);
    const k4 = rate(g + h * k3);
    path.push(Math.max(0, g + (h / 6) * (k1 + 2 * k2 + 2 * k3 + k4)));
  }
  return times.map((t) => {
    const r = Math.min(t / h, STEPS - 1e-9);
    const i = Math.floor(r);
    return path[i] + (r - i) * (path[i + 1] - path[i]);
  });
}

/** Until the gauge shows half, s. */
function halfTime(start: number, tau: number, vacuum: boolean, outside: number): number {
  let [low, high] = [0, 20 * tau];
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (leaked(start, tau, vacuum, outside, [middle])[0] > start / 2) low = middle;
    else high = middle;
  }
  return high;
}

export function leakDown(test: LeakDown, around: Around): Outcome {
  const { readings, gear } = test;
  const vacuum = isVacuumKind(test.brake);
  const outside = atmosphereOf(test, around);
  if (readings.length < LEAST_LEAK)
    return refuse('too-few-readings', { found: readings.length, needed: LEAST_LEAK });
  const back = readings.findIndex((r, i) => i > 0 && !(r.time > readings[i - 1].time));
  if (back >= 0) return refuse('runs-backwards', { reading: back + 1 });
  const most = vacuum ? outside : 5e6;
  const odd = readings.findIndex((r) => !(r.pressure >= 0 && r.pressure < most));
  if (odd >= 0)
    return refuse('out-of-range', {
      field: `readings.${odd}.pressure`,
      found: readings[odd].pressure,
      low: 0,
      high: most,
    });
  const [first, last] = [readings[0], readings[readings.length - 1]];
  const { instruments } = around;
  const error = errorOf(instruments.pressure);
  const times = readings.map((r) => r.time - first.time);
  const fallen = Math.max(first.pressure - last.pressure, error);
  const made = fitReadings({
    parameters: [
      { key: 'start', start: first.pressure, law: 'log' },
      { key: 'tau', start: ((first.pressure + outside) * (last.time - first.time)) / fallen, law: 'log' },
      sharedBy('gauge', instruments.gauge),
    ],
    readings: readings.map((r): Reading => ({ value: r.pressure, error })),
    kind: vacuum ? 'vacuum' : 'gaugePressure',
    model: (v) => leaked(v['start'], v['tau'], vacuum, outside, times).map((p) => p / v['gauge']),
  });
  if ('code' in made) return made;
  const belongs: Belongs[] = gear ? [{ paper: 'vehicle', field: 'brakes.rigging.leakRate', gear }] : [];
  return resultsOf(
    made,
    [
      {
        key: 'leak',
        kind: vacuum ? 'vacuum' : 'gaugePressure',
        of: (v) => v['start'] - leaked(v['start'], v['tau'], vacuum, outside, [MINUTE])[0],
        law: 'log',
        careful: 'high',
        belongs,
      },
      {
        key: 'halfTime',
        kind: 'time',
        of: (v) => halfTime(v['start'], v['tau'], vacuum, outside),
        law: 'log',
      },
    ],
    test,
    'longer',
  );
}

export function applyTime(test: ApplyTime, { instruments, assumed }: Around): Outcome {
  const error = Math.SQRT2 * errorOf(instruments.stopwatch);
  const back = test.tries.findIndex(
    (t) => t.first !== undefined && t.full !== undefined && !(t.full > t.first),
  );
  if (back >= 0) return refuse('runs-backwards', { reading: back + 1 });
  const readings = test.tries.flatMap(({ first, full }): Reading[] =>
    [first, full].flatMap((value) => (value === undefined ? [] : [{ value, error }])),
  );
  if (readings.length < LEAST_TIMES)
    return refuse('too-few-readings', { found: readings.length, needed: LEAST_TIMES });
  const made = fitReadings({
    parameters: [
      { key: 'dead', prior: assumed.deadTime[test.brake], law: 'log' },
      { key: 'build', prior: assumed.buildUp[test.brake], law: 'log' },
    ],
    readings,
    kind: 'time',
    model: (v) =>
      test.tries.flatMap(({ first, full }) => [
        ...(first === undefined ? [] : [v['dead']]),
        ...(full === undefined ? [] : [v['dead'] + v['build']]),
      ]),
  });
  if ('code' in made) return made;
  const gear = test.gear === undefined ? {} : { gear: test.gear };
  const looked = (key: string, of: string, before: Looked['before'] & object): Looked => ({
    key,
    kind: 'time',
    of: (v: Values) => v[of],
    law: 'log',
    before,
    belongs: [{ paper: 'vehicle', field: `brakes.${key}`, ...gear }],
  });
  return resultsOf(
    made,
    [
      looked('deadTime', 'dead', assumed.deadTime[test.brake]),
      looked('buildUp', 'build', assumed.buildUp[test.brake]),
    ],
    test,
    'more-readings',
  );
}

export function recharge(test: Recharge, around: Around): Outcome {
  const { times, from, to, volume } = test;
  const vacuum = isVacuumKind(test.brake);
  const outside = atmosphereOf(test, around);
  if (times.length < LEAST_TIMES)
    return refuse('too-few-readings', { found: times.length, needed: LEAST_TIMES });
  if (!(to > from)) return refuse('runs-backwards', { reading: 1 });
  if (vacuum && to >= outside)
    return refuse('out-of-range', { field: 'to', found: to, low: from, high: outside });
  const { instruments } = around;
  const made = fitReadings({
    parameters: [
      { key: 'time', start: times.reduce((sum, t) => sum + t, 0) / times.length, law: 'log' },
      sharedBy('gauge', instruments.gauge),
    ],
    readings: times.map((value) => ({ value, error: 2 * errorOf(instruments.stopwatch) })),
    kind: 'time',
    model: (v) => times.map(() => v['time']),
  });
  if ('code' in made) return made;
  // Free air into a pipe; out of it at its own falling pressure.
  const moved = (v: Values): number =>
    vacuum
      ? Math.log((outside - from * v['gauge']) / (outside - to * v['gauge']))
      : ((to - from) * v['gauge']) / outside;
  const looked: Looked[] = [{ key: 'rechargeTime', kind: 'time', of: (v) => v['time'], law: 'log' }];
  if (volume !== undefined)
    looked.push({
      key: 'supplyRate',
      kind: 'flow',
      of: (v) => (volume * moved(v)) / v['time'],
      law: 'log',
      careful: 'low',
      belongs: [{ paper: 'vehicle', field: 'brakeSupply.rate' }],
    });
  return resultsOf(made, looked, test, 'more-readings');
}
