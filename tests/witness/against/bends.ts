/** The engine's couplers in curves beside the witness's. Runs by itself in a bundle. */
import { bendAt, type EndShape, placing } from '../../../engine/things/coupler/bend.ts';
import { layBends, worstBend } from '../../../engine/things/coupler/bends.ts';
import { layPlan } from '../../../engine/things/line/plan.ts';
import type { Line } from '../../../engine/things/line/types.ts';
import { bent, traceOf } from '../bend.ts';
import { chance } from '../chance.ts';

export interface Beside {
  /** Greatest difference of an angle at a place, and of the line's greatest, rad. */
  readonly apart: number;
  readonly worstApart: number;
  readonly worst: number;
}

/** Two vehicles of 1 … 4 m on a short line with curves of 9 … 40 m radius, with and without transitions. */
export function beside(seed: number): Beside {
  const next = chance(seed);
  const draw = (low: number, high: number): number => low + (high - low) * next();
  const end = (): EndShape => ({ guides: draw(0.5, 2.4), overhang: draw(0.15, 0.8), shank: draw(0.12, 0.4) });
  const pair = { ahead: end(), behind: end() };
  const line = { loop: next() < 0.4, length: 60, curves: curvesOf(draw) } as unknown as Line;
  const plan = layPlan(line, -12, 72);
  const trace = traceOf(line, -12, 72, 1 / 512);
  const [place, bend] = [placing(pair), { ahead: 0, behind: 0 }];
  let [apart, most] = [0, 0];
  const [from, to] = line.loop ? [0, 60] : [4, 56];
  for (let at = from; at < to; at += draw(0.1, 0.3)) {
    bendAt(plan, pair, at, place, bend);
    const [a, b] = bent(trace, pair.ahead, pair.behind, at);
    const [p, q] = [Math.asin(Math.abs(bend.ahead)), Math.asin(Math.abs(bend.behind))];
    apart = Math.max(apart, Math.abs(a - p), Math.abs(b - q));
    most = Math.max(most, a, b);
  }
  const bends = layBends(line, plan, pair);
  const worst = Math.max(
    worstBend(plan, pair, bends, 'ahead').angle,
    worstBend(plan, pair, bends, 'behind').angle,
  );
  return { apart, worstApart: most - worst, worst };
}

function curvesOf(draw: (low: number, high: number) => number): Line['curves'] {
  const curves: Line['curves'][number][] = [];
  const put = (from: number, to: number, a: number, b: number): void => {
    curves.push({ from, to, startCurvature: a, endCurvature: b, gaugeWidening: 0 });
  };
  let at = draw(0, 8);
  while (at < 44) {
    const k = (draw(-1, 1) < 0 ? -1 : 1) / draw(9, 40);
    const into = draw(-1, 1) < 0 ? 0 : draw(0.5, 4);
    if (into > 0) put(at, at + into, 0, k);
    const end = at + into + draw(1, 12);
    put(at + into, end, k, k);
    at = end + (draw(-1, 1) < 0 ? 0 : draw(0, 6));
  }
  return curves;
}
