/**
 * Tests by rule, tape and stopwatch: slack of couplers and chains, stiffness of a spring, a wheel rolled along the rail, a
 * speedometer against a timed length, sight paced along the line, a club's own riders on the scales.
 */
import { fitReadings, type Parameter, type Reading, type Values, WIDTH } from '../fit.ts';
import { type Around, errorOf, sharedBy } from '../instruments.ts';
import { type Refusal, refuse } from '../refusal.ts';
import { type Belongs, type Looked, type Outcome, resultsOf } from '../result.ts';
import type { Sense } from '../train.ts';
import type { Recorded } from './recorded.ts';

export interface Slack extends Recorded {
  readonly kind: 'slack';
  readonly of: 'front' | 'rear' | 'front.chain' | 'rear.chain';
  /** Free movement under a hand's pull, m. */
  readonly lengths: readonly number[];
}

export interface Spring extends Recorded {
  readonly kind: 'spring';
  readonly of: 'wheel' | 'front' | 'rear';
  /** Springs that share the load. */
  readonly springs: number;
  /** N on it, and where its end stands then, m: either growing or falling with the load. */
  readonly loads: readonly { readonly load: number; readonly height: number }[];
}

export interface WheelDiameter extends Recorded {
  readonly kind: 'wheel-diameter';
  /** Whole turns, and how far it rolled, m. */
  readonly rolls: readonly { readonly turns: number; readonly distance: number }[];
}

export interface Speedometer extends Recorded {
  readonly kind: 'speedometer';
  /** m and s, and what it showed all the way, m/s. */
  readonly runs: readonly { readonly length: number; readonly time: number; readonly shown: number }[];
}

export interface SightDistance extends Recorded {
  readonly kind: 'sight';
  /** Chainage that was looked at, m. */
  readonly at: number;
  /** Name of the place that was looked at; absent: the one that stands there. */
  readonly place?: string;
  /** Absent: forward. */
  readonly way?: Sense;
  /** m, each by another person or another day. */
  readonly distances: readonly number[];
  /** By steps: length of one, m, from so many steps over a taped length. */
  readonly paced?: { readonly steps: number; readonly length: number };
}

export interface Riders extends Recorded {
  readonly kind: 'riders';
  readonly who: 'man' | 'woman' | 'adult' | 'youth' | 'child';
  /** kg as dressed for the ride, without names. */
  readonly masses: readonly number[];
}

const LEAST = 2;
const LEAST_RIDERS = 8;

/** @param field of the figures @param needed at least so many of them, each more than nothing */
function sound(field: string, figures: readonly number[], needed: number): Refusal | undefined {
  if (figures.length < needed) return refuse('too-few-readings', { found: figures.length, needed });
  const odd = figures.findIndex((f) => !(f > 0 && Number.isFinite(f)));
  if (odd < 0) return undefined;
  return refuse('out-of-range', { field: `${field}.${odd}`, found: figures[odd], low: 0, high: Infinity });
}

const mean = (figures: readonly number[]): number => figures.reduce((sum, f) => sum + f, 0) / figures.length;

/** One thing read several times, with what the instrument does to all of them. */
function repeated(
  readings: readonly Reading[],
  looked: Looked,
  test: Recorded,
  shared: readonly Parameter[],
  model: (v: Values) => readonly number[],
): Outcome {
  const start = mean(readings.map((r) => r.value));
  const parameters: Parameter[] = [{ key: 'it', start, law: 'log' }, ...shared];
  const made = fitReadings({ parameters, readings, kind: looked.kind, model });
  return 'code' in made ? made : resultsOf(made, [looked], test, 'more-readings');
}

export function slack(test: Slack, { instruments, assumed, vehicle }: Around): Outcome {
  const { lengths, of } = test;
  const wrong = sound('lengths', lengths, LEAST);
  if (wrong) return wrong;
  const chain = of.endsWith('chain');
  const before = chain
    ? assumed.chainSlack
    : (vehicle?.[of as 'front' | 'rear'].slack ?? assumed.couplerSlack);
  return repeated(
    lengths.map((value) => ({ value, error: errorOf(instruments.rule) })),
    {
      key: chain ? 'chainSlack' : 'slack',
      kind: 'length',
      of: (v) => v['it'],
      law: 'log',
      before,
      ...(chain ? { careful: 'high' as const } : {}),
      belongs: [{ paper: 'vehicle', field: `${of}.slack` }],
    },
    test,
    [],
    (v) => lengths.map(() => v['it']),
  );
}

export function spring(test: Spring, { instruments, assumed }: Around): Outcome {
  const { loads, springs, of } = test;
  if (loads.length < LEAST + 1) return refuse('too-few-readings', { found: loads.length, needed: LEAST + 1 });
  const sorted = [...loads].sort((a, b) => a.load - b.load);
  const [light, heavy] = [sorted[0], sorted[sorted.length - 1]];
  const moved = heavy.height - light.height;
  if (!(heavy.load > light.load) || moved === 0) return refuse('not-told-apart', { keys: ['stiffness'] });
  const sense = Math.sign(moved);
  const field = of === 'wheel' ? 'suspension.wheelStiffness' : `${of}.stiffness`;
  const made = fitReadings({
    parameters: [
      { key: 'it', start: (heavy.load - light.load) / Math.abs(moved), law: 'log' },
      { key: 'free', start: light.height, law: 'plain' },
      sharedBy('balance', instruments.balance),
    ],
    readings: loads.map(({ height }) => ({ value: height, error: errorOf(instruments.rule) })),
    kind: 'length',
    model: (v) => loads.map(({ load }) => v['free'] + (sense * load * v['balance']) / v['it']),
  });
  if ('code' in made) return made;
  const stiffness: Looked = {
    key: 'stiffness',
    kind: 'stiffness',
    of: (v) => v['it'] / springs,
    law: 'log',
    ...(of === 'wheel' ? {} : { before: assumed.couplerStiffness }),
    belongs: [{ paper: 'vehicle', field }],
  };
  return resultsOf(made, [stiffness], test, 'more-readings');
}

export function wheelDiameter(test: WheelDiameter, { instruments, vehicle }: Around): Outcome {
  const { rolls } = test;
  const wrong =
    sound(
      'rolls.distance',
      rolls.map((r) => r.distance),
      LEAST,
    ) ??
    sound(
      'rolls.turns',
      rolls.map((r) => r.turns),
      LEAST,
    );
  if (wrong) return wrong;
  const belongs: Belongs[] =
    vehicle?.traction?.kind === 'steam' ? [{ paper: 'vehicle', field: 'traction.wheelDiameter' }] : [];
  return repeated(
    rolls.map(({ turns, distance }) => ({
      value: distance / (turns * Math.PI),
      error: errorOf(instruments.mark) / (turns * Math.PI),
    })),
    { key: 'wheelDiameter', kind: 'length', of: (v) => v['it'], law: 'log', belongs },
    test,
    [sharedBy('tape', instruments.tape)],
    (v) => rolls.map(() => v['it'] / v['tape']),
  );
}

export function speedometer(test: Speedometer, { instruments }: Around): Outcome {
  const { runs } = test;
  const wrong =
    sound(
      'runs.length',
      runs.map((r) => r.length),
      LEAST,
    ) ??
    sound(
      'runs.time',
      runs.map((r) => r.time),
      LEAST,
    ) ??
    sound(
      'runs.shown',
      runs.map((r) => r.shown),
      LEAST,
    );
  if (wrong) return wrong;
  return repeated(
    runs.map(({ length, time, shown }) => {
      const factor = length / (time * shown);
      const parts = [
        (Math.SQRT2 * errorOf(instruments.stopwatch)) / time,
        errorOf(instruments.speed) / shown,
        errorOf(instruments.mark) / length,
      ];
      return { value: factor, error: factor * Math.hypot(...parts) };
    }),
    {
      key: 'speedometerFactor',
      kind: 'ratio',
      of: (v) => v['it'],
      law: 'log',
      before: instruments.speedometer,
    },
    test,
    [sharedBy('tape', instruments.tape)],
    (v) => runs.map(() => v['it'] / v['tape']),
  );
}

export function sightDistance(test: SightDistance, { instruments }: Around): Outcome {
  const { distances, paced, at, place, way = 'forward' } = test;
  const wrong = sound('distances', distances, LEAST);
  if (wrong) return wrong;
  // A step is a tape that is read anew each time, and stretched as the whole walk was.
  const step = paced ? paced.length / paced.steps : 0;
  return repeated(
    distances.map((value) => ({
      value,
      error: Math.max(errorOf(instruments.mark), step / 2, errorOf(instruments.eyes) * value),
    })),
    {
      key: 'sight',
      kind: 'length',
      of: (v) => v['it'],
      law: 'log',
      careful: 'low',
      belongs: [
        { paper: 'line', field: 'sight', seen: { at, way, ...(place === undefined ? {} : { place }) } },
      ],
    },
    test,
    [sharedBy('tape', instruments.tape)],
    (v) => distances.map(() => v['it'] / v['tape']),
  );
}

/** Not the mean's own doubt but what the next rider may weigh: the club's spread, and what so few tell of it. */
export function riders({ masses, source, date }: Riders): Outcome {
  const wrong = sound('masses', masses, LEAST_RIDERS);
  if (wrong) return wrong;
  const value = mean(masses);
  const n = masses.length;
  const deviation = Math.sqrt(masses.reduce((sum, m) => sum + (m - value) ** 2, 0) / (n - 1));
  const next = deviation * Math.sqrt(1 + 1 / n);
  const low = Math.min(Math.max(2, value - WIDTH * next), ...masses);
  const high = Math.max(value + WIDTH * next, ...masses);
  return {
    ok: true,
    results: [
      {
        key: 'riderMass',
        kind: 'mass',
        quantity: { value, low, high, how: 'measured', source, ...(date === undefined ? {} : { date }) },
        interval: [Math.max(2, value - 1.96 * next), value + 1.96 * next],
        systematic: 0,
        surer: { by: 'readings' },
        belongs: [{ paper: 'outing', field: 'riders.weight' }],
      },
    ],
    correlations: [[1]],
    untold: [],
    scatter: 1,
    readings: n,
  };
}
