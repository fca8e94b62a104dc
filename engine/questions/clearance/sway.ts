/** How far a body rolls on springs that were measured (roll.ts), standing and as it is meant to run: both count. */
import { GRAVITY } from '../../base/constants.ts';
import { speedMeant } from '../../motion/prepare.ts';
import type { OutingContext } from '../../outing/open.ts';
import { rollAngle } from '../../things/clearance/roll.ts';
import type { Side } from '../../things/clearance/swept.ts';
import { cantAt, curvatureAt, turnedStretch } from '../../things/line/geometry.ts';
import { covers } from '../../things/line/sights.ts';
import type { Line } from '../../things/line/types.ts';
import type { LoadedVehicle } from '../../things/train/loaded.ts';
import { bodyOf } from '../balance/body.ts';

/** At the least, likely and at the most, as everything that is a spread. */
export type Level = 'low' | 'value' | 'high';

/** rad to that side at a chainage; below nothing: it leans away. */
export type Sway = (side: Side, at: number, level: Level) => number;

interface Rolling {
  readonly stiffness: number;
  readonly Z: number;
  readonly Y: number;
}

/** How a body rolls, wherever it stands. */
export interface Roll {
  /** rad to a side, standing and with what pushes it there. @param lean of the track to it, rad @param push v²·κ with its outside on it, m/s² */
  readonly to: (side: Side, lean: number, push: number, level: Level) => number;
  /** Alike: rolls alike. */
  readonly kind: string;
}

/** undefined: nobody measured its springs; what must be left beside it holds its sway too. */
export function rollOf({ line, outing }: OutingContext, of: LoadedVehicle): Roll | undefined {
  const stiffness = of.vehicle.suspension?.rollStiffness;
  if (!stiffness) return undefined;
  const rolling = (k: number, position: number): Rolling | undefined => {
    const body = bodyOf(of, line.contactWidth, outing.assumed.riderCentre, position);
    return body && k > GRAVITY * body.Z ? { stiffness: k, Z: body.Z, Y: body.Y } : undefined;
  };
  const [stiff, likely, soft] = [
    rolling(stiffness.high, -1),
    rolling(stiffness.value, 0),
    rolling(stiffness.low, 1),
  ];
  if (!stiff || !likely || !soft) return undefined;
  return {
    to: (side, lean, push, level) => {
      const way = side === 'left' ? 1 : -1;
      const all = ({ stiffness: k, Z, Y }: Rolling): number[] =>
        [0, push].map((run) => rollAngle(k, Z, way * Y, lean, run));
      if (level === 'low') return Math.min(...all(stiff), ...all(soft));
      return level === 'value' ? Math.max(...all(likely)) : Math.max(0, ...all(stiff), ...all(soft));
    },
    kind: JSON.stringify([stiff, likely, soft]),
  };
}

/** On the line of an outing, at what it is meant to run at there. */
export function swayOn(context: OutingContext, roll: Roll): Sway {
  const speedAt = fastestAt(context);
  return (side, at, level) => rolled(roll, context.line, side, at, speedAt(at), level);
}

/** On any line at a speed, rad. */
export function rolled(roll: Roll, line: Line, side: Side, at: number, speed: number, level: Level): number {
  const way = side === 'left' ? 1 : -1;
  const lean = (way * cantAt(line, at)) / line.contactWidth;
  return roll.to(side, lean, -way * curvatureAt(line, at) * speed ** 2, level);
}

/** What the train is meant to run at, at most, m/s: limits count where they hold for every part of it. */
function fastestAt({ outing, line }: OutingContext): (at: number) => number {
  const agreed = outing.extraLimits.map((limit) =>
    outing.direction === 'forward' ? limit : turnedStretch(line, limit),
  );
  const most = speedMeant(outing);
  return (at) =>
    [...line.speedLimits, ...agreed].reduce(
      (least, { from, to, speed }) => (covers(line, from, to, at) ? Math.min(least, speed) : least),
      most,
    );
}
