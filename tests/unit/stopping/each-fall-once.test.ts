/** A fall that the brake does not hold is one finding, though from some place on the way to it a stop may end. */
import { expect, it } from 'vitest';
import { amount } from '../../../engine/base/quantity.ts';
import type { Finding } from '../../../engine/questions/finding.ts';
import { makeFinding } from '../../../engine/questions/make.ts';
import { eachFallOnce } from '../../../engine/questions/speed/ask.ts';

const TRAIN = 20;

const fall = (from: number, to: number, margin: number): Finding =>
  makeFinding('brake-does-not-hold-fall', 'forbids', 'stopping', {
    where: { from, to },
    found: amount(90, 'force'),
    required: amount(100, 'force'),
    margin,
    facts: { at: amount(to, 'length'), ratio: amount(0.01, 'grade'), grade: amount(0.02, 'grade') },
    source: 'made up',
    sure: 'assumed',
  });

const told = (...findings: Finding[]): Finding[] =>
  findings.reduce<Finding[]>((all, next) => eachFallOnce(all, next, TRAIN), []);

it('two stretches with less than the train between them are one, with the worse figures', () => {
  const [one, ...more] = told(fall(100, 104, -0.05), fall(106, 250, -0.1));
  expect(more).toEqual([]);
  expect(one.where).toEqual({ from: 100, to: 250 });
  expect(one.margin).toBe(-0.1);
});

it('two falls farther apart are two', () =>
  expect(told(fall(100, 150, -0.1), fall(180, 250, -0.1)).length).toBe(2));
