/** Wheel loads and leans: the engine's sums and the witness's balance of moments in space. */
import type { Quantity } from '../../../engine/base/quantity.ts';
import { askBalance } from '../../../engine/questions/balance/ask.ts';
import { bodyOf } from '../../../engine/questions/balance/body.ts';
import { leans } from '../../../engine/questions/balance/tipping.ts';
import { wheelLoads } from '../../../engine/questions/balance/wheels.ts';
import { gridOf } from '../../../engine/questions/speed/map.ts';
import { chance, drawn } from '../chance.ts';
import { groundOf } from '../ground.ts';
import { feltBy, fieldIn, leanThat, leastShare, loadsIn, type Standing, standing } from '../statics.ts';
import { carsOf, G } from '../train.ts';
import type { StopWord, Word } from './engine.ts';

export interface BalanceCompared {
  readonly checks: number;
  /** Greatest difference ÷ what it is a share of: wheel load of the vehicle's weight, lean of itself. */
  readonly wheel: number;
  readonly lean: number;
  /** Share of wheel load along the line at permitted speed, dealt anew, below what is told. */
  readonly along: Odds;
}

export function compareBalance(seed: number, word: Word): BalanceCompared {
  const { outing, ready } = word;
  const { loaded, line } = ready.context;
  const uniform = chance(seed + 404);
  const between = (low: number, high: number): number => low + (high - low) * uniform();
  let [checks, wheel, lean] = [0, 0, 0];
  for (const [i, car] of carsOf(outing).entries()) {
    const own = standing(car, outing);
    const body = bodyOf(loaded.vehicles[i], line.contactWidth, outing.assumed.riderCentre, 0);
    if (!own || !body) continue;
    const field = { left: between(-2, 2), onto: between(8, 11), rear: between(-2, 2) };
    const theirs = wheelLoads(body, { side: field.left, normal: field.onto, rear: field.rear });
    loadsIn(own, field).forEach((mine, g) => {
      const of = theirs.filter((a) => a.group === g);
      const [left, right] = (['left', 'right'] as const).map((s) => of.reduce((sum, a) => sum + a[s], 0));
      wheel = Math.max(
        wheel,
        Math.abs(mine.left - left) / (body.mass * G),
        Math.abs(mine.right - right) / (body.mass * G),
      );
      checks += 2;
    });
    const masses = loaded.vehicles[i].riders.map((r) => r.rider.mass.value);
    if (masses.length === 0) continue;
    const cant = between(-0.01, 0.01);
    const under = { curvature: between(-0.04, 0.04), cant: Math.asin(cant / line.contactWidth) };
    const speed = between(0, 2);
    for (const whole of [false, true]) {
      const told = leans(body, masses, under, speed, whole).all ?? 0;
      const felt = fieldIn(speed, under.curvature, cant, line.contactWidth);
      if (told <= 0.01) continue;
      lean = Math.max(lean, Math.abs(leanThat(whole ? 'a side' : 'a wheel', own, felt) / told - 1));
      checks++;
    }
  }
  const along = alongTheLine(word, between, uniform);
  return { checks: checks + along.checks, wheel, lean, along: along.along };
}

/** Draws of the witness's own that bear less than is told, of so many: of one figure, or of many together. */
export interface Odds {
  readonly draws: number;
  readonly worse: number;
}

const DEALT = 150;

/** A vehicle as it may be: every quantity dealt by itself. */
const dealtBy = (uniform: () => number) => (q: Quantity) => drawn(q, uniform(), 'halves');

/** Standing level, all people leaning as far as is told to tip the vehicle: how many dealt ones go over before. */
export function leanToldTooGreat(seed: number, { outing, ready }: StopWord): Odds {
  const { vehicles } = askBalance(ready.context, gridOf(outing.line.length)).data;
  const cars = carsOf(outing);
  const uniform = chance(seed + 808);
  let [draws, worse] = [0, 0];
  for (const { index, over } of vehicles) {
    if (over.all === undefined || over.all <= 0) continue;
    for (let n = 0; n < DEALT; n++) {
      const own = standing(cars[index], outing, dealtBy(uniform));
      if (!own) break;
      const sides = loadsIn(own, { left: 0, onto: G, rear: 0 }, over.all).reduce(
        (sum, g) => [sum[0] + g.left, sum[1] + g.right],
        [0, 0],
      );
      const other = loadsIn(own, { left: 0, onto: G, rear: 0 }, -over.all).reduce(
        (sum, g) => [sum[0] + g.left, sum[1] + g.right],
        [0, 0],
      );
      draws++;
      if (Math.min(...sides, ...other) < 0) worse++;
    }
  }
  return { draws, worse };
}

/** At permitted speed: how many dealt vehicles keep less of their lightest wheel than is told of the train's. */
function alongTheLine(
  { outing, answer }: Word,
  between: (low: number, high: number) => number,
  uniform: () => number,
): { checks: number; along: Odds } {
  const { at, share, by } = answer.wheels;
  const ground = groundOf(outing);
  const cars = carsOf(outing);
  const map = answer.speeds;
  let [checks, draws, worse] = [0, 0, 0];
  for (let n = 0; map && n < 10; n++) {
    const j = Math.floor(between(0, at.length));
    const own = by[j] < 0 ? undefined : standing(cars[by[j]], outing);
    const { curvature, cant } = own ? feltBy(ground, own, at[j]) : { curvature: 0, cant: 0 };
    // The engine keeps its speeds there to itself: where the map's own limit is theirs, they are one.
    const reason = map.reasons[map.reason[j]].kind;
    if (!own || !['balance', 'host-line', 'host-place', 'vehicle'].includes(reason)) continue;
    if (outing.plannedSpeed !== undefined || (curvature === 0 && cant === 0)) continue;
    checks++;
    const felt = fieldIn(map.limit[j], curvature, cant, outing.line.contactWidth);
    for (let k = 0; k < DEALT; k++) {
      const dealt = standing(cars[by[j]], outing, dealtBy(uniform)) as Standing;
      draws++;
      if (leastShare(dealt, felt) < share[j] - 0.003) worse++;
    }
  }
  return { checks, along: { draws, worse } };
}
