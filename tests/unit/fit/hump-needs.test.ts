/** The least radius of a hump that a part or a rigid group needs: x·(guides − x) ÷ 2·room, by hand. */
import { describe, expect, it } from 'vitest';
import type { HumpFit } from '../../../engine/questions/humps/look.ts';
import { needsOf } from '../../../engine/questions/humps/needs.ts';
import { plain } from '../../support/rules.ts';

const [, car] = plain(1).train.vehicles;
const vehicle = { ...car, length: 3, groups: car.groups.map((g, i) => ({ ...g, at: i === 0 ? 0.5 : 2.5 })) };

const needs = (fit: object) =>
  needsOf(
    [vehicle],
    [{ vehicle: 'c', name: 'Car', parts: [], groups: [], most: null, ...fit } as HumpFit],
    0.005,
  );
const part = (along: number) => needs({ parts: [{ part: 'step', along, height: 0.04, sink: 0.015 }] });

describe('a low part', () => {
  // 20 mm are left above the room wanted; midway between guides 2 m apart: 1 · 1 ÷ (2 · 0.02).
  it('between the guides, of a crest', () => {
    expect(part(1.5)).toEqual([
      { vehicle: 'Car', what: 'step', lie: 'crest', radius: expect.closeTo(25, 9) },
    ]);
  });
  it('at a guide, of a crest; beyond it, of a sag', () => {
    expect([0.5, 2.5, 0.25, 2.75].map((at) => part(at)[0])).toMatchObject([
      { lie: 'crest', radius: 0 },
      { lie: 'crest', radius: 0 },
      { lie: 'sag', radius: expect.closeTo((0.25 * 2.25) / 0.04, 9) },
      { lie: 'sag', radius: expect.closeTo((0.25 * 2.25) / 0.04, 9) },
    ]);
  });
});

describe('a rigid group', () => {
  const group = (travel?: number) => needs({ groups: [{ group: 'bogie', wheelBase: 1, travel }] });
  it('by how far an axle comes down', () =>
    // 0.5 · 0.5 ÷ (2 · 0.01)
    expect(group(0.01)).toEqual([
      { vehicle: 'Car', what: 'bogie', lie: 'both', radius: expect.closeTo(12.5, 9) },
    ]));
  it('asks nothing where that is not known, or is no matter', () =>
    expect([...group(), ...group(Infinity)]).toEqual([]));
});
