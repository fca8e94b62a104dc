/** Tails that part on lines with stretches of bad and good rail, their brakes on by themselves: engine and witness. */

import { likely } from '../../../engine/motion/scenario.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import { basisOf } from '../../../engine/questions/part/basis.ts';
import { halvesAt } from '../../../engine/questions/part/map.ts';
import { emptyRoll, noTraffic, roll } from '../../../engine/questions/part/roll.ts';
import { wetter } from '../../../engine/things/rail.ts';
import { chance } from '../chance.ts';
import { groundOf } from '../ground.ts';
import { hand, likelyDeal } from '../hand.ts';
import { tailTable } from '../tail.ts';
import { rollByPlace } from '../tail-places.ts';
import { stopWord } from './engine.ts';
import { railsOf, withStretches } from './places.ts';

export interface TailPlaced {
  readonly seed: number;
  readonly gap: number;
  readonly at: number;
  readonly speed: number;
  readonly engine: { readonly rests: boolean; readonly way: number };
  readonly witness: { readonly rests: boolean; readonly way: number };
  /** The engine says that a hair's breadth decides. */
  readonly near: boolean;
}

export function compareTailPlaces(seed: number, cases: number): TailPlaced[] {
  const outing = withStretches(seed);
  const { context } = stopWord(outing).ready;
  const { line, loaded } = context;
  const last = loaded.vehicles.length - 1;
  if (last < 1) return [];
  const uniform = chance(seed + 505);
  const basis = basisOf(context, Math.ceil(line.length / 0.5), { rolling: [], grounds: [] });
  const ground = groundOf(outing);
  const { conditions, assumed } = outing;
  const out = emptyRoll();
  return Array.from({ length: cases }, (): TailPlaced[] => {
    const gap = Math.floor(uniform() * last);
    const handOn = (railState: typeof conditions.railState) => {
      const on: Outing = { ...outing, conditions: { ...conditions, railState } };
      return { ...hand(tailTable(on, gap + 1), likelyDeal), curve: assumed.curveConstant.low };
    };
    const own = handOn(conditions.railState);
    // Partly eased by somebody: held against a stop elsewhere.
    const braked = own.push.some((p) => p > 0);
    const [u, speed] = [uniform(), 0.5 + 3.5 * uniform()];
    if (!braked || own.handle.some((h) => !own.alone[h])) return [];
    const rails = railsOf(outing, ground, (state) => {
      const { frictions } = handOn(wetter(conditions.railState, state));
      return { ...handOn(state), frictions };
    });
    const { from, to } = (conditions.railStretches ?? [])[0];
    const head = from + u * (to - from) - 15 + 30 * uniform();
    const first = line.loop ? 0 : loaded.length;
    const node = Math.ceil(Math.min(line.length - 1, Math.max(first, head)) / basis.grid.step);
    const at = node * basis.grid.step;
    roll(halvesAt(basis, gap, likely, false).tail, node, speed, noTraffic, out);
    const { cars } = tailTable(outing, gap + 1);
    const witness = rollByPlace(ground, cars, rails, at, speed);
    // What it rolls through does not end the roll.
    const rests = ['stands', 'rolls', 'rolls-through-place'].includes(out.outcome);
    return [
      {
        seed,
        gap,
        at,
        speed,
        engine: { rests, way: out.at - at },
        witness: { rests: witness.ends === 'rests', way: witness.way },
        near: out.nearBalance,
      },
    ];
  }).flat();
}
