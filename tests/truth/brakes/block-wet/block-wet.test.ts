import { describe, expect, it } from 'vitest';
import { assumedValues } from '../../../../data/index.ts';
import { blockMaterials } from '../../../../engine/things/vehicle/types.ts';

const wet = assumedValues.blockWet;

describe('wet blocks', () => {
  it('composition loses at most half: 0.2 of 0.4', () => expect(wet.composition.low).toBe(0.2 / 0.4));

  it('wood keeps 0.2 of 0.2 to 0.6, likely of their middle', () => {
    expect(Math.abs(wet.wood.low - 0.2 / 0.6)).toBeLessThan(0.005);
    expect(wet.wood.value).toBe(0.2 / 0.4);
    expect(wet.wood.high).toBe(0.2 / 0.2);
  });

  it('steel on steel keeps 0.6, at least 0.2 of 0.5', () => {
    expect(wet.steel.value).toBe(0.3 / 0.5);
    expect(wet.steel.low).toBe(0.2 / 0.5);
    expect(wet['cast-iron'].low).toBe(0.6);
  });

  it('no material is better wet than dry', () => {
    for (const material of blockMaterials) expect(wet[material].high, material).toBeLessThanOrEqual(1);
  });
});
