/** A sum's equation says in its letters what the sum reckons, and every letter is explained. */
import { describe, expect, it } from 'vitest';
import { answerSum } from '../../../desk/sums.ts';
import { constants, lettersOf } from '../../../engine/sums/letters.ts';
import { evaluateSum, sums } from '../../../engine/sums/register.ts';
import { sumWords } from '../../../words/sums.ts';
import { checked, lettersIn, partsOf } from '../../support/equation.ts';

/** By table or integral: their equations name what cannot be written in a line. */
const byTable = ['block-friction', 'chain-working-load', 'child-weight', 'vessel-emptying', 'vessel-filling'];

const exampleOf = (id: string): Record<string, string> =>
  Object.fromEntries(
    sumWords[id].example.split(' ').map((p) => p.split(/=(.*)/s).slice(0, 2) as [string, string]),
  );

describe.each(sums)('$id', (sum) => {
  const letters = lettersOf(sum);

  it('explains each letter of its equation once, and no other', () => {
    const explained = letters.map(({ letter }) => letter);
    expect([...explained].sort()).toEqual(lettersIn(sum.equation).sort());
    expect(new Set(letters.map(({ name }) => name)).size).toBe(letters.length);
  });

  it('has a letter for every input and every result', () => {
    const named = letters.map(({ name }) => name);
    expect([...sum.inputs, ...sum.results].map((s) => s.symbol).filter((s) => !named.includes(s))).toEqual(
      [],
    );
  });

  it('says what each step between is: on the left of a part, or in words', () => {
    const left = partsOf(sum.equation).map((part) => part.split(' = ')[0]);
    for (const { letter } of letters.filter(({ stands }) => stands === 'between'))
      expect(left.includes(letter) || lettersIn(sum.remark ?? '').includes(letter), letter).toBe(true);
  });

  if (byTable.includes(sum.id)) return;
  it('reckons what its equation says', () => {
    const reply = answerSum(sum.id, exampleOf(sum.id), 'metric');
    if (!reply.ok) throw new Error(JSON.stringify(reply.faults));
    // A little off the example, so that nothing agrees by a round figure.
    const { inputs } = reply.answer;
    const nudged = Object.fromEntries(
      sum.inputs.map(({ symbol, whole, high }) => {
        const value = inputs[symbol];
        const more = value * 1.003;
        return [symbol, whole || (high !== undefined && more > high) ? value : more];
      }),
    );
    for (const given of [inputs, nudged]) {
      const outcome = evaluateSum(sum, given);
      if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
      const parts = checked(sum, given, outcome.values);
      expect(parts.length).toBeGreaterThan(0);
      for (const { part, left, right } of parts)
        expect(Math.abs(left - right), `${part}: ${left}, ${right}`).toBeLessThanOrEqual(
          1e-4 * Math.max(Math.abs(left), 1e-9),
        );
      // Every result stands in a part that was looked at.
      const looked = new Set(parts.flatMap(({ part }) => lettersIn(part)));
      for (const { letter, stands, name } of letters)
        if (stands === 'result') expect(looked.has(letter), name).toBe(true);
    }
  });
});

it('knows no constant that no sum has', () => {
  const used = new Set(sums.flatMap((s) => lettersOf(s).map(({ name }) => name)));
  expect(Object.keys(constants).filter((name) => !used.has(name))).toEqual([]);
});
