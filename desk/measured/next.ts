/**
 * What to measure next: each test that would narrow something of this outing, by how much it would change the word and the
 * speeds, per minute of effort. The truth is drawn from what is assumed; the outing is asked again as if the test had found it.
 */
import { firstAnswer } from '../../engine/answer/answer.ts';
import { countCars } from '../../engine/answer/counts.ts';
import { inquire, type OpenInquiry } from '../../engine/answer/inquiry.ts';
import type { Answer } from '../../engine/answer/types.ts';
import { exact, type Quantity } from '../../engine/base/quantity.ts';
import { pick } from '../../engine/base/spread.ts';
import { type TestKind, tests } from '../../engine/calibrate/tests/index.ts';
import { openOuting } from '../../engine/outing/open.ts';
import type { Outing } from '../../engine/outing/types.ts';
import type { Care } from '../../engine/questions/question.ts';
import { frictionAt, trainBrakes } from '../../engine/things/brake/force.ts';
import type { BrakeGear, Vehicle } from '../../engine/things/vehicle/types.ts';
import type { Worth } from '../../words/measured/worth.ts';
import { testAsked } from './which.ts';

export interface Looking extends Care {
  /** Numbers of cars too: some seconds more. */
  readonly counts?: boolean;
}

/** A vehicle finds what it is by itself, or all of a sort alike. */
type Found = (assumed: Quantity, vehicle?: string) => Quantity;

interface Candidate {
  readonly kind: TestKind;
  /** Spread after the test ÷ before, as tests of random true trains had it. */
  readonly narrowed: number;
  /** What is assumed of a vehicle: those of which the same is, are of one sort; undefined: nothing. Absent: a test of the whole. */
  readonly assumed?: (vehicle: Vehicle, priors: Priors) => readonly Quantity[] | undefined;
  /** Each of a sort is tested by itself; else one test tells all of them. */
  readonly each?: true;
  /** The outing as the test finds it; undefined: nothing of it is assumed. */
  readonly find: (
    outing: Outing,
    found: Found,
    of: ReadonlySet<string>,
    priors: Priors,
  ) => Outing | undefined;
}

/** What is assumed of the force of each brake, by vehicle and brake: stated, or reckoned from its parts. */
type Priors = ReadonlyMap<BrakeGear, Quantity>;

/** Positions in a spread, each as likely as the others: the middles of five equal shares of a triangle's draws. */
const POSITIONS = [-0.553, -0.225, 0, 0.225, 0.553];

const rank: Readonly<Record<Answer['verdict'], number>> = { hold: 0, unknown: 1, limits: 2, go: 3 };

const unmeasured = (q: Quantity | undefined): q is Quantity =>
  q !== undefined && q.how !== 'measured' && q.high > q.low;

const those = (all: readonly (Quantity | undefined)[]): readonly Quantity[] | undefined => {
  const open = all.filter(unmeasured);
  return open.length > 0 ? open : undefined;
};

const ofVehicles =
  (change: (v: Vehicle, found: (q: Quantity) => Quantity, outing: Outing, priors: Priors) => Vehicle) =>
  (outing: Outing, found: Found, of: ReadonlySet<string>, priors: Priors): Outing => ({
    ...outing,
    train: {
      ...outing.train,
      vehicles: outing.train.vehicles.map((v) =>
        of.has(v.id) ? change(v, (q) => found(q, v.id), outing, priors) : v,
      ),
    },
  });

/** One figure of a vehicle. */
const figure = (
  kind: TestKind,
  narrowed: number,
  get: (v: Vehicle) => Quantity | undefined,
  put: (v: Vehicle, q: Quantity) => Vehicle,
): Candidate => ({
  kind,
  narrowed,
  assumed: (v) => those([get(v)]),
  find: ofVehicles((v, found) => put(v, found(get(v) as Quantity))),
});

const timed = (key: 'deadTime' | 'buildUp', { assumed }: Outing, gear: BrakeGear): Quantity | undefined =>
  gear[key] ?? (gear.rigging ? undefined : assumed[key][gear.kind]);

/** Force of every brake at a stand, with what is not known of its blocks. */
function priorsOf(outing: Outing): Priors {
  const { loaded, air, outing: timedOuting } = openOuting(outing);
  const written = new Map(
    timedOuting.train.vehicles.flatMap((v, i) =>
      v.brakes.map((g, k): [BrakeGear, BrakeGear] => [g, outing.train.vehicles[i].brakes[k]]),
    ),
  );
  const priors = new Map<BrakeGear, Quantity>();
  for (const { gear, block, friction } of trainBrakes(loaded, timedOuting.assumed, air.pressure, air.seaLevel)
    .groups) {
    const own = written.get(gear);
    // What only the push gives nobody pulls against.
    if (!own || own.force?.how === 'measured' || gear.pushed) continue;
    const at = (p: -1 | 0 | 1): number =>
      pick(block, p) * (own.force || !friction ? 1 : frictionAt(friction, 0, p));
    const sum = priors.get(own) ?? exact(0);
    priors.set(own, {
      value: sum.value + at(0),
      low: sum.low + at(-1),
      high: sum.high + at(1),
      how: 'assumed',
    });
  }
  return priors;
}

const candidates: readonly Candidate[] = [
  {
    kind: 'brake-pull',
    narrowed: 0.35,
    each: true,
    assumed: ({ brakes }, priors) => those(brakes.map((b) => priors.get(b))),
    find: ofVehicles((v, found, _, priors) => ({
      ...v,
      brakes: v.brakes.map((gear) => {
        const prior = priors.get(gear);
        return unmeasured(prior) ? { ...gear, force: found(prior) } : gear;
      }),
    })),
  },
  figure(
    'coast-down',
    0.25,
    (v) => v.resistance.rolling,
    (v, rolling) => ({ ...v, resistance: { ...v.resistance, rolling } }),
  ),
  {
    kind: 'locked-wheels',
    narrowed: 0.2,
    find: (outing, found) => {
      const { railState, adhesion } = outing.conditions;
      const q = adhesion ?? outing.assumed.adhesion[railState];
      if (!unmeasured(q)) return undefined;
      const known = found(q);
      return {
        ...outing,
        conditions: { ...outing.conditions, adhesion: known },
        assumed: { ...outing.assumed, adhesion: { ...outing.assumed.adhesion, [railState]: known } },
      };
    },
  },
  {
    kind: 'apply-time',
    narrowed: 0.5,
    find: (outing, found) => {
      let any = false;
      const vehicles = outing.train.vehicles.map((v) => ({
        ...v,
        brakes: v.brakes.map((gear) => {
          const [deadTime, buildUp] = [timed('deadTime', outing, gear), timed('buildUp', outing, gear)];
          any ||= unmeasured(deadTime) || unmeasured(buildUp);
          return {
            ...gear,
            ...(unmeasured(deadTime) ? { deadTime: found(deadTime) } : {}),
            ...(unmeasured(buildUp) ? { buildUp: found(buildUp) } : {}),
          };
        }),
      }));
      return any ? { ...outing, train: { ...outing.train, vehicles } } : undefined;
    },
  },
  {
    ...figure(
      'tilt',
      0.1,
      (v) => v.centreHeight,
      (v, centreHeight) => ({ ...v, centreHeight }),
    ),
    each: true,
  },
  {
    ...figure(
      'weighing',
      0.2,
      (v) => v.tare,
      (v, tare) => ({ ...v, tare }),
    ),
    each: true,
  },
  figure(
    'hauling-pull',
    0.2,
    ({ traction }) => (traction?.kind === 'steam' ? traction.meanPressureFactor : undefined),
    (v, meanPressureFactor) =>
      v.traction?.kind === 'steam' ? { ...v, traction: { ...v.traction, meanPressureFactor } } : v,
  ),
  {
    kind: 'curve-resistance',
    narrowed: 0.4,
    find: (outing, found) => {
      const { curveConstant } = outing.assumed;
      if (outing.line.curves.length === 0 || !unmeasured(curveConstant)) return undefined;
      return { ...outing, assumed: { ...outing.assumed, curveConstant: found(curveConstant) } };
    },
  },
  {
    kind: 'slack',
    narrowed: 0.1,
    find: (outing, found) => {
      const { couplerSlack } = outing.assumed;
      const both = outing.train.vehicles.flatMap((v) => [v.front.slack, v.rear.slack]);
      if (both.every((q) => q !== undefined) || !unmeasured(couplerSlack)) return undefined;
      return { ...outing, assumed: { ...outing.assumed, couplerSlack: found(couplerSlack) } };
    },
  },
];

/** As a test finds it that was drawn at a position. */
function foundAt(position: number, narrowed: number, q: Quantity): Quantity {
  const value = pick(q, position);
  const { fit: _fit, ...rest } = q;
  return {
    ...rest,
    value,
    low: Math.max(q.low, value - narrowed * (q.value - q.low)),
    high: Math.min(q.high, value + narrowed * (q.high - q.value)),
    how: 'measured',
  };
}

/** The outing as a test of some vehicles finds it, at each of the positions; each vehicle at one of its own where each is tested. */
function foundBy(
  { find, narrowed, each }: Candidate,
  outing: Outing,
  of: readonly Vehicle[],
  priors: Priors,
) {
  const ids = of.map((v) => v.id);
  return (draw: number): Outing | undefined =>
    find(
      outing,
      (q, vehicle) => {
        const n = each && vehicle !== undefined ? ids.indexOf(vehicle) : 0;
        return foundAt(POSITIONS[(draw + ASIDE * n) % POSITIONS.length], narrowed, q);
      },
      new Set(ids),
      priors,
    );
}

/** How far the next vehicle's position lies from the one before in the row of positions. */
const ASIDE = 2;

/** Vehicles of which the same is assumed, together. */
function sortsOf({ assumed }: Candidate, { train }: Outing, priors: Priors): readonly (readonly Vehicle[])[] {
  if (!assumed) return [[]];
  const sorts = new Map<string, Vehicle[]>();
  for (const v of train.vehicles) {
    const open = assumed(v, priors);
    if (!open) continue;
    const key = open.map(({ low, value, high }) => [low, value, high].map((x) => x.toPrecision(6))).join(';');
    sorts.set(key, [...(sorts.get(key) ?? []), v]);
  }
  return [...sorts.values()];
}

const meanSpeed = ({ speeds }: Answer): number =>
  speeds ? speeds.limit.reduce((sum, v) => sum + v, 0) / speeds.limit.length : 0;

const leastCars = (inquiry: OpenInquiry): number | null =>
  countCars(inquiry, [inquiry.context.outing.conditions.railState])[0]?.least ?? null;

/** So much of a mean speed is nothing that anybody drives by, m/s. */
const SAME_SPEED = 0.005;

/** A look at what might be needs no more: this many draws, this grid (m). */
const ROUGHLY = { samples: 300, step: 1 } as const;

/** One after the other as they are reckoned, for a screen that shows the first while the rest is to come. */
export function* worthOfTests(outing: Outing, { counts = true, ...own }: Looking = {}): Generator<Worth> {
  const care = { ...ROUGHLY, ...own };
  const before = inquire(outing, care);
  const now = firstAnswer(before);
  const wanting = now.findings
    .filter((f) => f.severity === 'unknown')
    .flatMap((f) => testAsked(f.measure) ?? []);
  for (const kind of new Set(wanting.filter((k) => candidates.every((c) => c.kind !== k))))
    yield { ...nothingFound(kind, tests[kind].minutes), asked: wanting.filter((k) => k === kind).length };
  const priors = priorsOf(outing);
  const cars = counts ? leastCars(before) : null;
  for (const candidate of candidates) {
    const asked = wanting.filter((k) => k === candidate.kind).length;
    const sorts = sortsOf(candidate, outing, priors);
    const looks = sorts.flatMap((of) => {
      const at = foundBy(candidate, outing, of, priors);
      return at(0) ? [{ of, at: at as (draw: number) => Outing }] : [];
    });
    const { minutes } = tests[candidate.kind];
    // Of what nothing at all is known nothing can be drawn.
    if (looks.length === 0 && asked > 0) yield { ...nothingFound(candidate.kind, minutes), asked };
    for (const { of, at } of looks) {
      const took = minutes * (candidate.each ? of.length : 1);
      const made = looksAt(at, before, now, care, cars);
      yield {
        ...nothingFound(candidate.kind, took),
        ...(of.length > 0 ? { of: of.map((v) => v.name) } : {}),
        asked,
        ...(made.length > 0 ? worthOf(made, now, cars) : cars === null ? {} : { moreCars: 0 }),
      };
    }
  }
}

const nothingFound = (kind: TestKind, minutes: number): Worth => ({
  kind,
  minutes,
  asked: 0,
  changesWord: 0,
  bettersWord: 0,
  faster: 0,
});

interface Look {
  readonly inquiry: OpenInquiry;
  readonly answer: Answer;
}

/** Where neither end of what it may find changes anything, nothing between does: none. */
function looksAt(
  at: (draw: number) => Outing,
  before: OpenInquiry,
  now: Answer,
  care: Care,
  cars: number | null,
): Look[] {
  const look = (draw: number): Look => {
    const inquiry = inquire(at(draw), care, before);
    return { inquiry, answer: firstAnswer(inquiry) };
  };
  const same = ({ inquiry, answer }: Look): boolean =>
    answer.verdict === now.verdict &&
    Math.abs(meanSpeed(answer) - meanSpeed(now)) < SAME_SPEED &&
    (cars === null || leastCars(inquiry) === cars);
  const ends = [look(0), look(POSITIONS.length - 1)];
  if (ends.every(same)) return [];
  return [...ends, ...POSITIONS.slice(2).map((_, i) => look(i + 1))];
}

function worthOf(looks: readonly Look[], now: Answer, cars: number | null): Partial<Worth> {
  const share = (is: (answer: Answer) => boolean): number =>
    mean(looks.map(({ answer }) => (is(answer) ? 1 : 0)));
  return {
    changesWord: share((a) => a.verdict !== now.verdict),
    bettersWord: share((a) => rank[a.verdict] > rank[now.verdict]),
    faster: mean(looks.map(({ answer }) => meanSpeed(answer) - meanSpeed(now))),
    ...(cars === null
      ? {}
      : { moreCars: mean(looks.map(({ inquiry }) => (leastCars(inquiry) ?? 0) - cars)) }),
  };
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
