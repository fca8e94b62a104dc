/** A train on one even grade without curves, parted at will: what closed forms can be held against. */

import { exact } from '../../engine/base/quantity.ts';
import { likely } from '../../engine/motion/scenario.ts';
import type { OutingContext } from '../../engine/outing/open.ts';
import { openOuting } from '../../engine/outing/open.ts';
import type { Outing } from '../../engine/outing/types.ts';
import { basisOf } from '../../engine/questions/part/basis.ts';
import { halvesAt } from '../../engine/questions/part/map.ts';
import type { Basis, Part } from '../../engine/questions/part/part.ts';
import { randomOuting } from './random-outings.ts';

export interface OnPlane {
  readonly outing: Outing;
  readonly context: OutingContext;
  readonly basis: Basis;
  /** Its tail, three cars without any brake. */
  readonly tail: Part;
}

/**
 * @param grade rise over run, the same over 2 km
 * @param rolling N/N
 * @param square resistance of each car, N/(m/s)²
 * @param share rotating share of the tare
 */
export function onPlane(grade: number, rolling: number, square = 0, share = 0): OnPlane {
  const base = randomOuting(5, 3);
  const length = 2000;
  const outing: Outing = {
    ...base,
    direction: 'forward',
    wayBack: 'none',
    otherTrains: 'none',
    line: {
      ...base.line,
      loop: false,
      length,
      curves: [],
      heights: [
        { at: 0, height: 0 },
        { at: length, height: grade * length },
      ],
    },
    riders: [],
    train: {
      ...base.train,
      pipeBrokenAfter: [0],
      vehicles: base.train.vehicles.map((v) => ({
        ...v,
        rotatingShare: exact(share),
        resistance: { rolling: exact(rolling), perSpeed: exact(0), perSpeedSquared: square },
      })),
    },
  };
  const context = openOuting(outing);
  const basis = basisOf(context, length * 2, { rolling: [], grounds: [] });
  return { outing, context, basis, tail: halvesAt(basis, 0, likely, false).tail };
}
