/** The ways in which cars are counted, as the terminal, the screen and the card show them. */
import type { CarCount } from '../engine/answer/types.ts';

export type CountWay = 'pulled' | 'stopped' | 'held' | 'heldByDriver' | 'heldByAll' | 'host';

const words: Readonly<Record<CountWay, string>> = {
  pulled: 'pulled',
  stopped: 'stopped',
  heldByDriver: 'held by driver',
  held: 'with guard',
  heldByAll: 'held by all',
  host: 'host',
};

/** Ways and their names. Where no guard's brake helps, the driver alone decides what is held. */
export function countWays(cars: readonly CarCount[]): readonly (readonly [CountWay, string])[] {
  const guarded = cars.some((c) => c.held !== c.heldByDriver);
  const held: readonly CountWay[] = guarded ? ['heldByDriver', 'held', 'heldByAll'] : ['held', 'heldByAll'];
  return (['pulled', 'stopped', ...held, 'host'] as const).map((way) => [
    way,
    way === 'held' && !guarded ? words.heldByDriver : words[way],
  ]);
}

/** What the two figures for holding mean. */
export const heldNote =
  'Held: by brakes that do not leak off. The driver alone, or with a guard who has one, decides; by all: with a rider winding every screw.';

/** "7", "40 or more" where the search ended before it failed. */
export function countWords(count: CarCount, way: CountWay, more: (n: number) => string): string {
  const n = count[way];
  if (n === null) return way === 'host' ? 'no rule' : 'cannot tell';
  return way !== 'host' && count.unlimited.includes(way) ? more(n) : `${n}`;
}
