/**
 * The whole train running on with the brakes that something has left it: parted and held by its chain, or with a
 * hose off. Each is followed and ranked as a tail is.
 */
import { type BrakesLeft, wholeLeft } from './brakes-left.ts';
import { type GapMap, mapGap } from './map.ts';
import { type Basis, type Luck, partOf } from './part.ts';

/** Maps of the whole train by the brakes left: gaps that leave the same share one. */
export interface WholeMaps {
  readonly of: (left: BrakesLeft, gap: number) => GapMap;
}

const keyOf = (left: BrakesLeft): string =>
  left.groups.map((g) => `${g.vehicle} ${g.group} ${g.gear.id} ${g.deadTime.value}`).join();

export function wholeMaps(basis: Basis, luck: Luck, nodes: Int32Array, speeds: Float64Array): WholeMaps {
  const last = basis.context.loaded.vehicles.length - 1;
  const known = new Map<string, GapMap>();
  const follow = (left: BrakesLeft, gap: number): GapMap => {
    const whole = partOf(basis, 0, last, left.groups, luck);
    const halves = { gap, head: whole, tail: whole, headLeft: left, tailLeft: left };
    return mapGap(basis, halves, nodes, speeds, false);
  };
  return {
    of: (left, gap) => {
      const key = keyOf(left);
      const map = known.get(key) ?? follow(left, gap);
      known.set(key, map);
      return { ...map, gap, halves: { ...map.halves, gap, headLeft: left, tailLeft: left } };
    },
  };
}

/** The whole train with the hose off behind a vehicle. @param couplersShut or parted, and held by its chain */
export const hoseOff = (basis: Basis, maps: WholeMaps, gap: number, couplersShut: boolean): GapMap =>
  maps.of(wholeLeft(basis.context, gap, couplersShut), gap);
