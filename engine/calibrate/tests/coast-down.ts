/**
 * Coast-down: the train is let roll past marks, until it rests or not. Times or speeds at the marks, or the speed at the
 * start and where it rests; let go from rest down a fall it is the drop test. What is fitted: rolling resistance and its
 * speed term. Vehicles of which the same is assumed are one unknown; a train of two sorts tells their sum, and each only as
 * far as it weighs in it: the engine let roll by itself tells the rest.
 *
 * Both ways over the same ground tell the grade from the resistance: what the survey misses helps one and hinders the other.
 */
import { GRAVITY } from '../../base/constants.ts';
import type { OutingContext } from '../../outing/open.ts';
import type { LoadedVehicle } from '../../things/train/loaded.ts';
import { resistanceTerms } from '../../things/train/resistance.ts';
import {
  type Compared,
  type Fitting,
  fitReadings,
  type Parameter,
  type Reading,
  type Values,
} from '../fit.ts';
import { type Around, besides, errorOf, type Instruments, sharedBy } from '../instruments.ts';
import { type Refusal, refuse } from '../refusal.ts';
import { type Looked, type Outcome, resultsOf } from '../result.ts';
import { type Forces, placeAt, type Rolled, roll, type Way, wayOf } from '../roll.ts';
import { rollersOf, runningLine, stretchesOf, wheelsOf } from '../train.ts';
import type { Recorded } from './recorded.ts';

export interface Pass {
  /** Chainage of the train's head, m, as the line has it. */
  readonly at: number;
  /** From where it was let go or passed the first mark, s. */
  readonly time?: number;
  /** m/s */
  readonly speed?: number;
}

export interface CoastRun {
  readonly way: 'forward' | 'reverse';
  /** Where it was let go, or the first mark: chainage of the head, m. */
  readonly from: number;
  /** m/s there; 0: let go from rest; absent: not read. */
  readonly speed?: number;
  readonly passes: readonly Pass[];
  /** Where the head came to rest, and when. */
  readonly rest?: { readonly at: number; readonly time?: number };
}

export interface CoastDown extends Recorded {
  readonly kind: 'coast-down' | 'curve-resistance';
  readonly runs: readonly CoastRun[];
}

/** A roll is followed so far beyond its last mark, m. */
const BEYOND = 20;
const LEAST = 3;

export function coastDown(test: CoastDown, around: Around): Outcome {
  const { outing } = around;
  if (!outing) return refuse('not-stated', { field: 'outing' });
  const runs = test.runs.map((run) => layRun(run, outing));
  const wrong = runs.flatMap((run, i) => firstWrong(run, i, test, outing, around) ?? [])[0];
  if (wrong) return wrong;
  const readings = runs.flatMap((run) => run.readings(around));
  if (readings.length < LEAST) return refuse('too-few-readings', { found: readings.length, needed: LEAST });
  const made = fitReadings(fittingOf(test, runs, readings, outing, around));
  if ('code' in made) return made;
  return resultsOf(made, lookedFor(test, outing, around), test, furtherOf(test));
}

const furtherOf = ({ kind, runs }: CoastDown) =>
  kind === 'curve-resistance'
    ? 'curve-and-straight'
    : runs.some((r) => r.way !== runs[0].way)
      ? 'longer'
      : 'other-way';

function lookedFor(
  { kind }: CoastDown,
  { loaded, outing }: OutingContext,
  { instruments }: Around,
): Looked[] {
  if (kind === 'curve-resistance') {
    const before = outing.assumed.curveConstant;
    return [
      {
        key: 'curveConstant',
        kind: 'length',
        of: (v) => v['curve'],
        law: 'log',
        before,
        belongs: [{ paper: 'line', field: 'curveConstant' }],
      },
    ];
  }
  const belongs = (field: string, of: readonly LoadedVehicle[]) =>
    of.map((v) => ({ paper: 'vehicle' as const, field, vehicle: v.vehicle.id }));
  return [
    ...rollersOf(loaded.vehicles).map(
      ({ key, vehicles, rolling }): Looked => ({
        key,
        kind: 'specificForce',
        of: (v) => v[key],
        law: 'log',
        before: rolling,
        belongs: belongs('resistance.rolling', vehicles),
      }),
    ),
    {
      key: 'perSpeed',
      kind: 'ratio',
      of: (v) => v['perSpeed'],
      law: 'log',
      before: instruments.perSpeed,
      belongs: belongs('resistance.perSpeed', loaded.vehicles),
    },
  ];
}

interface Laid {
  readonly run: CoastRun;
  readonly way: Way;
  /** 1: as the line's chainage grows. */
  readonly sense: 1 | -1;
  /** Marks as m from where it was let go: passes, then rest. */
  readonly marks: readonly number[];
  readonly readings: (around: Around) => Reading[];
  readonly told: (values: Values, rolled: Rolled) => number[];
}

/** The forces of a train by what is fitted. */
const forcesOf = ({ loaded, outing }: OutingContext, v: Values, sense: 1 | -1): Forces => {
  const likely = resistanceTerms(loaded.vehicles, 0);
  const weight = loaded.mass * GRAVITY;
  const resists = rollersOf(loaded.vehicles).reduce(
    (sum, { key, vehicles }) => sum + v[key] * GRAVITY * vehicles.reduce((m, { mass }) => m + mass, 0),
    0,
  );
  return {
    terms: { a: resists, b: weight * v['perSpeed'], c: likely.c },
    inertia: loaded.mass + (loaded.effectiveMass - loaded.mass) * v['wheels'],
    curve: v['curve'] ?? outing.assumed.curveConstant.value,
    grade: sense * v['grade'],
  };
};

function layRun(run: CoastRun, { loaded, outing }: OutingContext): Laid {
  const { line, at: running } = runningLine(outing.line, run.way);
  const from = running(run.from);
  const places = [...run.passes.map((p) => running(p.at)), ...(run.rest ? [running(run.rest.at)] : [])];
  const marks = places.map((p) => (line.loop && p < from ? p + line.length : p) - from);
  const passed = marks.slice(0, run.passes.length);
  const ahead = passed.filter((m) => m > 0).map((m) => from + m);
  const way = wayOf(
    line,
    stretchesOf(loaded),
    from,
    [...new Set(ahead)].sort((a, b) => a - b),
    BEYOND + (run.rest ? Math.max(0, marks[marks.length - 1] - Math.max(0, ...passed)) : 0),
  );
  return {
    run,
    way,
    sense: run.way === 'forward' ? 1 : -1,
    marks,
    readings: (around) => readingsOf(run, marks, around),
    told: (values, rolled) => toldOf(run, way, values, rolled),
  };
}

/**
 * A time at a mark is read as the place at that time: places go on evenly to where it rests, times do not. The thumb's error
 * is so much of the way as the train ran in it.
 */
function readingsOf(run: CoastRun, marks: readonly number[], { instruments }: Around): Reading[] {
  const { stopwatch, mark: marked, place: placed } = instruments;
  const [watch, speed, mark, place] = [stopwatch, instruments.speed, marked, placed].map(errorOf);
  const { rest } = run;
  const ran = speedsAtMarks(run, marks);
  return [
    ...(run.speed ? [{ value: run.speed, error: speed, kind: 'speed' as const }] : []),
    ...run.passes.flatMap((p, i) => [
      ...(p.time === undefined ? [] : [{ value: marks[i], error: Math.hypot(ran[i] * watch, place) }]),
      ...(p.speed === undefined ? [] : [{ value: p.speed, error: speed, kind: 'speed' as const }]),
    ]),
    ...(rest ? [{ value: marks[marks.length - 1], error: mark }] : []),
    // Nobody sees the moment of rest as sharply as a mark go by.
    ...(rest?.time === undefined ? [] : [{ value: rest.time, error: 2 * watch, kind: 'time' as const }]),
  ];
}

/** Roughly, from the times before and after; 1 m/s where nothing tells. */
function speedsAtMarks({ passes }: CoastRun, marks: readonly number[]): number[] {
  const timed = [
    { m: 0, t: 0 },
    ...passes.flatMap(({ time: t }, i) => (t === undefined ? [] : [{ m: marks[i], t }])),
  ];
  return marks.map((m) => {
    const i = timed.findIndex((p) => p.m === m);
    if (i < 1) return 1;
    const [before, after] = [timed[i - 1], timed[i + 1] ?? timed[i]];
    return (after.m - before.m) / (after.t - before.t);
  });
}

/** In the order of the readings. */
function toldOf(run: CoastRun, way: Way, v: Values, rolled: Rolled): number[] {
  const start = v['start'] ?? 0;
  let passed = -1;
  return [
    ...(run.speed ? [start / v['speedometer']] : []),
    ...run.passes.flatMap((p) => {
      passed++;
      return [
        ...(p.time === undefined ? [] : [placeAt(way, rolled, p.time + v['late']) / v['tape']]),
        ...(p.speed === undefined ? [] : [rolled.speed[way.marks[passed]] / v['speedometer']]),
      ];
    }),
    ...(run.rest ? [rolled.rest / v['tape']] : []),
    ...(run.rest?.time === undefined ? [] : [rolled.restTime - v['late']]),
  ];
}

function fittingOf(
  test: CoastDown,
  runs: readonly Laid[],
  readings: readonly Reading[],
  context: OutingContext,
  { instruments }: Around,
): Fitting {
  const { outing, loaded } = context;
  const parameters: Parameter[] = [
    ...rollersOf(loaded.vehicles).map(({ key, rolling }) => ({ key, prior: rolling, law: 'log' }) as const),
    { key: 'perSpeed', prior: instruments.perSpeed, law: 'log' },
    {
      key: 'curve',
      prior: outing.assumed.curveConstant,
      law: 'log',
      ...(test.kind === 'coast-down' ? { systematic: true as const } : {}),
    },
    sharedBy('grade', outing.assumed.gradeSpread[outing.line.heightQuality]),
    besides('wheels', wheelsOf(loaded.vehicles)),
    sharedBy('tape', instruments.tape),
    sharedBy('speedometer', instruments.speedometer),
    ...runs.flatMap(({ run }, i): Parameter[] => [
      ...(run.speed === 0 ? [] : [{ key: `start ${i}`, start: startSpeed(runs[i]), law: 'log' as const }]),
      { key: `late ${i}`, prior: instruments.stopwatch, law: 'plain' },
    ]),
  ];
  const rolls = runs.map((laid) => rememberedRolls(laid, context));
  const model = (values: Values): number[] =>
    runs.flatMap((laid, i) => {
      const own = { ...values, start: values[`start ${i}`] ?? 0, late: values[`late ${i}`] };
      return laid.told(own, rolls[i](own));
    });
  return { parameters, readings, kind: 'length', model, written: (i, v) => writtenAs(runs, i, v, rolls) };
}

/** A time as it was read, and when the fitted roll passes that mark. */
function writtenAs(
  runs: readonly Laid[],
  index: number,
  values: Values,
  rolls: readonly ((v: Values & { start: number }) => Rolled)[],
): Compared | undefined {
  let at = 0;
  for (const [i, { run, way }] of runs.entries()) {
    if (run.speed) at++;
    const own = { ...values, start: values[`start ${i}`] ?? 0 };
    for (const [k, pass] of run.passes.entries()) {
      if (pass.time !== undefined && at++ === index)
        return {
          found: pass.time,
          expected: rolls[i](own).time[way.marks[k]] - values[`late ${i}`],
          kind: 'time',
        };
      if (pass.speed !== undefined) at++;
    }
    at += (run.rest ? 1 : 0) + (run.rest?.time === undefined ? 0 : 1);
  }
  return undefined;
}

/** A roll is reckoned anew only for what changes it: not for the thumb, the tape, or how another run began. */
function rememberedRolls(
  { way, sense }: Laid,
  context: OutingContext,
): (v: Values & { start: number }) => Rolled {
  const known = new Map<string, Rolled>();
  const by = [...ROLLS_BY, ...rollersOf(context.loaded.vehicles).map((r) => r.key)];
  return (v) => {
    const key = by.map((k) => v[k]).join();
    const made = known.get(key) ?? roll(way, forcesOf(context, v, sense), v.start);
    if (known.size > MOST_KNOWN) known.clear();
    known.set(key, made);
    return made;
  };
}

const ROLLS_BY = ['perSpeed', 'curve', 'grade', 'wheels', 'start'];
const MOST_KNOWN = 24;

/** Where the search for an unread speed begins: as it ran over the first stretch, and a little more. */
function startSpeed({ run, marks }: Laid): number {
  if (run.speed) return run.speed;
  const first = run.passes.findIndex((p) => p.time !== undefined && p.time > 0);
  if (first >= 0) return Math.max(0.3, marks[first] / (run.passes[first].time as number));
  return run.passes[0]?.speed ?? 2;
}

/** Readings that no roll can give. */
function firstWrong(
  { run, marks, way }: Laid,
  index: number,
  { runs }: CoastDown,
  context: OutingContext,
  { instruments, assumed }: Around,
): Refusal | undefined {
  const before = runs.slice(0, index).reduce((n, r) => n + r.passes.length + (r.rest ? 1 : 0), 0);
  let [m, t] = [0, 0];
  for (const [i, mark] of marks.entries()) {
    const time = i < run.passes.length ? run.passes[i].time : run.rest?.time;
    // Where it rests is read less sharply than a mark: it may seem to lie a little before the last one.
    const least = i < run.passes.length ? m : m - instruments.mark.high;
    if (!(mark > least) || (time !== undefined && !(time > t)))
      return refuse('runs-backwards', { reading: before + i + 1 });
    [m, t] = [mark, time ?? t];
  }
  const fast = speedsOf(run, marks, instruments);
  const grade = assumed.gradeSpread[context.outing.line.heightQuality];
  for (const [i, here] of fast.entries()) {
    const next = fast[i + 1];
    if (!next) break;
    const length = next.m - here.m;
    const fall =
      (riseTo(way, here.m) - riseTo(way, next.m)) / way.weight + Math.max(grade.high, -grade.low) * length;
    const gained = (next.v ** 2 - here.v ** 2) / (2 * GRAVITY);
    const doubt =
      3 * ((here.v * here.error + next.v * next.error) / GRAVITY) +
      3 * errorOf(instruments.speedometer) * fall;
    if (gained > Math.max(fall, 0) + Math.abs(doubt))
      return refuse('coast-speeds-up', { reading: before + next.pass + 1 });
  }
  return undefined;
}

interface Fast {
  /** m from the start */
  readonly m: number;
  readonly v: number;
  readonly pass: number;
  readonly error: number;
}

/** Speeds along the run: as read, else over each stretch between two times. */
function speedsOf({ passes }: CoastRun, marks: readonly number[], instruments: Instruments): Fast[] {
  const read = passes.flatMap(({ speed: v }, i) =>
    v === undefined ? [] : [{ m: marks[i], v, pass: i, error: errorOf(instruments.speed) }],
  );
  if (read.length > 0) return read;
  const timed = [
    { m: 0, t: 0, pass: 0 },
    ...passes.flatMap(({ time: t }, i) => (t === undefined ? [] : [{ m: marks[i], t, pass: i }])),
  ];
  return timed.slice(1).map((b, i) => {
    const a = timed[i];
    const v = (b.m - a.m) / (b.t - a.t);
    const error = (Math.SQRT2 * v * errorOf(instruments.stopwatch)) / (b.t - a.t);
    return { m: (a.m + b.m) / 2, v, pass: b.pass, error };
  });
}

function riseTo({ s, rise }: Way, m: number): number {
  const at = s[0] + m;
  let i = 0;
  while (i + 1 < s.length && s[i + 1] <= at) i++;
  return rise[i];
}
