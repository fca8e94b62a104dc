/**
 * How far a body rolls to a side on springs that were measured:
 *
 *   φ = (g·(Z·θ + Y) + Z·v²·κ) / (K − g·Z)
 *
 * Z = Σ m·z and Y = Σ m·y of the vehicle with its people, kg·m (z above the rail, y to that side); θ what cant leans the track to it,
 * rad; κ curvature with the outside on it, 1/m; v speed, m/s; K roll stiffness, N·m/rad. It stands, and it runs: both count. It rolls
 * about a line at the rail, so that its top goes farthest. Springs too weak to hold it upright (K ≤ g·Z) are told by balance.
 * Source: common engineering geometry, statics.
 */
import { GRAVITY } from '../../base/constants.ts';
import { speedMeant } from '../../motion/prepare.ts';
import type { OutingContext } from '../../outing/open.ts';
import type { Side } from '../../things/clearance/swept.ts';
import { cantAt, curvatureAt, turnedStretch } from '../../things/line/geometry.ts';
import { covers } from '../../things/line/sights.ts';
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

/** undefined: nobody measured its springs; what must be left beside it holds its sway too. */
export function swayOf(context: OutingContext, of: LoadedVehicle): Sway | undefined {
  const { line, outing } = context;
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
  const speedAt = fastestAt(context);
  return (side, at, level) => {
    const way = side === 'left' ? 1 : -1;
    const outward = -way * curvatureAt(line, at) * speedAt(at) ** 2;
    const lean = (way * cantAt(line, at)) / line.contactWidth;
    const roll = ({ stiffness: k, Z, Y }: Rolling, run: number): number =>
      (GRAVITY * (Z * lean + way * Y) + Z * run) / (k - GRAVITY * Z);
    const all = (body: Rolling): number[] => [roll(body, 0), roll(body, outward)];
    if (level === 'low') return Math.min(...all(stiff), ...all(soft));
    return level === 'value' ? Math.max(...all(likely)) : Math.max(0, ...all(stiff), ...all(soft));
  };
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
