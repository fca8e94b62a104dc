/**
 * A surge brake cannot tell a push from behind from a stop: with an engine behind it, it comes on as the train is pushed. What
 * that drags is not in the pull that is reckoned; locked out, it is no brake (common practice, no source).
 */
import type { OutingContext } from '../../outing/open.ts';
import { isPushed } from '../../things/brake/kinds/index.ts';
import { isCar } from '../../things/train/cars.ts';
import type { Finding } from '../finding.ts';
import { makeFinding } from '../make.ts';

export function surgePushed({ outing }: OutingContext): Finding[] {
  const { vehicles } = outing.train;
  const lastEngine = vehicles.findLastIndex((v) => !isCar(v));
  const pushed = vehicles
    .slice(0, Math.max(0, lastEngine))
    .filter((v) => v.brakes.some((b) => isPushed(b.kind)));
  if (pushed.length === 0) return [];
  return [
    makeFinding('surge-pushed', 'limits', 'hauling', {
      where: { vehicle: pushed[0].id },
      facts: { vehicles: pushed.map(({ name }) => name).join(', ') },
      source: 'common practice, no source',
    }),
  ];
}
