/** What a test told together is written so, read so, and stays so when the paper is changed. */
import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { applyToVehicle } from '../../../desk/measured/apply.ts';
import { measured } from '../../../desk/measured/measure.ts';
import type { SharedFit } from '../../../engine/base/quantity.ts';
import { applyChange } from '../../../engine/outing/change.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import { changedPaper } from '../../../papers/changed.ts';
import { checkFile } from '../../../papers/check.ts';
import { readOuting, writeFile } from '../../../papers/index.ts';
import { readTest } from '../../../papers/read-test.ts';
import { examplePaper } from '../../support/papers.ts';

type Json = Record<string, unknown>;

async function read(paper: Json): Promise<Outing> {
  const found = await readOuting({ path: 'x.json', content: writeFile(paper) }, async () => undefined);
  if (!found.ok) throw new Error(found.problems.map((p) => p.message).join('; '));
  return found.value;
}

async function weighed(): Promise<Json> {
  const content = readFileSync(new URL('../../../examples/tests/weighing.json', import.meta.url), 'utf8');
  const test = await readTest({ path: 't.json', content }, async () => undefined);
  if (!test.ok) throw new Error('weighing');
  const made = measured(test.value);
  if (!made.ok) throw new Error(made.code);
  const paper = await examplePaper('busy-afternoon');
  const train = paper['train'] as Json;
  const vehicles = (train['vehicles'] as Json[]).map((m) => ({
    ...m,
    vehicle: applyToVehicle(m['vehicle'] as Json, JSON.parse(content) as Json, made.results).paper,
  }));
  return { ...paper, train: { ...train, vehicles } };
}

it('round trip', async () => {
  const paper = await weighed();
  const outing = await read(paper);
  const fits = ({ train }: Outing): (SharedFit | undefined)[] =>
    train.vehicles.map((v) => v.centreHeight?.fit);
  const [height] = fits(outing) as SharedFit[];
  expect(height.id).toContain('Vacuum car on two scales 2026-05-17');
  expect(height.factors).toHaveLength(2);
  const square = height.factors.reduce((sum, f) => sum + f * f, 0);
  expect(square).toBeCloseTo(1, 3);
  const after = applyChange(outing, { kind: 'fewer-cars', leave: ['car-4'] });
  expect(fits(await read(changedPaper(paper, outing, after)))).toEqual(fits(after));
});

it.each([
  { id: 'a' },
  { id: 3, factors: [1] },
  { id: 'a', factors: [] },
  { id: 'a', factors: [0] },
  { id: 'a', factors: ['1'] },
  { id: 'a', factors: [2] },
  { id: 'a', factors: [1], more: 1 },
  7,
])('a fit that is none is refused: %o', async (fit) => {
  const paper = (await examplePaper('busy-afternoon'))['train'] as { vehicles: { vehicle: Json }[] };
  const { vehicle } = paper.vehicles[0];
  expect(checkFile('vehicle', { ...vehicle, tare: { value: '300 kg', fit } }).ok).toBe(false);
});
