/** Each curve of the line with the speeds that balance sets there. */

import type { OutingContext } from '../../outing/open.ts';
import type { CurveElement } from '../../things/line/types.ts';
import { carefulLeans, carefulSpeedWhileLeaning } from './lean.ts';
import { USUAL_LEAN } from './limits.ts';
import type { BalanceLook } from './look.ts';
import { speedLeaving } from './tipping.ts';

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
  context: OutingContext,
  look: BalanceLook,
  from: number,
  to: number,
  sign: number,
): Omit<CurveSpeeds, 'from' | 'to'> | undefined {
  const { line } = context;
  let least = Infinity;
  let found: { v: number; j: number } | undefined;
  const under = { curvature: 0, cant: 0 };
  look.rolling.forEach((rolling, v) => {
    const { curvature, cant } = look.grounds[v];
    eachInside(look.grid, line, from + rolling.offsets[0], to + rolling.offsets[0], (j) => {
      if (curvature[j] * sign <= 0) return;
      under.curvature = curvature[j];
      under.cant = cant[j];
      const lift = speedLeaving(rolling.lift, under, 0, rolling.wind);
      if (lift >= least) return;
      least = lift;
      found = { v, j };
    });
  });
  if (!found) return undefined;
  const { v, j } = found;
  const { over, wind, index, drawn } = look.rolling[v];
  const there = { curvature: look.grounds[v].curvature[j], cant: look.grounds[v].cant[j] };
  const run = look.permitted[j];
  const { one } = carefulLeans(drawn, there, run);
  return {
    ...there,
    index,
    at: look.grid[j],
    permitted: look.ceiling.speed[j],
    lift: least,
    over: speedLeaving(over, there, 0, wind),
    liftLeaning: carefulSpeedWhileLeaning(drawn, USUAL_LEAN.value, there),
    ...(one === undefined ? {} : { lean: one }),
    run,
  };
}

/** Indices of head places between two chainages; on a loop they go round. */
function eachInside(
  grid: Float64Array,
  line: { readonly loop: boolean; readonly length: number },
  from: number,
  to: number,
  visit: (j: number) => void,
): void {
  const step = grid[1] - grid[0];
  const last = grid.length - 1;
  const end = to < from ? to + line.length : to;
  for (let k = Math.ceil((from - grid[0]) / step); k <= Math.floor((end - grid[0]) / step); k++) {
    if (line.loop) visit(((k % last) + last) % last);
    else if (k >= 0 && k <= last) visit(k);
  }
}
