/** Who sits down next, by the table of typical weights or by their own weight. */
import { signal } from '@preact/signals';
import { assumed } from '../../../data/index.ts';
import type { RiderEntry } from '../../../desk/make-up.ts';
import { understoodAs } from '../../../desk/understood.ts';
import { say } from '../../../words/voice.ts';
import { voice } from '../../state/session.ts';

const people = ['adult', 'man', 'woman', 'heavy', 'youth', 'child'] as const;

const who = signal<string>('adult');
const weight = signal('');

/** A weight that cannot be read is not taken; the typical one stands. */
export function nextRider(): Partial<RiderEntry> {
  const text = weight.value.trim();
  return text !== '' && understoodAs(text, 'mass').ok
    ? { weight: text, typical: who.value }
    : { typical: who.value };
}

/** "child (about 66 lb)" */
function typicalWords(kind: string): string {
  const v = voice.value;
  return v ? `${kind}, about ${say(v, { si: assumed(`mass/${kind}`).value, kind: 'mass' })}` : kind;
}

/** The kinds of people in the table of typical weights, to choose from. */
export const TypicalOptions = () => (
  <>
    {people.map((p) => (
      <option key={p} value={p}>
        {typicalWords(p)}
      </option>
    ))}
  </>
);

export function NextRider() {
  const echo = weight.value.trim() === '' ? undefined : understoodAs(weight.value, 'mass');
  return (
    <fieldset class="row next-rider">
      <legend>Next rider to sit down</legend>
      <label>
        typical{' '}
        <select
          value={who.value}
          onChange={(e) => {
            who.value = e.currentTarget.value;
          }}
        >
          <TypicalOptions />
        </select>
      </label>
      <label for="next-weight">or weighing</label>
      <span class="figure">
        <input
          id="next-weight"
          value={weight.value}
          placeholder={voice.value?.system === 'metric' ? '80 kg' : '180 lb'}
          size={9}
          aria-invalid={echo !== undefined && !echo.ok}
          aria-describedby="next-weight-told"
          onInput={(e) => {
            weight.value = e.currentTarget.value;
          }}
        />
        <small id="next-weight-told" class={echo && !echo.ok ? 'wrong' : 'echo'}>
          {echo && (echo.ok ? echo.text : `expected ${echo.expected}`)}
        </small>
      </span>
    </fieldset>
  );
}
