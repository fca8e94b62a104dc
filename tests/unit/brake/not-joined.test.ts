/** Brakes that the driver's handle does not reach: one line for the train, and what clears it leaves all of them. */
import { describe, expect, it } from 'vitest';
import { answerOuting } from '../../../engine/answer/complete.ts';
import { applyChange } from '../../../engine/outing/change.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import { tellFinding } from '../../../words/finding.ts';
import { brakedTrain } from '../../support/braked-trains.ts';
import { altered, plain } from '../../support/rules.ts';

const answer = (outing: Outing) =>
  answerOuting(outing, { counts: false, samples: 40, step: 1, couplerRuns: 3 });
const findingsOf = (outing: Outing, code: string) => answer(outing).findings.filter((f) => f.code === code);
const vacuum = plain(4, { train: brakedTrain('automatic-vacuum', 4) });

describe('brakes of another kind', () => {
  const air = brakedTrain('straight-air', 1).vehicles[1].brakes;
  const mixed = altered(altered(vacuum, 2, { brakes: air }), 4, { brakes: air });
  const code = 'brake-kinds-do-not-work-together';

  it('on two cars are one line that names both', () => {
    const [only, ...none] = findingsOf(mixed, code);
    expect(none).toEqual([]);
    expect(only).toMatchObject({
      severity: 'limits',
      where: {},
      facts: { kind: 'straight-air', vehicles: 'car2, car4' },
    });
    const { what } = tellFinding(only, { wording: 'us', system: 'imperial', outing: mixed } as never);
    expect(what).toBe(
      'The straight air brake of car2, car4 is of another kind than the one the engine works.',
    );
  });

  it('are cleared only when all are left behind', () => {
    const [{ remedies }] = findingsOf(mixed, code);
    const left = remedies.flatMap(({ change }) => (change.kind === 'fewer-cars' ? [change.leave] : []));
    expect(left).toEqual([['car2', 'car4']]);
    for (const { change } of remedies) expect(findingsOf(applyChange(mixed, change), code)).toEqual([]);
  });
});

describe('a pipe that is broken', () => {
  const code = 'brake-pipe-broken';
  const broken = { ...vacuum, train: { ...vacuum.train, pipeBrokenAfter: [2] } };

  it('behind the second car is one line that names those behind it', () =>
    expect(findingsOf(broken, code)).toMatchObject([{ facts: { vehicles: 'car3, car4' } }]));
  it('in a sound train is none', () => expect(findingsOf(vacuum, code)).toEqual([]));
  it('is cleared by what is proposed', () => {
    const [{ remedies }] = findingsOf(broken, code);
    expect(remedies.length).toBeGreaterThan(0);
    for (const { change } of remedies) expect(findingsOf(applyChange(broken, change), code)).toEqual([]);
  });
});
