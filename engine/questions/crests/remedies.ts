/**
 * Changes worth trying where couplers slip by: one of the two shimmed up or down, ballast on its springs, another
 * neighbour, a car left behind. Speed
 * has no part in it.
 */
import type { Outing } from '../../outing/types.ts';
import { isCar } from '../../things/train/cars.ts';
import type { Vehicle } from '../../things/vehicle/types.ts';
import type { Family, Remedies } from '../family.ts';
import type { Finding } from '../finding.ts';
import { orders } from '../swing/remedies.ts';

/** Shims, m. */
const SHIM = 0.001;
const MOST_SHIMS = 40;

/** Ballast over the one that stands too high, kg. */
const BALLAST = 10;
const MOST_BALLAST = 20;

export const crestRemedies: Remedies = { 'couplers-slip-by': shimmedOrElsewhere };

function shimmedOrElsewhere(outing: Outing, finding: Finding): Family[] {
  const { gap } = finding.where;
  if (gap === undefined || !('higher' in finding.facts)) return [];
  const { vehicles } = outing.train;
  const aheadDown = finding.facts.higher === 'ahead' ? -1 : 1;
  return [
    raised(vehicles[gap], 'rear', aheadDown),
    raised(vehicles[gap + 1], 'front', -aheadDown),
    ...orders(outing, gap),
    ...ballasted(vehicles[finding.facts.higher === 'ahead' ? gap : gap + 1]),
    ...[vehicles[gap + 1], vehicles[gap]]
      .filter(isCar)
      .map((v): Family => ({ size: 5, changes: [{ kind: 'fewer-cars', leave: [v.id] }] })),
  ];
}

/** Shimmed by whole millimetres. @param way +1 up, −1 down */
export const raised = ({ id }: Vehicle, end: 'front' | 'rear', way: number): Family => ({
  size: 2,
  changes: Array.from({ length: MOST_SHIMS }, (_, n) => ({
    kind: 'coupler-raised' as const,
    vehicle: id,
    end,
    by: way * (n + 1) * SHIM,
  })),
});

/** On springs that are known, weights bring the higher one down. */
function ballasted(higher: Vehicle): Family[] {
  if (!isCar(higher) || !higher.suspension?.wheelStiffness) return [];
  return [
    {
      size: 3,
      changes: Array.from({ length: MOST_BALLAST }, (_, n) => ({
        kind: 'ballast' as const,
        vehicle: higher.id,
        mass: (n + 1) * BALLAST,
        height: higher.gauge,
      })),
    },
  ];
}
