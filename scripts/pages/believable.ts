/** The page of what the answers are for the demo trains on every rail, against what one would expect of them. */
import { openOutingFile } from '../../cli/open.ts';
import { countCars } from '../../engine/answer/counts.ts';
import { inquire } from '../../engine/answer/inquiry.ts';
import type { CarCount } from '../../engine/answer/types.ts';
import { exact, type Quantity } from '../../engine/base/quantity.ts';
import { percentile } from '../../engine/base/spread.ts';
import { sampleStops } from '../../engine/motion/sample.ts';
import { stopDistance } from '../../engine/motion/stop.ts';
import type { Outing } from '../../engine/outing/types.ts';
import { type RailState, toldRails } from '../../engine/things/rail.ts';
import { carsThatStop, given, tradePage } from '../../tests/witness/trade-table.ts';

type ByRail<T> = Readonly<Record<RailState, T>>;

interface Demo {
  readonly example: string;
  readonly train: string;
  /** ft and cars, as told before drivers eased and caution went by odds. */
  readonly stopBefore: Readonly<Partial<ByRail<number>>>;
  readonly startedBefore: Readonly<Partial<ByRail<number>>>;
  /** Reckoned by hand with a driver who eases, dry blocks, grades as surveyed. */
  readonly stopExpected: Readonly<Partial<ByRail<number>>>;
  readonly startedExpected: Readonly<Partial<ByRail<number>>>;
}

const demos: readonly Demo[] = [
  {
    example: 'heavy-air',
    train: 'A heavy engine with steam brake, straight air on all five cars, 6 mph',
    stopBefore: { dry: 82, damp: 335, wet: 172, greasy: 541, sanded: 77 },
    startedBefore: { dry: 3, damp: 0, wet: 2 },
    stopExpected: { damp: 110, wet: 82 },
    startedExpected: { dry: 9, damp: 4, wet: 7 },
  },
  {
    example: 'battery-vacuum',
    train: 'A battery engine, vacuum on all three cars, 5 mph',
    stopBefore: { dry: 65, damp: 223, wet: 65, greasy: 466, sanded: 65 },
    startedBefore: { dry: 3, damp: 0, wet: 2 },
    stopExpected: { damp: 60, wet: 60 },
    startedExpected: { dry: 10, damp: 5, wet: 8 },
  },
  {
    example: 'steam-light',
    train: 'A light engine, the only one braked, with two cars, 6 mph',
    stopBefore: { dry: 92, damp: 1004, wet: 656, greasy: 1360, sanded: 92 },
    startedBefore: { dry: 2, damp: 0, wet: 1 },
    stopExpected: { damp: 131, wet: 71 },
    startedExpected: { dry: 9, damp: 4, wet: 7 },
  },
];

const FOOT = 0.3048;
/** N */
const POUND = 4.4482216;

const exampleOuting = (name: string): Promise<Outing> =>
  openOutingFile(new URL(`../../examples/${name}.json`, import.meta.url).pathname);

/** Longest cautious stop from the planned speed, ft, rounded up. */
function longestStop(outing: Outing, state: RailState): number {
  const { ready, context } = inquire(outing);
  const { cautious } = ready.models(state);
  let most = 0;
  for (let at = 0; at <= context.line.length; at++) {
    most = Math.max(most, stopDistance(cautious, at, outing.plannedSpeed as number));
  }
  return Math.ceil(most / FOOT);
}

const cell = (n: number | undefined): string => (n === undefined ? '' : `${n}`);
const startedWords = (count: CarCount): string =>
  count.none.includes('pulled') ? 'none' : `${count.pulled}`;

async function table({ example, train, ...told }: Demo): Promise<string> {
  const outing = await exampleOuting(example);
  const cars = countCars(inquire(outing));
  const rows = toldRails(undefined).map((state) => {
    const count = cars.find((c) => c.railState === state) as CarCount;
    return [
      state,
      told.stopBefore[state],
      longestStop(outing, state),
      cell(told.stopExpected[state]),
      cell(told.startedBefore[state]),
      startedWords(count),
      cell(told.startedExpected[state]),
    ].join(' | ');
  });
  return `## ${train}

\`examples/${example}.json\`

| rail | stop before, ft | stop now, ft | expected | started before | started now | expected |
|---|---|---|---|---|---|---|
${rows.map((row) => `| ${row} |`).join('\n')}
`;
}

const head = `# Would a driver of thirty years believe it?

Made by \`npm run believable\`. The demo trains on every rail: the longest cautious stop from the planned speed anywhere on the
line (one in a hundred may be longer), and how many cars can be started anywhere (one start in twenty may fail). "Before": all
bounds at once, and wheels that slide for the whole stop. "Expected": reckoned by hand for a driver who eases as the wheels slide,
with blocks as good as dry and grades as surveyed; no source.

What one would expect, written down first:

- **Dry**: an engine starts on its ruling grade what it starts every Sunday. All cars braked: about twice the likely stop.
- **Damp** is the worst rail short of grease: dew and dust. Half the cars, and a stop half as long again. Not none, and
  not four times the stop: a driver feels the wheels go and eases.
- **Wet**, washed by rain: better than damp for the wheels, but the blocks are wet as well. With blocks of unknown stuff the worse
  kind is taken; naming cast iron shortens the stop.
- **Greasy** (oil, crushed leaves): nothing is started on a grade, and stops are of another order. A careful driver stays in.
- **Sanded**: a few cars more on the grade. The stop gains little: sand lies under the engine's driving wheels only.

Longer than expected by hand, and why: wet blocks, a force measured at a stand that falls with speed, a survey that is off by some tenths
of a per cent, and a bad spot are all among the draws. The longest of them is argued by itself at the end of its table.

`;

const DRAWS = 10_000;
const FRESH = 99;

/** The light train on damp rail: what makes the longest careful stop, by draws and by hand. */
async function longestArgued(): Promise<string> {
  const outing = await exampleOuting('steam-light');
  const { ready, context } = inquire(outing);
  const inputs = ready.inputs('damp');
  const { cautious } = ready.models('damp');
  const speed = outing.plannedSpeed as number;
  let at = 0;
  for (let s = 0; s <= context.line.length; s++)
    if (stopDistance(cautious, s, speed) > stopDistance(cautious, at, speed)) at = s;
  const stops = (adhesion: Quantity): string => {
    const drawn = sampleStops({ ...inputs, adhesion, bare: adhesion }, at, speed, DRAWS, FRESH).sort();
    return [0.5, 0.9, 0.99].map((q) => Math.round(percentile(drawn, q) / FOOT)).join(' | ');
  };
  const { low, value, high } = inputs.adhesion;
  const weight = inputs.weight / POUND;
  const load = inputs.load.reduce((sum, n) => sum + n, 0) / POUND;
  const fall = -inputs.potential.leastSlope / inputs.weight;
  const [adhesion, used, rolling] = [0.1, 0.52, 0.0073];
  const brake = (adhesion * used * load) / weight;
  const left = brake + rolling - fall;
  const per = (x: number): string => `${(100 * x).toFixed(2)} %`;
  return `Would one believe the longest of these, on damp rail? Of ${DRAWS} stops from the place where it is longest:

| adhesion of damp rail | half pass, ft | one in ten, ft | one in a hundred, ft |
|---|---|---|---|
| ${low} to ${high}, likely ${value}, as assumed | ${stops(inputs.adhesion)} |
| ${value}, as if it had been measured | ${stops(exact(value))} |

One in ten is what was expected by hand, and what a driver remembers. The hundredth is a rail of ${adhesion}, near the least that damp rail has: the
only brake is on ${Math.round(load)} lb of driving wheels out of ${Math.round(weight)}, and one who eases keeps about ${used} of what they hold, which is
${adhesion} · ${used} · ${Math.round(load)} ÷ ${Math.round(weight)} = ${per(brake)} of the train; with ${per(rolling)} of rolling resistance against a fall of ${per(fall)} it leaves ${per(left)} to stop
with, and 6 mph takes v²/(2·g·${left.toFixed(4)}) = ${Math.round((speed * speed) / (2 * 9.80665 * left) / FOOT)} ft on an endless fall; here the level ends it sooner. With a rail known to be as it likely is no draw comes near. So the
figure is what not knowing costs where one engine brakes all on 2.6 %: measure the rail, or give a car a brake.
`;
}

const ticket = (): string => `## The sum on the back of a ticket

Engine of ${given.engine} lb with a driver of ${given.driver} lb, cars of ${given.car} lb without brakes, resistance 0.3 %, brake 0.15 of the engine's weight dry and 0.08 wet:
how many cars stop in ${given.room} ft from ${given.speed} mph, acting after ${given.reaction} s? The main job gives the same
counts from ordinary files without a spread (tests/witness/trade-table.test.ts); with what it assumes where files are silent it never
gives more. "About four cars" is right on one of these lines: dry on 2 % it is ${carsThatStop('dry', 2)}, on 4 % ${carsThatStop('dry', 4)}, and wet on 2 % ${carsThatStop('wet', 2)}.

${tradePage()}
`;

export async function believablePage(): Promise<string> {
  const tables: string[] = [];
  for (const demo of demos) tables.push(await table(demo));
  return `${head}${tables.join('\n')}\n${await longestArgued()}\n${ticket()}`;
}
