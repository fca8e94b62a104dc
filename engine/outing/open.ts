/**
 * What every question starts from: the outing with the line turned to the running direction and the
 * train loaded. Chainages in answers are in the running direction; `desk/` turns them back for people.
 */
import { reverseLine } from '../things/line/geometry.ts';
import type { Line } from '../things/line/types.ts';
import { type LoadedTrain, loadTrain } from '../things/train/loaded.ts';
import type { Outing } from './types.ts';

export interface OutingContext {
  readonly outing: Outing;
  /** The line in the running direction. */
  readonly line: Line;
  readonly loaded: LoadedTrain;
}

export function openOuting(outing: Outing): OutingContext {
  return {
    outing,
    line: outing.direction === 'reverse' ? reverseLine(outing.line) : outing.line,
    loaded: loadTrain(outing.train, outing.riders),
  };
}

/** Margin kept to whatever the train must stop short of, m. */
export const stopMargin = ({ outing }: OutingContext): number =>
  outing.host.stopMargin?.value ?? outing.assumed.stopMargin;
