/** A flange that nobody measured clears or asks; it never forbids. A measured one is judged at running speed too. */

import { readFile } from 'node:fs/promises';
import { describe, expect, it } from 'vitest';
import { answerOuting } from '../../../engine/answer/complete.ts';
import { exact } from '../../../engine/base/quantity.ts';
import { openOuting } from '../../../engine/outing/open.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import { askBalance } from '../../../engine/questions/balance/ask.ts';
import type { NearestClimb } from '../../../engine/questions/balance/climbing.ts';
import { nadalLimit } from '../../../engine/questions/balance/flange.ts';
import { PLAUSIBLE_FLANGE, UNLUCKY_FLANGE } from '../../../engine/questions/balance/limits.ts';
import type { Finding } from '../../../engine/questions/finding.ts';
import { gridOf } from '../../../engine/questions/speed/map.ts';
import type { Flange, Vehicle } from '../../../engine/things/vehicle/types.ts';
import { readOuting } from '../../../papers/index.ts';
import { tellFinding } from '../../../words/finding.ts';
import { bentLine, car, person } from '../../support/balance.ts';
import { factOf } from '../../support/facts.ts';
import { drawer, randomOuting, randomVehicle } from '../../support/random-outings.ts';

const examples = new URL('../../../examples/', import.meta.url).pathname;

async function example(name: string): Promise<Outing> {
  const path = `${examples}${name}.json`;
  const read = await readOuting({ path, content: await readFile(path) }, async (p) =>
    readFile(p).catch(() => undefined),
  );
  if (!read.ok) throw new Error(name);
  return read.value;
}

const withFlange = (o: Outing, flange?: Flange): Outing => ({
  ...o,
  train: {
    ...o.train,
    vehicles: o.train.vehicles.map(({ flange: _, ...v }) => (flange ? { ...v, flange } : v)),
  },
});

const fast = { remedies: false, counts: false };
const ofFlange = (findings: readonly Finding[]): Finding[] =>
  findings.filter((f) => f.code.startsWith('flange') || factOf(f, 'reason') === 'flange');

describe('shipped outings without flange angles', () => {
  for (const name of ['steam-light', 'heavy-air', 'battery-vacuum', 'too-long-wet', 'brake-not-measured']) {
    it(`${name} is answered as with them, and the angle is noted as not measured`, async () => {
      const o = await example(name);
      const bare = answerOuting(withFlange(o), fast);
      expect(bare.verdict).toBe(answerOuting(o, fast).verdict);
      const said = ofFlange(bare.findings);
      expect(said.map((f) => f.code)).toContain('flange-shape-unknown');
      for (const f of said) {
        expect(f.severity).toBe('notes');
        expect(f.sure).toBe('assumed');
        expect(f.measure).toBe('vehicle.flange.angle');
      }
    });
  }
});

const engine: Vehicle = { ...randomVehicle(drawer(3), 'engine', true), centreHeight: exact(0.3) };
const outing = (vehicle: Vehicle, radius: number, cant = 0): Outing => ({
  ...randomOuting(1, 1),
  line: {
    ...bentLine(radius),
    twist: 0.002,
    ...(cant
      ? { cants: [75, 80, 120, 125].map((at, i) => ({ at, cant: i === 1 || i === 2 ? cant : 0 })) }
      : {}),
  },
  train: {
    name: 'test',
    vehicles: [{ ...engine, flange: { angle: 1.3, frictionHigh: 0.2 } }, vehicle],
    pipeBrokenAfter: [],
    chainsFastened: true,
  },
  riders: [1, 2, 3, 4].map((i) => person(`${i}`, 75, { vehicle: 'car', seat: `${i}` })),
  direction: 'forward',
  plannedSpeed: 2.5,
});
const base = car(drawer(3));
/** Rusty rail: not even a plausible flange holds surely. */
const bare: Vehicle = { ...base, flange: { frictionHigh: 0.6 } };
const ask = (o: Outing) => {
  const context = openOuting(o);
  return askBalance(context, gridOf(context.line.length));
};
const used = (c: NearestClimb | undefined): number => (c ? c.found / c.limit : 0);
const of35 = { ...base, flange: { angle: (35 * Math.PI) / 180, frictionHigh: 0.5 } };

describe('a flange that nobody measured', () => {
  it('asks where one in a hundred would climb, and never sets a speed', () => {
    const o = outing(bare, 14);
    const { findings, data } = ask(o);
    expect(used(data.flanges.unmeasured)).toBeGreaterThan(1);
    const asked = findings.find((f) => f.code === 'flange-shape-unknown');
    expect(asked).toMatchObject({ severity: 'unknown', sure: 'assumed', measure: 'vehicle.flange.angle' });
    expect(data.flanges.ceiling.by).not.toContain(1);
    const answer = answerOuting(o, fast);
    expect(ofFlange(answer.findings).filter((f) => f.severity === 'forbids')).toEqual([]);
  });

  it('asks though a flange of another vehicle that was measured is nearer to its limit', () => {
    const o = outing(bare, 14);
    const both = {
      ...o,
      train: { ...o.train, vehicles: [o.train.vehicles[0], { ...of35, id: 'other' }, bare] },
    };
    const { findings } = ask(both);
    expect(findings.map((f) => f.code)).toContain('flange-may-climb');
    expect(findings).toContainEqual(
      expect.objectContaining({ code: 'flange-shape-unknown', severity: 'unknown' }),
    );
  });
});

describe('a measured flange', () => {
  it('that a slower run would hold limits, and the speed is said', () => {
    const flange = { angle: (34 * Math.PI) / 180, frictionHigh: 0.3 };
    const speeds = [0.5, 1, 2, 2.5, 3].map((plannedSpeed) => {
      const o = { ...outing({ ...base, flange }, 20), plannedSpeed };
      const { findings, data } = ask(o);
      const climb = findings.find((f) => f.code === 'flange-may-climb' && factOf(f, 'way') === 'running');
      return { climb, ceiling: Math.min(...data.flanges.ceiling.speed), plannedSpeed };
    });
    const over = speeds.filter((s) => s.climb);
    expect(over.length).toBeGreaterThan(0);
    expect(over.length).toBeLessThan(speeds.length);
    for (const { climb, ceiling, plannedSpeed } of over) {
      expect(ceiling).toBeGreaterThan(0);
      expect(ceiling).toBeLessThan(plannedSpeed);
      expect(climb?.severity).toBe('limits');
    }
  });

  it('that would climb only at a creep on the cant limits, and the run is not forbidden', () => {
    const found = [0.02, 0.03, 0.04].flatMap((cant) =>
      [50, 55, 60, 65].map((degrees) => {
        const flange = { angle: (degrees * Math.PI) / 180, frictionHigh: 0.45 };
        const { findings, data } = ask({ ...outing({ ...base, flange }, 12, cant), plannedSpeed: 3.2 });
        return { findings, ...data.flanges };
      }),
    );
    const only = found.filter((f) => used(f.nearest.creeping) > 1 && used(f.nearest.running) < 1);
    expect(only.length).toBeGreaterThan(0);
    for (const { findings, ceiling } of only) {
      const said = ofFlange(findings);
      expect(said.map((f) => [factOf(f, 'way'), f.severity])).toEqual([['creeping', 'limits']]);
      expect(Math.min(...ceiling.speed)).toBeGreaterThan(0);
    }
  });

  it('that climbs at any speed forbids, in words of its own', () => {
    const answer = answerOuting(outing(of35, 8), fast);
    const none = answer.findings.find((f) => f.code === 'cannot-stop' && factOf(f, 'reason') === 'flange');
    expect(none?.severity).toBe('forbids');
    const o = outing(of35, 8);
    const told = none && tellFinding(none, { wording: 'us', system: 'imperial', outing: o } as never);
    expect(told?.what).toMatch(/flange/);
    expect(`${told?.what} ${told?.why}`).not.toMatch(/balance/);
  });
});

describe('the unlucky flange', () => {
  const random = drawer(11);
  const triangle = ({ low, value, high }: { low: number; value: number; high: number }): number => {
    const u = random(0, 1);
    const knee = (value - low) / (high - low);
    return u < knee
      ? low + Math.sqrt(u * (high - low) * (value - low))
      : high - Math.sqrt((1 - u) * (high - low) * (high - value));
  };
  const { angle, friction } = PLAUSIBLE_FLANGE;
  const draws = Array.from({ length: 40_000 }, () => ({ a: triangle(angle), f: triangle(friction) }));
  const quantile = (of: number[]): number => of.sort((a, b) => a - b)[Math.floor(0.99 * of.length)];

  it.each([0, 0.1, 0.2, 0.3, 0.5])('with an outward force of %f of the load is one in a hundred', (h) => {
    const usedBy = (a: number, f: number): number => (h + f) / nadalLimit(a, f);
    const s = UNLUCKY_FLANGE.together;
    const own = usedBy(
      angle.value - s * (angle.value - angle.low),
      friction.value + s * (friction.high - friction.value),
    );
    const drawn = quantile(draws.map(({ a, f }) => usedBy(a, f)));
    expect(own / drawn).toBeGreaterThan(0.995);
    expect(own / drawn).toBeLessThan(1.02);
  });

  it('of angle alone is one in a hundred', () => {
    const drawn = -quantile(draws.map(({ a }) => -a));
    const own = angle.value - UNLUCKY_FLANGE.angleAlone * (angle.value - angle.low);
    expect(Math.abs(own - drawn) * (180 / Math.PI)).toBeLessThan(0.15);
  });
});
