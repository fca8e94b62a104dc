/** Tails that part at likely figures: where each comes to rest, and how fast it became. */

import { likely } from '../../../engine/motion/scenario.ts';
import { gridFor, vehicleGrounds } from '../../../engine/questions/part/ground.ts';
import { halvesAt } from '../../../engine/questions/part/map.ts';
import type { Basis } from '../../../engine/questions/part/part.ts';
import { emptyRoll, noTraffic, roll } from '../../../engine/questions/part/roll.ts';
import { gridOf } from '../../../engine/questions/speed/map.ts';
import { chance } from '../chance.ts';
import { groundOf } from '../ground.ts';
import { hand, likelyDeal } from '../hand.ts';
import { type Rolled, rollTail, tailTable } from '../tail.ts';
import { G } from '../train.ts';
import type { Word } from './engine.ts';

export interface TailCompared {
  readonly gap: number;
  readonly at: number;
  readonly speed: number;
  readonly engine: { readonly ends: Rolled['ends']; readonly way: number; readonly top: number };
  readonly witness: Rolled;
  /** One of them says that a hair's breadth decides. */
  readonly near: boolean;
}

const endOf = (outcome: string): Rolled['ends'] =>
  outcome === 'leaves-line' ? 'off the end' : outcome === 'runs-round' ? 'round' : 'rests';

export function compareTails(seed: number, { outing, ready }: Word, cases: number): TailCompared[] {
  const { context } = ready;
  const { line, loaded } = context;
  const last = loaded.vehicles.length - 1;
  if (last < 1) return [];
  const uniform = chance(seed + 202);
  const grid = gridFor(line, loaded.length, gridOf(line.length).length - 1);
  const basis: Basis = {
    context,
    grid,
    vehicles: vehicleGrounds(line, loaded, outing.assumed.curveConstant.low, grid),
    // Going over is not asked here.
    tips: loaded.vehicles.map(() => undefined),
    unmeasured: new Set(),
    places: new Int16Array(grid.lineCells).fill(-1),
  };
  const ground = groundOf(outing);
  const out = emptyRoll();
  return Array.from({ length: cases }, () => {
    const gap = Math.floor(uniform() * last);
    const room = line.loop ? line.length : line.length - loaded.length;
    const node =
      Math.ceil((line.loop ? 0 : loaded.length) / grid.step) +
      Math.floor((uniform() * room * 0.98) / grid.step);
    const at = node * grid.step;
    const speed = 0.5 + 3 * uniform();
    roll(halvesAt(basis, gap, likely, false).tail, node, speed, noTraffic, out);
    const table = tailTable(outing, gap + 1);
    const tail = { ...hand(table, likelyDeal), curve: outing.assumed.curveConstant.low };
    const witness = rollTail(ground, table.cars, tail, at, speed);
    return {
      gap,
      at,
      speed,
      engine: { ends: endOf(out.outcome), way: out.at - at, top: out.topSpeed },
      witness,
      near: out.nearBalance || witness.nearest < 0.03,
    };
  });
}

/** The engine counts the last, partial cell of a line as beyond its end: so much sooner it ends there, m. */
const CELL = 0.5;
/** Steepest ground of the random lines, with its misclosure. */
const STEEPEST = 0.07;

/**
 * Wheels that nobody eases lock at a speed between two knots of the table of force by speed, which draws a line through
 * the jump: parted near that speed a tail is told up to 3 % off (decision 0001). In the full tier it is this one.
 */
const locksBetweenKnots: ReadonlySet<number> = new Set([100_253]);

/** Apart: another end, rest by more than 2 % and 15 cm of the way, or top speed by more than 2 %. */
export function tailApart({ engine, witness }: TailCompared, seed: number): boolean {
  if (engine.ends !== witness.ends) return true;
  const energy = (v: number): number => (v * v) / 2;
  const sooner = engine.ends === 'off the end' ? G * STEEPEST * CELL : 0;
  const allowed = 0.04 * energy(witness.top) + sooner;
  if (Math.abs(energy(engine.top) - energy(witness.top)) > allowed) return true;
  const off = Math.abs(engine.way - witness.way);
  return (
    engine.ends === 'rests' &&
    off > 0.15 &&
    off > (locksBetweenKnots.has(seed) ? 0.03 : 0.02) * Math.abs(witness.way)
  );
}
