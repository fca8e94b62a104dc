/** The builder's three questions, one at a time: which cylinder and lever, how high the seat, which chain. */
import '../../look/rooms.css';
import './builder.css';
import { useMemo } from 'preact/hooks';
import type { Outing } from '../../../engine/outing/types.ts';
import type { Voice } from '../../../words/voice.ts';
import { place } from '../../doors.ts';
import { WhichChain } from './chain.tsx';
import { Cylinder } from './cylinder.tsx';
import { Seat } from './seat.tsx';

export interface BuilderProps {
  readonly outing: Outing;
  readonly voice: Voice;
  /** Another for every other outing. */
  readonly of: number;
}

const tasks = [
  { part: 'cylinder', short: 'Cylinder', word: 'Which cylinder and lever?', View: Cylinder },
  { part: 'seat', short: 'Seat', word: 'How high may the seat be?', View: Seat },
  { part: 'chain', short: 'Chain', word: 'Which chain?', View: WhichChain },
] as const;

let count = 0;

export function BuilderRoom({ outing, voice }: Omit<BuilderProps, 'of'>) {
  const of = useMemo(() => ++count, [outing]);
  const { part, word, View } = tasks.find((t) => t.part === place.value.part) ?? tasks[0];
  return (
    <section class={`builder-room ${part}`}>
      <nav class="within" aria-label="Build">
        {tasks.map((t) => (
          <a key={t.part} href={`#builder/${t.part}`} aria-current={t.part === part ? 'page' : undefined}>
            {t.short}
          </a>
        ))}
      </nav>
      <h1>{word}</h1>
      <View outing={outing} voice={voice} of={of} />
    </section>
  );
}
