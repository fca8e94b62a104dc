/**
 * The stop as a competent straightforward program would write it: a loop over vehicles with binary searches
 * for height and curvature, a loop over braked groups. What the general integrators are given.
 */

import { GRAVITY } from '../engine/base/constants.ts';
import type { OutingContext } from '../engine/outing/open.ts';
import { type BrakedGroup, frictionAt } from '../engine/things/brake/force.ts';
import { heightAt, onLine } from '../engine/things/line/geometry.ts';
import type { Line } from '../engine/things/line/types.ts';

/** |curvature| integrated to each end of the curve elements, for exact means by two look-ups. */
function turning(line: Line): (s: number) => number {
  const ends = line.curves.flatMap((c) => [c.from, c.to]);
  const sums = [0];
  line.curves.forEach((c, i) => {
    const before = sums[sums.length - 1];
    if (i > 0) sums.push(before);
    sums.push(sums[sums.length - 1] + (Math.abs(c.startCurvature + c.endCurvature) / 2) * (c.to - c.from));
  });
  const lap = sums[sums.length - 1];
  const within = (s: number): number => {
    let [low, high] = [0, ends.length - 1];
    if (ends.length === 0 || s <= ends[0]) return 0;
    if (s >= ends[high]) return lap;
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if (ends[middle] <= s) low = middle;
      else high = middle;
    }
    if (low % 2 === 1) return sums[low];
    const c = line.curves[low / 2];
    const t = (s - c.from) / (c.to - c.from);
    const here = c.startCurvature + t * (c.endCurvature - c.startCurvature);
    return sums[low] + (Math.abs(c.startCurvature + here) / 2) * (s - c.from);
  };
  return (s) => (line.loop ? Math.floor(s / line.length) * lap : 0) + within(onLine(line, s));
}

export function plainForces(
  { line, loaded, outing }: OutingContext,
  groups: readonly BrakedGroup[],
): (t: number, s: number, v: number) => number {
  const turned = turning(line);
  const { assumed, conditions } = outing;
  const mu = assumed.adhesion.dry.value;
  const c = assumed.curveConstant.low;
  const reaction = conditions.reaction.value;
  const { skid, easing } = assumed;
  const slips = (r: number): number => Math.min(1, Math.max(0, (r - 0.75) / 0.5));
  const builtUp = Math.max(...groups.map((g) => g.deadTime.value + g.buildUp.value));
  const eased = reaction + builtUp + easing.notice.value;
  const worst = new Map<string | undefined, number>();
  return (t, s, v) => {
    let force = 0;
    for (const { vehicle, mass, behind } of loaded.vehicles) {
      const front = s - behind;
      const rear = front - vehicle.length;
      const rise = heightAt(line, front) - heightAt(line, rear) + c * (turned(front) - turned(rear));
      const r = vehicle.resistance;
      force +=
        mass * GRAVITY * (rise / vehicle.length + r.rolling.value + r.perSpeed.value * v) +
        r.perSpeedSquared * v * v;
    }
    if (t < reaction) return force < 0 ? -force / loaded.effectiveMass : 0;
    const fullOf = (g: BrakedGroup): number =>
      g.block.value * (g.friction ? frictionAt(g.friction, v, 0) : 1);
    worst.clear();
    for (const g of groups) {
      worst.set(g.handle, Math.max(worst.get(g.handle) ?? 0, fullOf(g) / (mu * g.load)));
    }
    const skids = skid.floor.value + (1 - skid.floor.value) * Math.exp(-v / skid.fallSpeed.value);
    for (const g of groups) {
      const limit = mu * g.load;
      const r = fullOf(g) / limit;
      const most = t < eased ? r : (worst.get(g.handle) ?? r);
      const p = slips(most);
      const then = t < eased ? skids : (easing.utilisation.value * r) / most;
      const force1 = limit * ((1 - p) * Math.min(r, 1) + p * then);
      force += force1 * Math.min(1, Math.max(0, (t - reaction - g.deadTime.value) / g.buildUp.value));
    }
    return -force / loaded.effectiveMass;
  };
}
