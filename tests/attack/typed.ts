/** What people type: the replies about a new train, and the figures of a sum. */
import { grow } from '../../desk/new/make.ts';
import { fieldKeys } from '../../desk/new/questions.ts';
import { answerSum, sums } from '../../desk/sums.ts';
import type { SumSymbol } from '../../engine/base/sum.ts';
import { readOuting } from '../../papers/index.ts';
import { printQuantity } from '../../units/index.ts';
import { all } from '../support/four-replies.ts';
import { type Chance, changedText } from './mutate.ts';
import type { Outcome } from './targets.ts';

const systems = ['imperial', 'metric'] as const;

const words = [
  '',
  '0',
  '-3',
  'yes',
  'none',
  'steam',
  'greasy',
  '1e308',
  '7 1/4 in',
  '1 in 80',
  '5 %',
  '½',
  'x',
];

/** One to three replies changed; what is made of them is a paper that can be read, or a fault in words. */
export async function replies(chance: Chance): Promise<Outcome> {
  const typed: Record<string, string> = { ...all };
  for (let left = 1 + chance.index(3); left > 0; left--) {
    const key = chance.one(fieldKeys);
    typed[key] = chance.share() < 0.5 ? chance.one(words) : changedText(typed[key] ?? '12', chance);
  }
  const { faults, paper } = grow(typed, chance.share() < 0.9 ? 'imperial' : 'metric');
  const poor = faults.find(({ found, expected }) => found === '' || expected === '');
  if (poor) return { end: 'refused', crash: `a poor refusal: ${JSON.stringify(poor)}` };
  if (!paper) return { end: 'refused' };
  const read = await readOuting({ path: 'own', content: JSON.stringify(paper) }, async () => undefined);
  return { end: read.ok ? 'accepted' : 'refused' };
}

/** Within its range as a rule, in its own unit; the change comes after. */
function figure({ kind, low = 0, high = 10, whole = false }: SumSymbol, chance: Chance): string {
  const value = low + chance.share() ** 3 * (Math.min(high, 1e6) - low);
  return printQuantity(whole ? Math.round(value) : value, kind, { system: chance.one(systems) });
}

export async function sum(chance: Chance): Promise<Outcome> {
  const { id, inputs } = chance.one(sums);
  const written = inputs.map((input): [string, string] => [
    chance.share() < 0.02 ? 'other' : input.symbol,
    chance.share() < 0.2 ? changedText(figure(input, chance), chance) : figure(input, chance),
  ]);
  const reply = answerSum(id, Object.fromEntries(written), chance.one(systems));
  if (!reply.ok) {
    const poor = reply.faults.length === 0 || reply.faults.some((f) => f.found === '' || f.expected === '');
    return poor ? { end: 'refused', crash: `a poor refusal: ${id}` } : { end: 'refused' };
  }
  const odd = reply.answer.results.find((r) => !Number.isFinite(r.si) || !Number.isFinite(r.value));
  return { end: 'accepted', ...(odd ? { notFinite: `${id}: ${odd.symbol} = ${odd.si}` } : {}) };
}
