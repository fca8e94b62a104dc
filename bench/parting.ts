/**
 * Partings: 20 gaps × every metre of about 2 km, heads and tails, against `ode-rk4` on a plain vehicle-by-vehicle
 * right-hand side (from a sample, scaled up), with where both come to rest against a fine run.
 */

import { likely } from '../engine/motion/scenario.ts';
import { openOuting } from '../engine/outing/open.ts';
import { basisOf } from '../engine/questions/part/basis.ts';
import { halvesAt, mapGap, startNodes } from '../engine/questions/part/map.ts';
import type { Basis } from '../engine/questions/part/part.ts';
import { emptyRoll, noTraffic, roll } from '../engine/questions/part/roll.ts';
import { plainRoll } from '../tests/support/plain-roll.ts';
import { drawer, randomLine, randomOuting } from '../tests/support/random-outings.ts';
import { type BenchRow, ms, quickest } from './row.ts';

const SPEED = 2.5;
const SAMPLE = 24;

/** @param broken no pipe behind the engine: tails without brakes */
function basisFor(broken: boolean): Basis {
  const outing = randomOuting(20, 20);
  const line = { ...randomLine(drawer(3), 0.02, true, 2000), loop: true };
  const train = { ...outing.train, pipeBrokenAfter: broken ? [0] : [] };
  const context = openOuting({ ...outing, line, train });
  return basisOf(context, Math.ceil(line.length / 0.5), { rolling: [], grounds: [] });
}

function mapAll(basis: Basis, heads: boolean): number {
  const nodes = startNodes(basis);
  const speeds = new Float64Array(basis.grid.lineCells + 1).fill(SPEED);
  const gaps = basis.context.loaded.vehicles.length - 1;
  for (let gap = 0; gap < gaps; gap++)
    mapGap(basis, halvesAt(basis, gap, likely, false), nodes, speeds, heads);
  return nodes.length * gaps;
}

function row(broken: boolean): BenchRow {
  const basis = basisFor(broken);
  const { context, grid } = basis;
  const cases = mapAll(basis, false);
  const time = quickest(() => {
    mapAll(basisFor(broken), false);
  }, 3);
  const draw = drawer(9);
  const picks = Array.from({ length: SAMPLE }, () => ({
    gap: Math.floor(draw(0, 20)),
    node: Math.floor(draw(0, grid.lineCells)),
  }));
  const halves = picks.map(({ gap }) => halvesAt(basis, gap, likely, false));
  const plainly = (dt: number) =>
    picks.map(({ gap, node }, i) =>
      plainRoll(
        {
          line: context.line,
          vehicles: context.loaded.vehicles.slice(gap + 1),
          groups: halves[i].tailLeft.groups,
          assumed: context.outing.assumed,
          adhesion: context.outing.assumed.adhesion.dry.value,
        },
        node * grid.step,
        SPEED,
        dt,
      ),
    );
  const fine = plainly(0.005);
  const theirs = quickest(() => {
    plainly(0.05);
  }, 2);
  const coarse = plainly(0.05);
  const out = emptyRoll();
  let [ours, other] = [0, 0];
  picks.forEach(({ node }, i) => {
    roll(halves[i].tail, node, SPEED, noTraffic, out);
    const rests = out.outcome === 'stands' || out.outcome === 'rolls';
    if (!rests || out.nearBalance || fine[i].how !== 'rests') return;
    ours = Math.max(ours, Math.abs(out.at - fine[i].at));
    other = Math.max(other, Math.abs(coarse[i].at - fine[i].at));
  });
  const scaled = (theirs / SAMPLE) * cases;
  return {
    work: `partings: 20 gaps × every metre of ${(context.line.length / 1000).toFixed(1)} km, tails ${broken ? 'without brakes' : 'with automatic brakes'}, tables included`,
    ours: ms(time),
    against: `ode-rk4 at 0.05 s, plain right-hand side (from ${SAMPLE} tails)`,
    theirs: ms(scaled),
    ratio: scaled / time,
    ourError: `rest within ${(ours * 100).toFixed(1)} cm`,
    theirError: `rest within ${(other * 100).toFixed(1)} cm`,
  };
}

export const run = (): BenchRow[] => [row(false), row(true)];
