/** Each curve of the line with the speeds that balance sets there. */
import type { CurveElement } from '../line/types.ts';
import type { OutingContext } from '../outing/context.ts';
import { USUAL_LEAN } from './limits.ts';
import type { BalanceLook } from './look.ts';
import { leans, speedLeaving, speedWhileLeaning } from './tipping.ts';

export interface CurveSpeeds {
  /** Chainage of the track, m; on a loop `from` may be greater than `to`. */
  readonly from: number;
  readonly to: number;
  /** Sharpest curvature under a vehicle, 1/m, left positive, and the cant there, rad, right rail high. */
  readonly curvature: number;
  readonly cant: number;
  /** Vehicle that sets the speeds, and the place of the train's head. */
  readonly index: number;
  readonly at: number;
  /** Permitted by balance; a wheel lifts; the vehicle goes over; a wheel lifts with one rider leaning, m/s. */
  readonly permitted: number;
  readonly lift: number;
  readonly over: number;
  readonly liftLeaning: number;
  /** Lean of one rider that lifts a wheel at the speed run there, m. */
  readonly lean?: number;
  readonly run: number;
}

export function curveSpeeds(context: OutingContext, look: BalanceLook): CurveSpeeds[] {
  return mergedCurves(context.line.curves).flatMap(({ from, to, sign }) => {
    const worst = worstIn(context, look, from, to, sign);
    return worst ? [{ from, to, ...worst }] : [];
  });
}

/** Elements that touch and bend the same way are one curve. */
function mergedCurves(elements: readonly CurveElement[]): { from: number; to: number; sign: number }[] {
  const out: { from: number; to: number; sign: number }[] = [];
  for (const e of elements) {
    const sign = Math.sign(e.startCurvature + e.endCurvature);
    if (sign === 0) continue;
    const last = out[out.length - 1];
    if (last && last.sign === sign && Math.abs(last.to - e.from) < 1e-6) last.to = e.to;
    else out.push({ from: e.from, to: e.to, sign });
  }
  return out;
}

/** The place and vehicle with the lowest speed to lift while the vehicle is inside the curve. */
function worstIn(
  { loaded, line }: OutingContext,
  look: BalanceLook,
  from: number,
  to: number,
  sign: number,
): Omit<CurveSpeeds, 'from' | 'to'> | undefined {
  let least = Infinity;
  let found: { v: number; j: number } | undefined;
  look.rolling.forEach((rolling, v) => {
    const { curvature, cant } = look.grounds[v];
    for (let j = 0; j < look.grid.length; j++) {
      if (curvature[j] * sign <= 0 || !inside(look.grid[j] - rolling.offsets[0], from, to, line)) continue;
      const lift = speedLeaving(rolling.lift, { curvature: curvature[j], cant: cant[j] }, 0, rolling.wind);
      if (lift >= least) continue;
      least = lift;
      found = { v, j };
    }
  });
  if (!found) return undefined;
  const { v, j } = found;
  const { body, over, wind, index } = look.rolling[v];
  const under = { curvature: look.grounds[v].curvature[j], cant: look.grounds[v].cant[j] };
  const masses = loaded.vehicles[index].riders.map((r) => r.rider.mass.value);
  const run = look.permitted[j];
  const heaviest = Math.max(0, ...masses);
  const { one } = leans(body, masses, under, run, false, wind);
  return {
    ...under,
    index,
    at: look.grid[j],
    permitted: look.ceiling.speed[j],
    lift: least,
    over: speedLeaving(over, under, 0, wind),
    liftLeaning: speedWhileLeaning(body, heaviest, USUAL_LEAN.value, under, wind),
    ...(one === undefined ? {} : { lean: one }),
    run,
  };
}

function inside(s: number, from: number, to: number, line: { loop: boolean; length: number }): boolean {
  const at = line.loop ? ((s % line.length) + line.length) % line.length : s;
  return from <= to ? at >= from && at <= to : at >= from || at <= to;
}
