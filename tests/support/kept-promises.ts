/**
 * What remedies and ladders promise, held against the files: each change is written into the outing's paper, and the
 * paper is read and asked anew. Runs in a bundle (tests/support/bundled.ts).
 */
import { firstAnswer } from '../../engine/answer/answer.ts';
import { inquire } from '../../engine/answer/inquiry.ts';
import { firstLadder, type Ladder, ladders } from '../../engine/answer/ladder.ts';
import { withRemedies } from '../../engine/answer/remedies.ts';
import { applyChange, type Change } from '../../engine/outing/change.ts';
import type { Outing } from '../../engine/outing/types.ts';
import type { Care } from '../../engine/questions/question.ts';
import { changedPaper } from '../../papers/changed.ts';
import { readOuting } from '../../papers/index.ts';
import { writeFile } from '../../papers/write.ts';
import { drawer } from './random-outings.ts';

type Json = Record<string, unknown>;

const quick: Care = { step: 1, samples: 40, couplerRuns: 3 };

async function read(paper: Json): Promise<Outing> {
  const found = await readOuting({ path: 'outing.json', content: writeFile(paper) }, async () => undefined);
  if (!found.ok) throw new Error(found.problems.map((p) => p.message).join('\n'));
  return found.value;
}

export const wordOf = (outing: Outing): string => firstAnswer(inquire(outing, quick)).verdict;

export const laddersOf = (outing: Outing): Ladder[] => [...ladders(inquire(outing, quick))];

/** Promises of one outing that the files do not keep, and how many there were. */
export async function brokenPromises(
  paper: Json,
): Promise<{ readonly broken: string[]; readonly promised: number }> {
  const outing = await read(paper);
  const inquiry = inquire(outing, quick);
  const answer = withRemedies(inquiry, firstAnswer(inquiry));
  const steps = firstLadder(inquiry).steps;
  const promises = [
    ...answer.findings.flatMap((f) => f.remedies.map(({ change, verdict }) => ({ change, verdict }))),
    ...steps.map(({ verdict }, i) => ({
      change: { kind: 'together' as const, changes: steps.slice(0, i + 1).map((s) => s.change) },
      verdict,
    })),
  ];
  const broken: string[] = [];
  for (const { change, verdict } of promises) {
    const anew = wordOf(await read(changedPaper(paper, outing, applyChange(outing, change as Change))));
    if (anew !== verdict) broken.push(`${JSON.stringify(change)}: ${verdict} was promised, ${anew} came`);
  }
  return { broken, promised: promises.length };
}

/** An example made over: other cars, rail, rules, riders, brakes and chains. All made up. */
export function madeOver(examples: readonly Json[], seed: number): Json {
  const draw = drawer(seed);
  const pick = <T>(of: readonly T[]): T => of[Math.min(of.length - 1, Math.floor(draw(0, of.length)))];
  const paper = structuredClone(pick(examples));
  const { vehicles } = paper['train'] as { vehicles: (Json & { vehicle: Json; count?: number })[] };
  const cars = vehicles[vehicles.length - 1];
  const riders = paper['riders'] as Json[];
  const most = Math.max(1, ...riders.map((r) => Number(/-(\d+)$/.exec(String(r['vehicle']))?.[1] ?? 1)));
  const count = most + Math.floor(draw(0, 3));
  cars.count = Math.max(2, count);
  if (draw(0, 1) < 0.3) cars.vehicle['brakes'] = [];
  const rear = cars.vehicle['rear'] as Json;
  if (draw(0, 1) < 0.3) delete rear['chain'];
  if (draw(0, 1) < 0.3) (paper['train'] as Json)['chainsFastened'] = draw(0, 1) < 0.5;
  if (draw(0, 1) < 0.3) paper['direction'] = 'reverse';
  (paper['conditions'] as Json)['railState'] = pick(['dry', 'damp', 'wet', 'greasy', 'sanded']);
  paper['plannedSpeed'] = `${draw(2, 9).toFixed(1)} mph`;
  const host = paper['host'] as Json;
  if (draw(0, 1) < 0.5) host['mostCars'] = { value: pick([2, 3, 4, 5]), source: 'made up' };
  if (draw(0, 1) < 0.3) host['brakedShare'] = { value: 0.5, source: 'made up' };
  for (const rider of riders)
    if (rider['duty'] === undefined && draw(0, 1) < 0.2) {
      delete rider['typical'];
      rider['weight'] = `${draw(60, 330).toFixed(0)} lb`;
    }
  return paper;
}
