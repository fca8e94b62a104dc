/** Wheel loads and leans: the engine's sums and the witness's balance of moments in space. */
import { askBalance } from '../../../engine/questions/balance/ask.ts';
import { bodyOf } from '../../../engine/questions/balance/body.ts';
import { leans } from '../../../engine/questions/balance/tipping.ts';
import { wheelLoads } from '../../../engine/questions/balance/wheels.ts';
import { gridOf } from '../../../engine/questions/speed/map.ts';
import { chance } from '../chance.ts';
import { groundOf } from '../ground.ts';
import { feltBy, fieldIn, leanThat, leastShare, loadsIn, standing } from '../statics.ts';
import { carsOf, G } from '../train.ts';
import type { StopWord, Word } from './engine.ts';

export interface BalanceCompared {
  readonly checks: number;
  /** Greatest difference ÷ what it is a share of: wheel load of the vehicle's weight, lean of itself. */
  readonly wheel: number;
  readonly lean: number;
  /** Share of wheel load along the line at permitted speed: greatest difference. */
  readonly along: number;
}

export function compareBalance(seed: number, word: Word): BalanceCompared {
  const { outing, ready } = word;
  const { loaded, line } = ready.context;
  const uniform = chance(seed + 404);
  const between = (low: number, high: number): number => low + (high - low) * uniform();
  let [checks, wheel, lean] = [0, 0, 0];
  for (const [i, car] of carsOf(outing).entries()) {
    const own = standing(car, outing, 0);
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
  const along = alongTheLine(word, between);
  return { checks: checks + along.checks, wheel, lean, along: along.worst };
}

/**
 * Lean of all people at rest on level track, as told: greatest share by which it is more than the witness
 * bears with the same people, heavy and high as they may be. More is unsafe.
 */
export function leanToldTooGreat({ outing, ready }: StopWord): number {
  const { vehicles } = askBalance(ready.context, gridOf(outing.line.length)).data;
  const cars = carsOf(outing);
  const level = { left: 0, onto: G, rear: 0 };
  return Math.max(
    ...vehicles.flatMap(({ index, lift, over }) => {
      const own = standing(cars[index], outing, 1);
      if (!own || lift.all === undefined || over.all === undefined) return [0];
      return [lift.all / leanThat('a wheel', own, level) - 1, over.all / leanThat('a side', own, level) - 1];
    }),
  );
}

/** At permitted speed, everything on the side that tips. */
function alongTheLine(
  { outing, answer }: Word,
  between: (low: number, high: number) => number,
): { checks: number; worst: number } {
  const { at, share, by } = answer.wheels;
  const ground = groundOf(outing);
  const cars = carsOf(outing);
  const map = answer.speeds;
  let [checks, worst] = [0, 0];
  for (let n = 0; map && n < 40; n++) {
    const j = Math.floor(between(0, at.length));
    const own = by[j] < 0 ? undefined : standing(cars[by[j]], outing, 1);
    const { curvature, cant } = own ? feltBy(ground, own, at[j]) : { curvature: 0, cant: 0 };
    // The engine keeps its speeds there to itself: where the map's own limit is theirs, they are one.
    const reason = map.reasons[map.reason[j]].kind;
    if (!own || !['balance', 'host-line', 'host-place', 'vehicle'].includes(reason)) continue;
    if (outing.plannedSpeed !== undefined) continue;
    checks++;
    const mine = leastShare(own, fieldIn(map.limit[j], curvature, cant, outing.line.contactWidth));
    worst = Math.max(worst, Math.abs(mine - share[j]));
  }
  return { checks, worst };
}
