/**
 * A stop test as a check: what the outing, as its papers have it, would have said of each stop before it was made, with the brakes
 * that were put on. Of many such stops no more than one in a hundred is longer than the careful figure.
 */
import { exact } from '../../engine/base/quantity.ts';
import type { StopTest } from '../../engine/calibrate/tests/stop-test.ts';
import { runningLine } from '../../engine/calibrate/train.ts';
import { prepare } from '../../engine/motion/prepare.ts';
import { stopDistance } from '../../engine/motion/stop.ts';
import { openOuting } from '../../engine/outing/open.ts';
import type { Outing } from '../../engine/outing/types.ts';
import type { BrakeKind } from '../../engine/things/brake/kinds/index.ts';

export interface Predicted {
  /** m/s */
  readonly speed: number;
  /** m, from where the brake was put on or the signal given. */
  readonly measured: number;
  readonly likely: number;
  readonly careful: number;
  readonly inside: boolean;
}

export function predictedStops(test: StopTest, outing: Outing): Predicted[] {
  const reaction = test.begins === 'signal' ? outing.conditions.reaction : exact(0);
  const asRun = (direction: Outing['direction']): Outing => ({
    ...outing,
    direction,
    train: test.brakes ? withBrakes(outing.train, test.brakes) : outing.train,
    conditions: { ...outing.conditions, reaction, railState: test.rail },
  });
  const ways = {
    forward: () => prepare(openOuting(asRun('forward'))).models(test.rail),
    reverse: () => prepare(openOuting(asRun('reverse'))).models(test.rail),
  };
  return (['forward', 'reverse'] as const).flatMap((way) => {
    const stops = test.stops.filter((s) => s.way === way);
    if (stops.length === 0) return [];
    const { likely, cautious } = ways[way]();
    return stops.map(({ from, restAt, speed }): Predicted => {
      const { line, at } = runningLine(outing.line, way);
      const on = at(restAt) - at(from);
      const measured = line.loop && on < 0 ? on + line.length : on;
      const careful = stopDistance(cautious, at(from), speed);
      return {
        speed,
        measured,
        likely: stopDistance(likely, at(from), speed),
        careful,
        inside: measured <= careful,
      };
    });
  });
}

/** Brakes of other kinds were left off. */
const withBrakes = (train: Outing['train'], kinds: readonly BrakeKind[]): Outing['train'] => ({
  ...train,
  vehicles: train.vehicles.map((v) => ({ ...v, brakes: v.brakes.filter((b) => kinds.includes(b.kind)) })),
});
