import { describe, expect, it } from 'vitest';
import { assumedValues } from '../../../../data/index.ts';
import { blockMaterials } from '../../../../engine/things/vehicle/types.ts';
import { printedIn } from '../../../support/measured.ts';

const wet = assumedValues.blockWet;

const tables = printedIn(import.meta.url, 'B');
const abstract = printedIn(import.meta.url, 'A');

describe('wet blocks', () => {
  it('composition loses at most half: 0.2 of 0.4', () =>
    tables.figure('composition, least', wet.composition.low, 0.2 / 0.4, 0));

  it('wood keeps 0.2 of 0.2 to 0.6, likely of their middle', () => {
    tables.figure('wood, least', wet.wood.low, 0.2 / 0.6, 0.005);
    tables.figure('wood', wet.wood.value, 0.2 / 0.4, 0);
    tables.figure('wood, most', wet.wood.high, 0.2 / 0.2, 0);
  });

  it('steel on steel keeps 0.6, at least 0.2 of 0.5', () => {
    tables.figure('steel', wet.steel.value, 0.3 / 0.5, 0);
    tables.figure('steel, least', wet.steel.low, 0.2 / 0.5, 0);
    abstract.figure('cast iron, least', wet['cast-iron'].low, 0.6, 0);
  });

  it('no material is better wet than dry', () => {
    for (const material of blockMaterials) expect(wet[material].high, material).toBeLessThanOrEqual(1);
  });
});
