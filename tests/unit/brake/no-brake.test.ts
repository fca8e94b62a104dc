/** A train on which no brake answers the driver may not leave, however level its line. */
import { expect, it } from 'vitest';
import { answerOnly } from '../../../engine/answer/answer.ts';
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
