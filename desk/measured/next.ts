/**
 * What to measure next: each test that would narrow something of this outing, by how much it would change the word and the
 * speeds, per minute of effort. The truth is drawn from what is assumed; the outing is asked again as if the test had found it.
 */
import { firstAnswer } from '../../engine/answer/answer.ts';
import { countCars } from '../../engine/answer/counts.ts';
import { inquire, type OpenInquiry } from '../../engine/answer/inquiry.ts';
import type { Answer } from '../../engine/answer/types.ts';
import type { Quantity } from '../../engine/base/quantity.ts';
import { pick } from '../../engine/base/spread.ts';
import { type TestKind, tests } from '../../engine/calibrate/tests/index.ts';
import type { Outing } from '../../engine/outing/types.ts';
import type { Care } from '../../engine/questions/question.ts';
import type { Vehicle } from '../../engine/things/vehicle/types.ts';
import { testAsked } from './which.ts';

export interface Worth {
  readonly kind: TestKind;
  readonly minutes: number;
  /** Findings that cannot tell for want of it. */
  readonly asked: number;
  /** Share of what it may find that changes the word. */
  readonly changesWord: number;
  /** Of what it may find, where the word is better than now. */
  readonly bettersWord: number;
  /** Mean over the line and over what it may find: permitted speed then, less now, m/s. */
  readonly faster: number;
  /** Mean of the number of cars that may be taken then, less now; absent: not asked, or nobody can tell it now. */
  readonly moreCars?: number;
}

export interface Looking extends Care {
  /** Numbers of cars too: some seconds more. */
  readonly counts?: boolean;
}

type Found = (assumed: Quantity) => Quantity;

interface Candidate {
  readonly kind: TestKind;
  /** Spread after the test ÷ before, as tests of random true trains had it. */
  readonly narrowed: number;
  /** The outing as the test finds it; undefined: nothing of it is assumed. */
  readonly find: (outing: Outing, found: Found) => Outing | undefined;
}

/** Positions in a spread, each as likely as the others: the middles of five equal shares of a triangle's draws. */
const POSITIONS = [-0.553, -0.225, 0, 0.225, 0.553];

const rank: Readonly<Record<Answer['verdict'], number>> = { hold: 0, unknown: 1, limits: 2, go: 3 };

const unmeasured = (q: Quantity | undefined): q is Quantity =>
  q !== undefined && q.how !== 'measured' && q.high > q.low;

const ofVehicles =
  (change: (v: Vehicle, found: Found, outing: Outing) => Vehicle) =>
  (outing: Outing, found: Found): Outing | undefined => {
    const vehicles = outing.train.vehicles.map((v) => change(v, found, outing));
    return vehicles.every((v, i) => v === outing.train.vehicles[i])
      ? undefined
      : { ...outing, train: { ...outing.train, vehicles } };
  };

/** Of all brakes, where it is not measured. */
const ofBrakes = (
  key: 'force' | 'deadTime' | 'buildUp',
  assumedOf: (outing: Outing, kind: Vehicle['brakes'][number]['kind']) => Quantity | undefined,
) =>
  ofVehicles((v, found, outing) => {
    const brakes = v.brakes.map((gear) => {
      const q = gear[key] ?? (gear.rigging && key !== 'force' ? undefined : assumedOf(outing, gear.kind));
      return unmeasured(q) ? { ...gear, [key]: found(q) } : gear;
    });
    return brakes.every((b, i) => b === v.brakes[i]) ? v : { ...v, brakes };
  });

const candidates: readonly Candidate[] = [
  {
    kind: 'coast-down',
    narrowed: 0.25,
    find: ofVehicles((v, found) =>
      unmeasured(v.resistance.rolling)
        ? { ...v, resistance: { ...v.resistance, rolling: found(v.resistance.rolling) } }
        : v,
    ),
  },
  {
    kind: 'brake-pull',
    narrowed: 0.35,
    find: ofBrakes('force', () => undefined),
  },
  {
    kind: 'apply-time',
    narrowed: 0.5,
    find: (outing, found) => {
      const dead = ofBrakes('deadTime', (o, kind) => o.assumed.deadTime[kind])(outing, found);
      return ofBrakes('buildUp', (o, kind) => o.assumed.buildUp[kind])(dead ?? outing, found) ?? dead;
    },
  },
  {
    kind: 'locked-wheels',
    narrowed: 0.2,
    find: (outing, found) => {
      const { railState, adhesion } = outing.conditions;
      const q = adhesion ?? outing.assumed.adhesion[railState];
      if (!unmeasured(q)) return undefined;
      const known = { ...outing.assumed.adhesion, [railState]: found(q) };
      return {
        ...outing,
        conditions: { ...outing.conditions, adhesion: found(q) },
        assumed: { ...outing.assumed, adhesion: known },
      };
    },
  },
  {
    kind: 'tilt',
    narrowed: 0.1,
    find: ofVehicles((v, found) =>
      unmeasured(v.centreHeight) ? { ...v, centreHeight: found(v.centreHeight) } : v,
    ),
  },
  {
    kind: 'weighing',
    narrowed: 0.2,
    find: ofVehicles((v, found) => (unmeasured(v.tare) ? { ...v, tare: found(v.tare) } : v)),
  },
];

/** As a test finds it that was drawn at a position. */
const foundAt =
  (position: number, narrowed: number): Found =>
  (q) => {
    const value = pick(q, position);
    return {
      ...q,
      value,
      low: Math.max(q.low, value - narrowed * (q.value - q.low)),
      high: Math.min(q.high, value + narrowed * (q.high - q.value)),
      how: 'measured',
    };
  };

const meanSpeed = ({ speeds }: Answer): number =>
  speeds ? speeds.limit.reduce((sum, v) => sum + v, 0) / speeds.limit.length : 0;

const leastCars = (inquiry: OpenInquiry): number | null =>
  countCars(inquiry, [inquiry.context.outing.conditions.railState])[0]?.least ?? null;

/** One after the other as they are reckoned, for a screen that shows the first while the rest is to come. */
export function* worthOfTests(outing: Outing, { counts = true, ...care }: Looking = {}): Generator<Worth> {
  const before = inquire(outing, care);
  const now = firstAnswer(before);
  const cars = counts ? leastCars(before) : null;
  const wanting = now.findings.filter((f) => f.severity === 'unknown').map((f) => testAsked(f.measure));
  const all = [...new Set([...wanting.filter((k) => k !== undefined), ...candidates.map((c) => c.kind)])];
  for (const kind of all) {
    const asked = wanting.filter((k) => k === kind).length;
    const { narrowed = 1, find } = candidates.find((c) => c.kind === kind) ?? {};
    const inquiries = POSITIONS.flatMap((p) => find?.(outing, foundAt(p, narrowed)) ?? []).map((o) =>
      inquire(o, care, before),
    );
    if (inquiries.length === 0 && asked === 0) continue;
    const after = inquiries.map(firstAnswer);
    const then = cars === null ? [] : inquiries.map((i) => leastCars(i) ?? 0);
    const share = (is: (answer: Answer) => boolean): number => mean(after.map((a) => (is(a) ? 1 : 0)));
    yield {
      kind,
      minutes: tests[kind].minutes,
      asked,
      changesWord: share((a) => a.verdict !== now.verdict),
      bettersWord: share((a) => rank[a.verdict] > rank[now.verdict]),
      faster: mean(after.map((a) => meanSpeed(a) - meanSpeed(now))),
      ...(cars === null ? {} : { moreCars: mean(then.map((n) => n - cars)) }),
    };
  }
}

const mean = (of: readonly number[]): number =>
  of.length === 0 ? 0 : of.reduce((sum, v) => sum + v, 0) / of.length;

/** Best first: what the answer cannot do without, what changes the word, then the number of cars, then the speeds, each per minute. */
export const whatToMeasure = (outing: Outing, looking: Looking = {}): Worth[] =>
  [...worthOfTests(outing, looking)].sort(
    (a, b) =>
      Math.sign(b.asked) - Math.sign(a.asked) ||
      b.changesWord / b.minutes - a.changesWord / a.minutes ||
      Math.abs(b.moreCars ?? 0) / b.minutes - Math.abs(a.moreCars ?? 0) / a.minutes ||
      Math.abs(b.faster) / b.minutes - Math.abs(a.faster) / a.minutes,
  );
