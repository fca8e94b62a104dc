/** A train on which no brake answers the driver may not leave, however level its line. */
import { expect, it } from 'vitest';
import { sentence } from '../../../desk/sentence.ts';
import { answerOnly } from '../../../engine/answer/answer.ts';
import type { Answer, CarCount } from '../../../engine/answer/types.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import { plain } from '../../support/rules.ts';

const codes = (outing: Outing): string[] => answerOnly(outing).findings.map((f) => f.code);
const braked = (keep: boolean): Outing => {
  const outing = plain(2);
  const vehicles = outing.train.vehicles.map((v) => (keep ? v : { ...v, brakes: [] }));
  return { ...outing, train: { ...outing.train, vehicles } };
};

it('holds without any brake', () => {
  expect(codes(braked(false))).toContain('no-brake-answers');
  expect(answerOnly(braked(false)).verdict).toBe('hold');
});

it('does not say so of a train that brakes, nor where a force is only not known', () => {
  expect(codes(braked(true))).not.toContain('no-brake-answers');
  const outing = braked(true);
  const vehicles = outing.train.vehicles.map((v) => ({
    ...v,
    brakes: v.brakes.map(({ rigging: _rigging, force: _force, ...gear }) => gear),
  }));
  expect(codes({ ...outing, train: { ...outing.train, vehicles } })).not.toContain('no-brake-answers');
});

it('says why once, in the sentence under the word: not as the reason of the count again', () => {
  const outing = braked(false);
  const { railState } = outing.conditions;
  const counted = { railState, least: null, by: 'stopped', leastSets: { what: 'no-brake' } } as CarCount;
  const answer = { ...answerOnly(outing), cars: [counted] };
  const told = (of: Answer): string => sentence(of, { system: 'imperial', wording: 'us', outing });
  expect(told(answer)).toBe('The driver has no brake at all; no number of cars.');
  const others = answer.findings.filter((f) => f.code !== 'no-brake-answers');
  expect(told({ ...answer, findings: others })).toMatch(
    /no number of cars \(the driver has no brake at all\)/,
  );
});
