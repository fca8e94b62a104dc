/** What was asked later is never overwritten by what was asked before it and came after. */
import { expect, it } from 'vitest';
import { inTurn } from '../../../web/state/in-turn.ts';

it('the older answer that comes last is not told', () => {
  const asked = inTurn();
  const [first, second, third] = [asked(), asked(), asked()];
  expect([second(), first(), third()]).toEqual([true, false, true]);
});

it('each that comes in its turn is', () => {
  const asked = inTurn();
  const [first, second] = [asked(), asked()];
  expect([first(), second(), asked()()]).toEqual([true, true, true]);
});
