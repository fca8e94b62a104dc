/** What a paper does not say: taken on the side that is safe, listed, and asked for where it could forbid. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { answerOnly } from '../../../engine/answer/answer.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import { bundleOuting, readOuting } from '../../../papers/index.ts';

const examples = new URL('../../../examples/', import.meta.url).pathname;
const load = async (path: string) => readFileSync(path, 'utf8');

type Json = any;

async function changed(change: (outing: Json) => void, example = 'heavy-air'): Promise<Outing> {
  const path = `${examples}${example}.json`;
  const bundle = await bundleOuting({ path, content: await load(path) }, load);
  if (!bundle.ok) throw new Error('the example is read');
  const json = structuredClone(bundle.value) as Json;
  change(json);
  const read = await readOuting({ path: 'x.json', content: JSON.stringify(json) }, load);
  if (!read.ok) throw new Error(read.problems.map((p) => p.message).join('\n'));
  return read.value;
}

const keys = (o: Outing): string[] => o.assumptions.map((a) => a.key);

describe('chains of which nobody said that they are fastened', () => {
  it('count as loose, are listed, and are asked for where the host wants them', async () => {
    const asked = await changed((o) => {
      delete o.train.chainsFastened;
      o.host.chainsRequired = { value: true, source: 'Rule 1' };
    });
    expect(asked.train.chainsFastened).toBeUndefined();
    expect(keys(asked)).toContain('chains-fastened');
    const { findings, verdict } = answerOnly(asked);
    const found = findings.find((f) => f.code === 'chains-missing');
    expect(found).toMatchObject({ severity: 'unknown', measure: 'train.chainsFastened' });
    expect(['unknown', 'hold']).toContain(verdict);
  });

  it('are asked for where a tail without them would run away', async () => {
    const severity = async (said?: boolean) => {
      const o = await changed((json) => {
        json.train.chainsFastened = said;
      }, 'brake-not-measured');
      return answerOnly(o).findings.find((f) => f.code === 'tail-runs-away');
    };
    expect(await severity()).toMatchObject({ severity: 'unknown', measure: 'train.chainsFastened' });
    expect((await severity(false))?.severity).toBe('forbids');
    expect(await severity(true)).toBeUndefined();
  });

  it('are no question where somebody said yes, and forbid where somebody said no', async () => {
    const host = { chainsRequired: { value: true, source: 'Rule 1' } };
    const codes = async (fastened: boolean) => {
      const o = await changed((json) => {
        json.train.chainsFastened = fastened;
        Object.assign(json.host, host);
      });
      return answerOnly(o).findings.filter((f) => f.code === 'chains-missing');
    };
    expect(await codes(true)).toEqual([]);
    expect((await codes(false)).map((f) => f.severity)).toEqual(['forbids']);
  });
});

describe('other silence', () => {
  it('axles, slack of a chain and equalised trucks are assumed and listed', async () => {
    const o = await changed((json) => {
      const car = json.train.vehicles[1].vehicle;
      delete car.axleGroups[0].axles;
      delete car.rear.chain?.slack;
      car.front = { chain: { size: '1/4 in' } };
      car.suspension = { twistFreedom: '10 mm' };
    });
    expect(keys(o)).toEqual(expect.arrayContaining(['axles', 'chain-slack', 'equalised']));
    const car = o.train.vehicles[1];
    expect([car.groups[0].axles, car.front.chain?.slack, car.suspension?.equalised]).toEqual([
      2,
      0.05,
      false,
    ]);
  });

  it('a train of more than 200 vehicles is refused', async () => {
    const many = changed((json) => {
      json.train.vehicles = Array.from({ length: 6 }, (_, i) => ({
        ...json.train.vehicles[1],
        id: `c${i}`,
        count: 40,
      }));
    });
    await expect(many).rejects.toThrow('found 240 vehicles; expected at most 200 in all');
  });
});

describe('the wheel base of the only axles that a vehicle has', () => {
  const onOneGroup = (group: Json) =>
    changed((o) => {
      const { vehicle } = o.train.vehicles[1];
      vehicle.axleGroups = [{ name: 'axles', at: '3 ft', ...group }];
      for (const brake of vehicle.brakes) delete brake.on;
    });
  it('is asked for: without it the car would feel no twist, and no weight would move under the brake', async () => {
    await expect(onOneGroup({ axles: 2 })).rejects.toThrow(/distance between its outer axles/);
    await expect(onOneGroup({})).rejects.toThrow(/distance between its outer axles/);
    await expect(onOneGroup({ axles: 2, wheelBase: '0 in' })).rejects.toThrow(/distance between its outer/);
  });
  it('is none of a single axle, and is taken where stated', async () => {
    const baseOf = async (group: Json) => (await onOneGroup(group)).train.vehicles[1].groups[0].wheelBase;
    expect(await baseOf({ axles: 1 })).toBe(0);
    expect(await baseOf({ axles: 2, wheelBase: '4 ft' })).toBeCloseTo(4 * 0.3048, 9);
  });
});
