/** A train pipe that nobody could lay: the cautious stop is still no shorter than the likely one, at any place. */
import { expect, it } from 'vitest';
import { inquire } from '../../../engine/answer/inquiry.ts';
import { speed } from '../../../engine/questions/speed/question.ts';
import { readOuting } from '../../../papers/index.ts';
import { examplePaper } from '../../support/papers.ts';

it('a pipe volume of 2,500 l', async () => {
  const paper = structuredClone(await examplePaper('heavy-air')) as {
    train: { vehicles: { vehicle: { brakes?: { rigging?: { pipeVolume?: string } }[] } }[] };
  };
  let set = 0;
  for (const { vehicle } of paper.train.vehicles)
    for (const { rigging } of vehicle.brakes ?? [])
      if (rigging?.pipeVolume !== undefined) {
        rigging.pipeVolume = '2500 l';
        set++;
      }
  expect(set).toBeGreaterThan(0);
  const read = await readOuting({ path: 'x', content: JSON.stringify(paper) }, async () => undefined);
  expect(read.ok ? [] : read.problems).toEqual([]);
  if (!read.ok) return;
  const { map } = inquire(read.value, { step: 2, samples: 200 }).of(speed).data;
  expect(map.cautiousStop.findIndex((d, j) => d < map.likelyStop[j])).toBe(-1);
});
