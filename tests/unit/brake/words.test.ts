/** Every finding of the brakes can be said, in every voice, with nothing left blank. */
import { describe, expect, it } from 'vitest';
import { amount, exact } from '../../../engine/base/quantity.ts';
import { openOuting } from '../../../engine/outing/open.ts';
import { askBrakes } from '../../../engine/questions/brakes/ask.ts';
import type { Finding } from '../../../engine/questions/finding.ts';
import { makeFinding } from '../../../engine/questions/make.ts';
import { tellFinding } from '../../../words/finding.ts';
import { brakeWords } from '../../../words/findings/brakes.ts';
import type { Voice } from '../../../words/voice.ts';
import { brakedTrain } from '../../support/braked-trains.ts';
import { randomOuting } from '../../support/random-outings.ts';

const outing = { ...randomOuting(3, 6), train: brakedTrain('automatic-air', 6) };
const voices: Voice[] = (['imperial', 'metric'] as const).flatMap((system) =>
  (['us', 'uk'] as const).map((wording) => ({ system, wording, outing })),
);

function everything(): Finding[] {
  const found = (kind: Parameters<typeof brakedTrain>[0], ...changes: [object?, object?]): Finding[] => {
    const train = brakedTrain(kind, 6, ...changes);
    return [...askBrakes(openOuting({ ...outing, train })).findings];
  };
  const hasty = brakedTrain('straight-air', 6);
  const vehicles = hasty.vehicles.map((v) => ({
    ...v,
    brakes: v.brakes.map((b) => ({ ...b, deadTime: exact(0.01), buildUp: exact(0.01) })),
  }));
  return [
    ...found('automatic-air', { reservoirVolume: 6e-5 }),
    ...found('automatic-air', { reservoirVolume: 4e-3, feedDiameter: 2e-4 }),
    ...found('automatic-air', { reservoirVolume: undefined }),
    ...found('straight-air', { hoseDiameter: 0.003 }, { reservoirVolume: 0.003 }),
    ...found('automatic-vacuum', { leakRate: 50, chamberVolume: 8e-4 }),
    ...found('automatic-vacuum'),
    ...found('simple-vacuum', {}, { rate: 2e-4 }),
    ...found('straight-air', { hoseDiameter: 0.002, chokeDiameter: 0.003 }, { valveDiameter: 0.004 }),
    ...askBrakes(openOuting({ ...outing, train: { ...hasty, vehicles } })).findings,
    makeFinding('supply-loss-unknown', 'limits', 'brakes', {
      where: { vehicle: 'car1' },
      facts: { kind: 'electric', cars: 1, engineFails: 'unknown' },
      source: 'common practice, no source',
    }),
    makeFinding('brake-slow-to-release', 'limits', 'brakes', {
      where: { vehicle: 'car1' },
      required: amount(15, 'time'),
      facts: { kind: 'automatic-air', ends: false },
      source: 'filling of the brake from its parts',
    }),
  ];
}

describe('words of the brakes', () => {
  const findings = everything();

  it('cases cover every code', () => {
    expect([...new Set(findings.map((f) => f.code))].sort()).toEqual(
      expect.arrayContaining(Object.keys(brakeWords).sort()),
    );
  });

  it('nothing is blank, undefined or a bare code', () => {
    for (const voice of voices) {
      for (const finding of findings) {
        const { what, why } = tellFinding(finding, voice);
        for (const sentence of [what, why]) {
          expect(sentence).toMatch(/^\S.*[.]$/);
          expect(sentence).not.toMatch(/undefined|NaN|Infinity|not known| {2}|\(\)/);
        }
        expect(what).not.toContain(finding.code);
      }
    }
  });
});
