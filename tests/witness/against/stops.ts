/** The likely stop: engine and witness from the same places and speeds. */
import type { Outing } from '../../../engine/outing/types.ts';
import { chance } from '../chance.ts';
import { groundOf } from '../ground.ts';
import { hand, likelyDeal, tableOf } from '../hand.ts';
import { nothingTold, stop, wayAhead } from '../stop.ts';
import { answering } from '../train.ts';
import type { StopWord } from './engine.ts';

export interface StopCompared {
  readonly at: number;
  readonly speed: number;
  readonly engine: number;
  readonly witness: number;
}

/** The engine takes curves at their lowest drag in every stop, on the safe side: so does the witness here. */
export const likelyHand = (outing: Outing) => {
  const table = tableOf(outing, answering(outing));
  return { table, likely: { ...hand(table, likelyDeal), curve: outing.assumed.curveConstant.low } };
};

export function compareStops(seed: number, { outing, likelyStop }: StopWord, places: number): StopCompared[] {
  const uniform = chance(seed + 101);
  const ground = groundOf(outing);
  const { table, likely } = likelyHand(outing);
  const told = nothingTold();
  return Array.from({ length: places }, () => {
    const at = uniform() * outing.line.length;
    const speed = 0.5 + 5 * uniform();
    stop(wayAhead(ground, table.cars, at), likely, speed, told);
    return { at, speed, engine: likelyStop(at, speed), witness: told.distance };
  });
}

/** Apart by more than 2 % and 15 cm, or one of them stops and the other does not. */
export function apart({ engine, witness }: StopCompared): boolean {
  if (engine === Infinity || witness === Infinity) return engine !== witness;
  const off = Math.abs(engine - witness);
  return off > 0.15 && off > 0.02 * witness;
}

/** Told too short by more than 3 %: what sharing a wheel's load once for the whole stop may take off (decision 0001). */
export const tooShort = (c: StopCompared): boolean => apart(c) && c.engine < 0.97 * c.witness;
