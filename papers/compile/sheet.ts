/** Limits of a host's sheet in their order: what no figure could meet is a slip of the pen. */
import { type Standards, standardKeys } from '../../engine/outing/types.ts';
import { type Notes, trouble } from './notes.ts';

/** From the least that passes to the most. */
const order = ['least', 'slowBelow', 'slowAbove', 'most'] as const;

const said = {
  least: 'least',
  slowBelow: 'slow below',
  slowAbove: 'slow above',
  most: 'most',
} as const;

export function checkSheet(standards: Standards, notes: Notes): void {
  for (const key of standardKeys) {
    const standard = standards[key];
    if (!standard) continue;
    const stated = order.filter((bound) => standard[bound] !== undefined);
    for (const [i, bound] of stated.entries()) {
      const before = stated[i - 1];
      if (before && (standard[bound] ?? 0) < (standard[before] ?? 0))
        trouble(
          notes,
          ['standards', key, bound],
          `${said[bound]} under ${said[before]}`,
          'least, slow below, slow above, most: each no less than the one before',
        );
    }
  }
}
