/**
 * What to measure next: each test that would narrow something of this outing, by how much it would change the word and the
 * speeds, per minute of effort. The truth is drawn from what is assumed; the outing is asked again as if the test had found it.
 */
import { firstAnswer } from '../../engine/answer/answer.ts';
import { leastCars } from '../../engine/answer/counts.ts';
import { inquire, type OpenInquiry } from '../../engine/answer/inquiry.ts';
import type { Answer } from '../../engine/answer/types.ts';
import type { Quantity } from '../../engine/base/quantity.ts';
import { remembered } from '../../engine/base/remember.ts';
import { pick } from '../../engine/base/spread.ts';
import { type TestKind, tests } from '../../engine/calibrate/tests/index.ts';
import type { Outing } from '../../engine/outing/types.ts';
import type { Care } from '../../engine/questions/question.ts';
import type { Vehicle } from '../../engine/things/vehicle/types.ts';
import type { CarefulStop } from '../../words/measured/stop-parts.ts';
import type { Worth } from '../../words/measured/worth.ts';
import { type Candidate, candidates, type Priors, priorsOf } from './candidates.ts';
import { type At, carefulStop } from './stop-parts.ts';
import { testAsked } from './which.ts';

export interface Looking extends Care {
  /** Numbers of cars too: some seconds more. */
  readonly counts?: boolean;
  /** Where the careful stop is longest and how fast it runs there, where an answer has told it: the sooner it is said. */
  readonly longest?: At;
}

/** Positions in a spread, each as likely as the others: the middles of five equal shares of a triangle's draws. */
const POSITIONS = [-0.553, -0.225, 0, 0.225, 0.553];

const rank: Readonly<Record<Answer['verdict'], number>> = { hold: 0, unknown: 1, limits: 2, go: 3 };

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

const carsNow = (inquiry: OpenInquiry): number | null =>
  leastCars(inquiry, inquiry.context.outing.conditions.railState);

/** So much of a mean speed is nothing that anybody drives by, m/s. */
const SAME_SPEED = 0.005;

/** A look at what might be needs no more: this many draws, this grid (m), so many runs behind each peak in the couplings. */
const ROUGHLY = { samples: 300, step: 2, couplerRuns: 8 } as const;

/** What is told at once; then each test as it is reckoned, and at last again with the numbers of cars. */
export type Told =
  | { readonly stop: CarefulStop }
  /** `at`: which of the list; one that was told before takes its place. */
  | { readonly at: number; readonly worth: Worth };

/** One after the other as they are reckoned, for a screen that shows the first while the rest is to come. */
export function* worthOfTests(
  outing: Outing,
  { counts = true, longest, ...own }: Looking = {},
): Generator<Told> {
  const care = { ...ROUGHLY, ...own };
  const before = inquire(outing, care);
  const stop = carefulStop(before, longest);
  if (stop) yield { stop };
  const now = firstAnswer(before);
  const tried = triedOn(outing, before, now, care);
  for (const [at, test] of tried.entries()) yield { at, worth: worthOf(test, now) };
  const cars = counts ? carsNow(before) : null;
  if (cars === null) return;
  for (const [at, test] of tried.entries())
    yield { at, worth: { ...worthOf(test, now), ...carsAfter(test, cars) } };
}

/** A test of some vehicles, and the outing as it might find it. */
interface Tried {
  readonly base: Worth;
  /** At each of the positions; each looked at once. Absent: of what nothing is known nothing can be drawn. */
  readonly look?: (draw: number) => Look;
}

function triedOn(outing: Outing, before: OpenInquiry, now: Answer, care: Care): readonly Tried[] {
  const wanting = now.findings
    .filter((f) => f.severity === 'unknown')
    .flatMap((f) => testAsked(f.measure) ?? []);
  const askedFor = (kind: TestKind): number => wanting.filter((k) => k === kind).length;
  const priors = priorsOf(outing);
  const strange = [...new Set(wanting)].filter((k) => candidates.every((c) => c.kind !== k));
  return [
    ...strange.map((kind) => ({ base: nothingFound(kind, tests[kind].minutes, askedFor(kind)) })),
    ...candidates.flatMap((candidate): Tried[] => {
      const { kind, each } = candidate;
      const { minutes } = tests[kind];
      const asked = askedFor(kind);
      const looks = sortsOf(candidate, outing, priors).flatMap((of): Tried[] => {
        const at = foundBy(candidate, outing, of, priors);
        if (!at(0)) return [];
        const look = remembered((draw: number): Look => {
          const inquiry = inquire(at(draw) as Outing, care, before);
          return { inquiry, answer: firstAnswer(inquiry) };
        });
        const took = minutes * (each ? of.length : 1);
        return [
          {
            base: {
              ...nothingFound(kind, took, asked),
              ...(of.length > 0 ? { of: of.map((v) => v.name) } : {}),
            },
            look,
          },
        ];
      });
      // Of what nothing at all is known nothing can be drawn.
      return looks.length === 0 && asked > 0 ? [{ base: nothingFound(kind, minutes, asked) }] : looks;
    }),
  ];
}

const nothingFound = (kind: TestKind, minutes: number, asked: number): Worth => ({
  kind,
  minutes,
  asked,
  changesWord: 0,
  bettersWord: 0,
  faster: 0,
});

interface Look {
  readonly inquiry: OpenInquiry;
  readonly answer: Answer;
}

const ENDS = [0, POSITIONS.length - 1] as const;

/** Where neither end of what it may find changes anything, nothing between does: none. */
function looksAt(look: (draw: number) => Look, same: (look: Look) => boolean): readonly Look[] {
  return ENDS.map(look).every(same) ? [] : POSITIONS.map((_, draw) => look(draw));
}

function worthOf({ base, look }: Tried, now: Answer): Worth {
  const same = ({ answer }: Look): boolean =>
    answer.verdict === now.verdict && Math.abs(meanSpeed(answer) - meanSpeed(now)) < SAME_SPEED;
  const looks = look ? looksAt(look, same) : [];
  if (looks.length === 0) return base;
  const share = (is: (answer: Answer) => boolean): number =>
    mean(looks.map(({ answer }) => (is(answer) ? 1 : 0)));
  return {
    ...base,
    changesWord: share((a) => a.verdict !== now.verdict),
    bettersWord: share((a) => rank[a.verdict] > rank[now.verdict]),
    faster: mean(looks.map(({ answer }) => meanSpeed(answer) - meanSpeed(now))),
  };
}

/** @param now how many may be taken as it stands */
function carsAfter({ look }: Tried, now: number): Pick<Worth, 'cars'> {
  if (!look) return {};
  const after = remembered((draw: number): number => carsNow(look(draw).inquiry) ?? 0);
  const found = ENDS.map(after).every((n) => n === now) ? [now] : POSITIONS.map((_, draw) => after(draw));
  const sorted = [...found].sort((a, b) => a - b);
  const likely = sorted[sorted.length >> 1];
  return { cars: { now, likely, least: sorted[0], most: sorted[sorted.length - 1], mean: mean(found) } };
}

const mean = (of: readonly number[]): number =>
  of.length === 0 ? 0 : of.reduce((sum, v) => sum + v, 0) / of.length;

/** What the answer cannot do without, what changes the word, then the number of cars, then the speeds, each per minute. */
export const worthMore = (a: Worth, b: Worth): number =>
  Math.sign(b.asked) - Math.sign(a.asked) ||
  b.changesWord / b.minutes - a.changesWord / a.minutes ||
  otherCars(b) / b.minutes - otherCars(a) / a.minutes ||
  Math.abs(b.faster) / b.minutes - Math.abs(a.faster) / a.minutes;

const otherCars = ({ cars }: Worth): number => (cars ? Math.abs(cars.mean - cars.now) : 0);

export interface ToMeasure {
  readonly stop?: CarefulStop;
  /** Best first. */
  readonly worths: readonly Worth[];
}

export function whatToMeasure(outing: Outing, looking: Looking = {}): ToMeasure {
  let stop: CarefulStop | undefined;
  const worths: Worth[] = [];
  for (const told of worthOfTests(outing, looking)) {
    if ('stop' in told) stop = told.stop;
    else worths[told.at] = told.worth;
  }
  return { ...(stop ? { stop } : {}), worths: worths.sort(worthMore) };
}
