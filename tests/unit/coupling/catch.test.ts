/** Catches by a chain as odds: what one in a hundred asks, and the examples that it must not hold. */
import { describe, expect, it } from 'vitest';
import { openOutingFile } from '../../../cli/open.ts';
import { assumedValues } from '../../../data/index.ts';
import { inquire } from '../../../engine/answer/inquiry.ts';
import { between, exact } from '../../../engine/base/quantity.ts';
import { pick, seeded, triangular } from '../../../engine/base/spread.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import { DRAWS } from '../../../engine/questions/balance/draws.ts';
import { hardPeak, hardWork, pullApart } from '../../../engine/questions/chains/catch.ts';
import { chains } from '../../../engine/questions/chains/question.ts';
import { part } from '../../../engine/questions/part/question.ts';
import { leastBreakingLoad } from '../../../engine/things/chain/energy.ts';
import { isCar } from '../../../engine/things/train/cars.ts';
import { tellFinding } from '../../../words/finding.ts';

const POUND = 4.4482216152605;
const INCH = 0.0254;
const { chainCatch, sprungRider } = assumedValues;
const hung = { slack: 2 * INCH, length: chainCatch.length, count: 1, difference: null };
const pull = between(110 * POUND, 110 * POUND, 301 * POUND, 'assumed');
const stiffness = between(2e5, 4e5, 6e5, 'assumed');
const always = (value: number): Float64Array => new Float64Array(DRAWS).fill(value);
const halves = {
  head: always(1300),
  tail: always(2300),
  headRiders: always(120),
  tailRiders: always(1600),
  running: always(pull.value),
  parting: always(pull.high),
};
const pulls = pullApart(halves);
const asks = (gear = hung): number => hardWork(gear, pulls, 0.15, chainCatch.fullness).breaks;

describe('one catch in a hundred', () => {
  it.each([1, 2, 20])(
    'asks for a breaking load that fewer of other draws exceed, %i in of slack',
    (inches) => {
      const draw = seeded(7);
      const one = (): number => triangular(draw());
      const slack = inches * INCH;
      const most = asks({ ...hung, slack });
      let above = 0;
      for (let i = 0; i < 20_000; i++) {
        const breaks = leastBreakingLoad({
          pull: pick(pull, one()),
          slack,
          length: pick(hung.length, one()),
          elongation: 0.15,
          fullness: pick(chainCatch.fullness, one()),
        });
        if (breaks > most) above++;
      }
      // Aimed at six in a thousand.
      expect(above / 20_000).toBeLessThan(0.01);
      expect(above / 20_000).toBeGreaterThan(0.0005);
    },
  );
  it('asks for less the less slack there is, and for half of each of two that hang alike', () => {
    expect(asks({ ...hung, slack: INCH })).toBeLessThan(asks());
    const two = (difference: number | null): number =>
      hardWork({ ...hung, count: 2, difference }, pulls, 0.15, chainCatch.fullness).breaks;
    expect(two(0)).toBeCloseTo(asks() / 2, 9);
    expect(two(null)).toBe(asks());
    // Longer by more than the shorter stretches before it breaks: never there.
    expect(two(0.1)).toBe(asks());
    expect(two(0.01)).toBeGreaterThan(two(0));
    expect(two(0.01)).toBeLessThan(asks());
  });
  it('comes upon a hook less hard where people sit loosely', () => {
    const tied = { ...sprungRider, share: exact(0) };
    const gear = { ...hung, stiffness };
    const loose = hardPeak(gear, halves, sprungRider);
    expect(loose.force).toBeLessThan(0.9 * hardPeak(gear, halves, tied).force);
    expect(loose.tailSprung).toBeGreaterThan(sprungRider.share.low * 1600);
    // Those ahead of the gap count as those behind it.
    const swapped = { ...halves, head: halves.tail, tail: halves.head };
    const ahead = hardPeak(
      gear,
      { ...swapped, headRiders: halves.tailRiders, tailRiders: halves.headRiders },
      sprungRider,
    );
    expect(ahead.headSprung).toBeCloseTo(loose.tailSprung, 9);
    expect(ahead.force).toBeCloseTo(loose.force, 6);
  });
});

const heavyAir = await openOutingFile('examples/heavy-air.json');

/** With this many cars, none of them braked. */
function unbraked(count: number): Outing {
  const engines = heavyAir.train.vehicles.filter((v) => !isCar(v));
  const cars = heavyAir.train.vehicles.filter(isCar);
  const row = Array.from({ length: count }, (_, i) => ({
    ...cars[i % cars.length],
    id: `car-${i}`,
    brakes: [],
  }));
  const people = heavyAir.riders.flatMap((rider) => {
    const at = cars.findIndex((car) => car.id === rider.vehicle);
    if (at < 0) return [rider];
    return row.flatMap((car, i) =>
      i % cars.length === at ? [{ ...rider, id: `${rider.id}-${i}`, vehicle: car.id }] : [],
    );
  });
  return { ...heavyAir, riders: people, train: { ...heavyAir.train, vehicles: [...engines, ...row] } };
}

describe('heavy-air, 3/16 in of grade 30 with 2 in of slack', () => {
  it('is not parted by the catch; that its chains are then spent is one note', () => {
    const { findings, data } = inquire(heavyAir).of(chains);
    expect(data.map((r) => r.verdict)).toEqual(data.map(() => 'holds, then replace'));
    expect(findings).toHaveLength(1);
    expect(findings[0]).toMatchObject({
      code: 'chain-too-weak',
      severity: 'notes',
      where: { gap: 0 },
      facts: { way: 'spent', others: 4 },
    });
    expect(findings[0].margin).toBeUndefined();
    const voice = { system: 'imperial', wording: 'us', outing: heavyAir } as const;
    const { what, why } = tellFinding(findings[0], voice);
    expect(what).toContain('4 more');
    expect(why).toMatch(/What helps: no more than 1 in of slack, moused hooks/);
  });
  it.each([4, 5, 6])('with %i unbraked cars it is not held for its chains', (count) => {
    const inquiry = inquire(unbraked(count));
    expect(inquiry.of(chains).findings.filter((f) => f.severity === 'forbids')).toEqual([]);
    expect(inquiry.of(part).findings.map((f) => f.code)).not.toContain('tail-runs-away');
  });
});
