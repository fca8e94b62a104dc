/**
 * The cautious stop by odds: of fresh draws, with a seed that set nothing, no more than one in a hundred passes it, give
 * or take what so many draws can tell; and it is not far beyond what is needed.
 */
import { describe, expect, it } from 'vitest';
import { openOutingFile } from '../../cli/open.ts';
import { percentile } from '../../engine/base/spread.ts';
import { prepare } from '../../engine/motion/prepare.ts';
import { sampleStops } from '../../engine/motion/sample.ts';
import { stopDistance } from '../../engine/motion/stop.ts';
import { openOuting } from '../../engine/outing/open.ts';
import { runs } from '../support/tier.ts';

const examples = ['heavy-air', 'battery-vacuum', 'steam-light'];
const states = ['dry', 'damp', 'wet'] as const;
const DRAWS = runs(3000, 10_000);
const PLACES = runs(5, 24);
const FRESH = 77_001;

const looked: { readonly of: string; readonly beyond: number; readonly ratio: number }[] = [];
for (const name of examples) {
  const outing = await openOutingFile(new URL(`../../examples/${name}.json`, import.meta.url).pathname);
  const ready = prepare(openOuting(outing));
  const { length } = ready.context.line;
  for (const state of states) {
    const { cautious } = ready.models(state);
    for (let i = 0; i < PLACES; i++) {
      const at = (length * (i + 0.37)) / PLACES;
      const speed = (outing.plannedSpeed as number) * (i % 2 === 0 ? 1 : 0.6);
      const told = stopDistance(cautious, at, speed);
      const drawn = sampleStops(ready.inputs(state), at, speed, DRAWS, FRESH + i).sort();
      const beyond = drawn.filter((d) => d > told).length / DRAWS;
      looked.push({
        of: `${name} ${state} at ${at.toFixed(0)} m`,
        beyond,
        ratio: told / percentile(drawn, 0.99),
      });
    }
  }
}

/** Draws of the light steam train on damp rail where the level ends above a fall that its brake just holds. */
const brow = await (async () => {
  const outing = await openOutingFile(new URL('../../examples/steam-light.json', import.meta.url).pathname);
  const ready = prepare(openOuting(outing));
  const speed = outing.plannedSpeed as number;
  return [438, 440].map((at) => {
    const drawn = sampleStops(ready.inputs('damp'), at, speed, DRAWS, FRESH + at).sort();
    return { told: stopDistance(ready.models('damp').cautious, at, speed), drawn };
  });
})();

describe('the cautious stop', () => {
  it('is not both late and unlucky on the fall where the level ends above one', () => {
    for (const { told, drawn } of brow) {
      expect(told / percentile(drawn, 0.99)).toBeLessThan(1.25);
      expect(drawn.filter((d) => d > told).length / DRAWS).toBeLessThan(
        0.013 + 3 * Math.sqrt((0.01 * 0.99) / DRAWS),
      );
    }
  });

  it('is passed by no more than one draw in a hundred, at any place', () => {
    // Three standard errors of the share beside what is promised.
    const most = 0.013 + 3 * Math.sqrt((0.01 * 0.99) / DRAWS);
    expect(looked.filter((l) => l.beyond > most)).toEqual([]);
    const mean = looked.reduce((sum, l) => sum + l.beyond, 0) / looked.length;
    expect(mean).toBeLessThan(0.01);
    // Not by standing endlessly far off.
    expect(mean).toBeGreaterThan(0.001);
  });
  it('is no more than a quarter beyond that draw, at nearly all places', () => {
    const far = looked.filter((l) => l.ratio > 1.25);
    expect(far.length, JSON.stringify(far)).toBeLessThanOrEqual(0.05 * looked.length);
  });
});
