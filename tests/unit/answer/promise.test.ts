/** What a remedy promises is what one gets: the word after the change is the word of the changed outing, asked anew. */
import { resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { openOutingFile } from '../../../cli/open.ts';
import { answerOnly } from '../../../engine/answer/answer.ts';
import { answerOuting } from '../../../engine/answer/complete.ts';
import { inquire } from '../../../engine/answer/inquiry.ts';
import { questions } from '../../../engine/answer/questions.ts';
import { applyChange } from '../../../engine/outing/change.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import { figures } from '../../support/asked-anew.ts';
import { full } from '../../support/tier.ts';

const example = (name: string): Promise<Outing> =>
  openOutingFile(resolve(new URL('../../../examples/', import.meta.url).pathname, `${name}.json`));

/** A car whose brake is half described: what it gives cannot be told, and that must not be forgotten by a remedy. */
const halfDescribed = (outing: Outing): Outing => ({
  ...outing,
  host: { ...outing.host, mostCars: { value: 2, source: 'made up' } },
  train: {
    ...outing.train,
    vehicles: outing.train.vehicles.map((v) =>
      v.id === outing.train.vehicles[1].id
        ? {
            ...v,
            brakes: v.brakes.map((b) => {
              if (!b.rigging) return b;
              const { stroke: _left, ...rigging } = b.rigging;
              return { ...b, rigging };
            }),
          }
        : v,
    ),
  },
});

describe('a remedy', () => {
  it('does not forget a brake that is half described', async () => {
    const outing = halfDescribed(await example('battery-vacuum'));
    const { verdict, findings } = answerOuting(outing, { counts: false });
    expect(verdict).toBe('hold');
    const remedies = findings.flatMap((f) => f.remedies);
    expect(remedies.length).toBeGreaterThan(0);
    for (const { change, verdict: promised } of remedies) {
      expect(answerOnly(applyChange(outing, change)).verdict, JSON.stringify(change)).toBe(promised);
    }
  });
});

describe('an inquiry into a changed outing', () => {
  // On a push the same is held of random outings (tests/laws/asked-anew.test.ts).
  it.runIf(full)('says what one begun from nothing says, question for question', async () => {
    const outing = await example('heavy-air');
    const care = { step: 1, samples: 40, couplerRuns: 3 };
    const before = inquire(outing, care);
    for (const question of questions) before.of(question);
    const cars = outing.train.vehicles.slice(-1).map((v) => v.id);
    for (const change of [
      { kind: 'slower-everywhere', speed: 1.5 },
      { kind: 'fewer-cars', leave: cars },
      { kind: 'fewer-riders', leave: outing.riders.slice(-1).map((r) => r.id) },
      { kind: 'rail-state', state: 'sanded' },
      { kind: 'chains' },
    ] as const) {
      const changed = applyChange(outing, change);
      const after = inquire(changed, care, before);
      const anew = inquire(changed, care);
      for (const question of questions) {
        expect(figures(after.of(question)), `${change.kind}: ${question.id}`).toEqual(
          figures(anew.of(question)),
        );
      }
    }
  });
});
