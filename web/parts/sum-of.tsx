/** The sum behind a finding: its equation, and the way to its page with the numbers put in. */
import type { SumRef } from '../../engine/finding/types.ts';
import { findSum } from '../../engine/sums/register.ts';
import type { Voice } from '../../words/voice.ts';
import { sumLink } from './sum-link.ts';

export function SumOf({ sum: { id, inputs }, voice }: { readonly sum: SumRef; readonly voice: Voice }) {
  const sum = findSum(id);
  if (!sum) return null;
  return (
    <>
      <dt>sum</dt>
      <dd>
        <a href={sumLink(sum.id, inputs, voice.system)}>{sum.id}</a>: {sum.equation}
      </dd>
    </>
  );
}
