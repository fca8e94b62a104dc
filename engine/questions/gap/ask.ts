/** How far behind the train ahead: what this train needs, where that is more than the host's least. */
import { amount } from '../../base/quantity.ts';
import type { Prepared } from '../../motion/prepare.ts';
import type { Finding } from '../finding.ts';
import { makeFinding, marginOf } from '../make.ts';
import { stopSum } from '../speed/stop-sum.ts';
import { runsWhere } from '../speed/stretch.ts';
import type { SpeedMap } from '../speed/types.ts';

/** Gap to the train ahead, where this train needs more than the host's least. */
export function askGap(ready: Prepared, map: SpeedMap): Finding[] {
  const { outing } = ready.context;
  const planned = outing.plannedSpeed ?? Infinity;
  const least = outing.host.leastGap;
  if (map.at.length === 0) return [];
  let worst = 0;
  for (let j = 0; j < map.at.length; j++) if (map.gap[j] > map.gap[worst]) worst = j;
  const needed = map.gap[worst];
  if (needed === Infinity) return [];
  const run = Math.min(map.limit[worst], planned);
  const more = least !== undefined && needed > least.value;
  const over = runsWhere(
    map.at.length,
    (j) => least !== undefined && map.gap[j] > least.value,
    () => true,
  );
  return [
    makeFinding('gap-needed', more ? 'limits' : 'notes', 'spacing', {
      where: more ? { from: map.at[over[0].first], to: map.at[over[over.length - 1].last] } : {},
      found: amount(needed, 'length'),
      ...(least ? { required: amount(least.value, 'length'), margin: marginOf(needed, least.value) } : {}),
      facts: {
        at: amount(map.at[worst], 'length'),
        speed: amount(run, 'speed'),
      },
      // Where the host's least gap is more than the stop asks for, the rule is the figure.
      ...(needed === least?.value || run <= 0 ? {} : stopSum(ready, map, worst, run, 'margin')),
      source: least?.source ?? 'cautious stopping distance and margin',
      sure: 'assumed',
    }),
  ];
}
