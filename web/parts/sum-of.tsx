/** The sum behind a finding: equation, numbers put in and what comes out, and the way to its page with them. */

import { tellSum } from '../../desk/told-sum.ts';
import type { SumRef } from '../../engine/base/sum.ts';
import type { Voice } from '../../words/voice.ts';
import { sumLink } from './sum-link.ts';

export function SumOf({ sum, voice }: { readonly sum: SumRef; readonly voice: Voice }) {
  const told = tellSum(sum, voice);
  if (!told) return null;
  return (
    <>
      <dt>sum</dt>
      <dd class="sum-of">
        <a href={sumLink(told.id, sum.inputs, voice.system)}>{told.title}</a> {told.note}
        <p>{told.equation}</p>
        <p>{told.inputs.join(', ')}</p>
        <p>
          <strong>{told.results.join(', ')}</strong>
        </p>
        <p>Source: {told.source}.</p>
      </dd>
    </>
  );
}
