/**
 * Changes worth trying where a coupler swings too little: a longer bar at that gap, another neighbour, a car left
 * behind. Speed has no part in it.
 */
import { INCH } from '../../base/constants.ts';
import type { Outing } from '../../outing/types.ts';
import { isCar } from '../../things/train/cars.ts';
import type { Family, Remedies } from '../family.ts';
import type { Finding } from '../finding.ts';

/** A bar is lengthened by whole inches, m; a longer one is another coupling. */
const MOST_INCHES = 24;
const MOST_ORDERS = 4;

export const swingRemedies: Remedies = { 'coupler-swing-short': longerOrElsewhere };

function longerOrElsewhere(outing: Outing, { where: { gap } }: Finding): Family[] {
  if (gap === undefined) return [];
  return [longer(gap), ...orders(outing, gap), ...either(outing, gap)];
}

export const longer = (gap: number): Family => ({
  size: 2,
  changes: Array.from({ length: MOST_INCHES }, (_, i) => ({
    kind: 'longer-coupling' as const,
    gap,
    by: (i + 1) * INCH,
  })),
});

/** Each of the two exchanged with a car of another shape elsewhere in the train. */
export function orders({ train: { vehicles } }: Outing, gap: number): Family[] {
  const shape = (i: number): string =>
    JSON.stringify([
      vehicles[i].length,
      vehicles[i].groups.map((g) => g.at),
      vehicles[i].front,
      vehicles[i].rear,
    ]);
  const cars = vehicles.flatMap((v, i) => (isCar(v) ? [i] : []));
  const swaps = [gap + 1, gap]
    .filter((i) => cars.includes(i))
    .flatMap((i) => {
      const met = new Set([shape(i)]);
      return cars.flatMap((k) => {
        if (k === gap || k === gap + 1 || met.has(shape(k))) return [];
        met.add(shape(k));
        return [[i, k]];
      });
    });
  return swaps.slice(0, MOST_ORDERS).map(([a, b], n) => {
    const order = vehicles.map((v) => v.id);
    [order[a], order[b]] = [order[b], order[a]];
    return { size: 1 + n / 10, changes: [{ kind: 'order', order }] };
  });
}

const either = ({ train: { vehicles } }: Outing, gap: number): Family[] =>
  [vehicles[gap + 1], vehicles[gap]]
    .filter((v) => v !== undefined && isCar(v))
    .map((v) => ({ size: 5, changes: [{ kind: 'fewer-cars', leave: [v.id] }] }));
