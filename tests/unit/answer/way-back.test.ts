/** A line with two ends: the word is of both ways, and what was climbed on one is a fall on the other. */
import { describe, expect, it } from 'vitest';
import { hasWayBack, withWayBack } from '../../../desk/day.ts';
import { familiesFor } from '../../../engine/answer/families.ts';
import { worse } from '../../../engine/answer/verdict.ts';
import { exact } from '../../../engine/base/quantity.ts';
import { wayBack } from '../../../engine/outing/moves.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import type { Verdict } from '../../../engine/questions/finding.ts';
import { bundled } from '../../support/bundled.ts';
import { laid } from '../../support/on-a-fall.ts';
import { runs } from '../../support/tier.ts';

const quick = await bundled<typeof import('../../support/dressed-outings.ts')>('dressed-outings.ts');
const asked = (outing: Outing) => quick.quickAnswer(outing);
const bothWays = ({ wayBack: _, ...outing }: Outing): Outing => outing;
const alone = (outing: Outing): Outing => ({ ...outing, wayBack: 'none' });
const turnedRound = (outing: Outing): Outing => ({
  ...outing,
  direction: outing.direction === 'forward' ? 'reverse' : 'forward',
});
const codes = (outing: Outing): string[] => asked(outing).findings.map(({ code }) => code);

describe('the way back', () => {
  // Made to fall 3 %: run the other way it climbs. 3 % of 690 kg pull 203 N; its brake does 100 N and rolling 34 N.
  const falls = laid({ mass: exact(100) });
  const brakes = falls.train.vehicles.map((v, i) => ({
    ...v,
    brakes:
      i === 0
        ? [{ id: 'b', name: 'b', kind: 'engine-only' as const, on: ['a', 'b'], force: exact(100) }].map(
            (b) => ({ ...b, workedBy: 'driver' as const, parking: false }),
          )
        : [],
  }));
  const climbs = turnedRound({ ...falls, train: { ...falls.train, vehicles: brakes } });

  it('holds a train that only climbs on its way out and whose brake does not hold it on the way down', () => {
    expect(codes(alone(climbs))).not.toContain('brake-does-not-hold-fall');
    expect(codes(alone(turnedRound(climbs)))).toContain('brake-does-not-hold-fall');
    const { verdict, findings } = asked(bothWays(climbs));
    expect(verdict).toBe('hold');
    const back = findings.find((f) => f.code === 'way-back');
    expect(back).toMatchObject({ severity: 'forbids', facts: { word: 'hold', run: 'engine-leads' } });
    // What clears the way back is tried for it.
    expect(back && familiesFor(bothWays(climbs), back).length).toBeGreaterThan(0);
  });

  it('is not told where it is no worse, where the line goes round, nor where it is said not to come back so', () => {
    const heights = climbs.line.heights.map((k) => ({ ...k, height: 0 }));
    expect(codes(bothWays({ ...climbs, line: { ...climbs.line, heights } }))).not.toContain('way-back');
    expect(codes(alone(climbs))).not.toContain('way-back');
    expect(wayBack({ ...bothWays(climbs), line: { ...climbs.line, loop: true } })).toBeUndefined();
    expect(wayBack({ ...bothWays(climbs), moves: [] })).toBeUndefined();
  });

  it('pushed has its last vehicle in front', () => {
    const pushed = wayBack({ ...climbs, wayBack: 'pushed' });
    expect(pushed?.train.vehicles.map((v) => v.id)).toEqual(climbs.train.vehicles.map((v) => v.id).reverse());
    expect(pushed?.turned).toBe(true);
    const manned = { ...climbs, riders: [{ ...driver(climbs), vehicle: climbs.train.vehicles[0].id }] };
    expect(codes(pushed ? { ...pushed, riders: manned.riders } : climbs)).toContain(
      'propelled-without-lookout',
    );
  });

  it('is had in full by turning the paper, and back again', () => {
    const once = withWayBack({ name: 'out' });
    expect(once['direction']).toBe('reverse');
    expect(withWayBack(once)['direction']).toBe('forward');
    expect(hasWayBack(bothWays(climbs))).toBe(true);
    expect(hasWayBack(alone(climbs))).toBe(false);
    expect(hasWayBack({ ...climbs, wayBack: 'pushed' })).toBe(false);
    expect(hasWayBack({ ...bothWays(climbs), line: { ...climbs.line, loop: true } })).toBe(false);
  });
});

const driver = ({ riders }: Outing): Outing['riders'][number] => ({
  ...(riders[0] ?? { id: 'd', name: 'D', mass: exact(80), ageGroup: 'adult', seat: 'driver' }),
  duty: 'driver',
});

describe('any line with two ends', () => {
  const seeds = Array.from({ length: runs(20, 400) }, (_, i) => 4001 + i)
    .map((seed) => quick.dressed(seed))
    .filter(({ line, moves }) => !line.loop && !moves);

  it('has the worse of both ways’ words, from whichever end it is asked', () => {
    const worst = (a: Verdict, b: Verdict): Verdict => (worse(a, b) ? a : b);
    let worsened = 0;
    for (const outing of seeds) {
      const [out, back] = [alone(outing), alone(turnedRound(outing))].map((o) => asked(o).verdict);
      expect(asked(bothWays(outing)).verdict, outing.name).toBe(worst(out, back));
      expect(asked(bothWays(turnedRound(outing))).verdict, outing.name).toBe(worst(out, back));
      if (worse(back, out)) worsened++;
    }
    expect(seeds.length).toBeGreaterThan(5);
    expect(worsened).toBeGreaterThan(0);
  });
});
