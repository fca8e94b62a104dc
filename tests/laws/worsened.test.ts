/**
 * More load, a worse rail, a later reaction, a steeper fall: never a better word, never a shorter stop by the odds, never
 * a told stop below what the odds of the better outing ask for. A slower speed that they force is judged as such: the
 * first outing held to it is no worse.
 */
import { expect, it } from 'vitest';
import { bundled } from '../support/bundled.ts';
import { full, runs } from '../support/tier.ts';
import type { Way } from '../support/worsened.ts';

const { compare, heavierBy } = await bundled<typeof import('../support/worsened.ts')>('worsened.ts');
const ways: readonly Way[] = ['load', 'rail', 'reaction', 'fall'];

it('nothing that is made worse has a better answer', () => {
  const better: unknown[] = [];
  let stops = 0;
  for (let seed = 1; seed <= runs(10, 5000); seed++) {
    // Falls are made no steeper on a loop: it would not close.
    const compared = compare(seed, ways[seed % 4]) ?? compare(seed, 'rail');
    better.push(...(compared?.better ?? []));
    stops += compared?.stops ?? 0;
  }
  expect(better).toEqual([]);
  expect(stops).toBeGreaterThan(runs(25, 12_000));
}, 7_200_000);

it('a tail that runs away no more, the train being held to a slower speed, does so at that speed before too', () => {
  // The brakes of the tail are too weak for the first speed, and a later reaction leaves but a slower one.
  const compared = [515, 3180].map((seed) => compare(seed, 'reaction'));
  expect(compared.flatMap((c) => c?.better)).toEqual([]);
  expect(compared.map((c) => c?.forced.length)).toEqual([1, 1]);
});

it.runIf(full)(
  'nor do the worse rail or the later reaction of four outings that once were better by them',
  () => {
    const compared = [910, 2715, 4719, 5150].flatMap((seed) => [
      compare(seed, 'rail'),
      compare(seed, 'reaction'),
    ]);
    expect(compared.flatMap((c) => [...(c?.better ?? []), ...(c?.forced ?? [])])).toEqual([]);
  },
);

it('weight on a car without brakes never shortens a told stop, also where the likely stop ends nowhere on the line', () => {
  // Of a train of thirteen of which four are braked, on a damp rail: it once told 68.5 m, and 51.6 m with 80 kg more.
  const [first, more] = [0, 80].map((mass) => heavierBy(1540, mass));
  expect(first.filter((stop) => stop === Infinity).length).toBeGreaterThan(0);
  for (const [i, stop] of more.entries()) expect(stop).toBeGreaterThanOrEqual(first[i] * (1 - 1e-3));
});

it('nor near balance, where the brake barely holds the fall, nor faster than the host lets it run', () => {
  const kept = [
    461,
    2697,
    2934,
    2114,
    1004,
    ...(runs(0, 1) ? [20577, 219, 1161, 1216, 1453, 2784, 2826] : []),
  ];
  expect(kept.flatMap((seed) => compare(seed, ways[seed % 4])?.better)).toEqual([]);
});
