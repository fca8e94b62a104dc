/**
 * The sum that every club driver does on the back of a ticket: how many unbraked cars may hang on a braked
 * engine, down a fall, if it must stop in 100 ft from 7 mph. In the trade's own units, by energy, no step and
 * no table:
 *
 *   d = v·t + a₁·t²/2 + v₁²/(2·a₂)     v₁ = v + a₁·t     a₁ = g·(i − r)     a₂ = g·(B/W + r − i)
 *
 * v speed (ft/s), t reaction (s), i fall, r resistance ÷ weight, B brake (lbf), W weight of the train (lb).
 * Stated for it: 1 s until the driver acts, with the power still on, so that the fall speeds the train up;
 * the brake is then full on at once; the inertia of wheels is left out; straight track; no metre of margin.
 * Exact law with made-up inputs.
 */

/** ft/s² (standard gravity). */
const GRAVITY = 9.80665 / 0.3048;
const FEET_PER_SECOND = 5280 / 3600;

export const given = {
  engine: 600,
  driver: 170,
  car: 490,
  resistance: 0.003,
  speed: 7,
  room: 100,
  reaction: 1,
  /** Of the weight of engine and driver. */
  brake: { dry: 0.15, wet: 0.08 },
  falls: [1, 2, 3, 4],
} as const;

export type Rail = keyof typeof given.brake;

/** ft to a stand with n cars down a fall of so many per cent; Infinity where the brake does not hold it. */
export function stopInFeet(rail: Rail, percent: number, cars: number): number {
  const { engine, driver, car, resistance, speed, reaction, brake } = given;
  const weight = engine + driver + cars * car;
  const fall = percent / 100;
  const gain = GRAVITY * Math.max(0, fall - resistance);
  const slows = GRAVITY * ((brake[rail] * (engine + driver)) / weight + resistance - fall);
  if (slows <= 0) return Number.POSITIVE_INFINITY;
  const v = speed * FEET_PER_SECOND;
  const then = v + gain * reaction;
  return v * reaction + (gain * reaction ** 2) / 2 + then ** 2 / (2 * slows);
}

/** Most cars that stop in the room; −1: not even the engine. */
export function carsThatStop(rail: Rail, percent: number): number {
  let cars = -1;
  while (stopInFeet(rail, percent, cars + 1) <= given.room) cars++;
  return cars;
}

export interface TradeRow {
  readonly rail: Rail;
  readonly percent: number;
  readonly cars: number;
  /** ft with so many, and with one more. */
  readonly stop: number;
  readonly more: number;
  /** Why: in words, with the figures. */
  readonly why: string;
}

export function tradeRow(rail: Rail, percent: number): TradeRow {
  const { engine, driver, car, resistance, brake } = given;
  const cars = carsThatStop(rail, percent);
  const share = (n: number): number => (100 * brake[rail] * (engine + driver)) / (engine + driver + n * car);
  const left = (n: number): string => (share(n) + 100 * resistance - percent).toFixed(2);
  const [stop, more] = [stopInFeet(rail, percent, cars), stopInFeet(rail, percent, cars + 1)];
  const feet = (d: number): string => (d === Number.POSITIVE_INFINITY ? 'never stops' : `${d.toFixed(0)} ft`);
  const brakes = `${(brake[rail] * (engine + driver)).toFixed(1)} lbf`;
  const why =
    cars < 0
      ? `${brakes} is ${share(0).toFixed(1)} % of the bare engine; the fall leaves ${left(0)} %: ${feet(more)}`
      : `${brakes} is ${share(cars).toFixed(2)} % of engine and ${cars}; less the fall, with resistance, ` +
        `${left(cars)} % is left to stop with: ${feet(stop)}; one more leaves ${left(cars + 1)} %: ${feet(more)}`;
  return { rail, percent, cars, stop, more, why };
}

export const tradeTable = (): TradeRow[] =>
  (['dry', 'wet'] as const).flatMap((rail) => given.falls.map((percent) => tradeRow(rail, percent)));

/** For a page: a row each. */
export const tradePage = (): string =>
  [
    '| rail | fall | cars that stop | why |',
    '|---|---|---|---|',
    ...tradeTable().map(
      ({ rail, percent, cars, why }) => `| ${rail} | ${percent} % | ${cars < 0 ? 'none' : cars} | ${why} |`,
    ),
  ].join('\n');
