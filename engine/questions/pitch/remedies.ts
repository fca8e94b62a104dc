/**
 * Changes worth trying where a bar turns up or down too far: one of the two couplers shimmed, a longer bar, another neighbour, a car
 * left behind. Speed has no part in it.
 */
import type { Outing } from '../../outing/types.ts';
import { isCar } from '../../things/train/cars.ts';
import { raised } from '../crests/remedies.ts';
import type { Family, Remedies } from '../family.ts';
import type { Finding } from '../finding.ts';
import { longer, orders } from '../swing/remedies.ts';

export const pitchRemedies: Remedies = { 'coupler-pitch-short': levelled };

function levelled(outing: Outing, { where: { gap }, facts }: Finding): Family[] {
  if (gap === undefined || !('way' in facts) || !('end' in facts)) return [];
  const { vehicles } = outing.train;
  // A bar that tips upward hangs from the lower of the two.
  const aheadUp = (facts.way === 'up') === (facts.end === 'rear') ? 1 : -1;
  return [
    raised(vehicles[gap], 'rear', aheadUp),
    raised(vehicles[gap + 1], 'front', -aheadUp),
    longer(gap),
    ...orders(outing, gap),
    ...[vehicles[gap + 1], vehicles[gap]]
      .filter(isCar)
      .map((v): Family => ({ size: 5, changes: [{ kind: 'fewer-cars', leave: [v.id] }] })),
  ];
}
