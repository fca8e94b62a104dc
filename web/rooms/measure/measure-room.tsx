/** What can be measured, with what and in how many minutes; behind each its guide, its form and what comes of it. */
import '../../look/rooms.css';
import './measure.css';
import { useMemo } from 'preact/hooks';
import { type ListedTest, listed, testKinds } from '../../../desk/measured/guide.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import type { Voice } from '../../../words/voice.ts';
import { place } from '../../doors.ts';
import { ChangedBar } from '../../parts/changed-bar.tsx';
import { Kept } from './kept.tsx';
import { Next } from './next.tsx';
import { TestPage } from './test-page.tsx';

export interface MeasureProps {
  readonly outing: Outing;
  readonly voice: Voice;
}

export function MeasureRoom({ outing, voice }: MeasureProps) {
  const kind = testKinds.find((k) => k === place.value.part);
  return (
    <section class="measure-room">
      {kind ? (
        <TestPage key={kind} kind={kind} outing={outing} voice={voice} />
      ) : (
        <All outing={outing} voice={voice} />
      )}
      <ChangedBar />
    </section>
  );
}

const groups: readonly { readonly title: string; readonly has: (test: ListedTest) => boolean }[] = [
  { title: 'With the train on its line', has: (t) => t.with === 'outing' },
  { title: 'With one vehicle', has: (t) => t.with === 'vehicle' },
  { title: 'With neither', has: (t) => t.with === 'nothing' },
];

function All({ outing, voice }: MeasureProps) {
  const all = useMemo(() => testKinds.map((kind) => listed(kind, voice.wording)), [voice.wording]);
  return (
    <>
      <h1>What should I measure?</h1>
      <p>
        What nobody has measured is assumed with a wide spread, and the answer pays for it. Each of these
        tests narrows it.
      </p>
      <Next outing={outing} voice={voice} />
      <Kept voice={voice} />
      {groups.map(({ title, has }) => (
        <section key={title}>
          <h2>{title}</h2>
          <ul class="tests">
            {all
              .filter(has)
              .sort((a, b) => a.minutes - b.minutes)
              .map(({ kind, name, what, minutes }) => (
                <li key={kind}>
                  <a href={`#measure/${kind}`}>
                    <strong>{name}</strong>
                    <span class="minutes">{minutes} min</span>
                    <span>{what}</span>
                  </a>
                </li>
              ))}
          </ul>
        </section>
      ))}
    </>
  );
}
