/** What would help one vehicle where it is worst off: ballast, lower seats, less speed. */
import { type BalanceView, whatIf } from '../../../desk/balance.ts';
import { whatIfWords } from '../../../views/tables/balance.ts';
import type { Voice } from '../../../words/voice.ts';
import { useWritten, Written } from './written.tsx';

interface Props {
  readonly view: BalanceView;
  readonly index: number;
  readonly voice: Voice;
}

export function WhatHelps({ view, index, voice }: Props) {
  const metric = voice.system === 'metric';
  const lean = useWritten('length', metric ? '150 mm' : '6 in');
  const height = useWritten('length', metric ? '75 mm' : '3 in');
  const [by, at] = [lean.si, height.si];
  const found = by === undefined || at === undefined ? undefined : whatIf(view, index, by, at);
  return (
    <section class="what-helps">
      <h2>If somebody leans there</h2>
      <div class="fields">
        <Written id="lean-by" label="the heaviest rider's centre of gravity shifts" entry={lean} />
        <Written id="ballast-at" label="ballast could lie, above the rail" entry={height} />
      </div>
      {found && by !== undefined && at !== undefined && (
        <ul aria-live="polite">
          {whatIfWords(found, by, at, voice).map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      )}
    </section>
  );
}
