/** The rider in hand: name, weight, age and duty; a tap on an empty seat moves them there. */

import { changed, letOff, platformed, ridersOf } from '../../../desk/make-up.ts';
import { understoodAs } from '../../../desk/understood.ts';
import { writtenText } from '../../parts/form/figure.tsx';
import { Told, useTyped } from '../../parts/form/slot.tsx';
import { paper } from '../../state/session.ts';
import { TypicalOptions } from './next-rider.tsx';
import { chosen, step } from './state.ts';

const duties = ['rider', 'driver', 'guard'] as const;

export function RiderPanel({ index }: { readonly index: number }) {
  const entry = ridersOf(paper.value)[index];
  if (!entry) return null;
  const set = (part: Readonly<Record<string, unknown>>): void =>
    step(changed(paper.value, index, part), `${entry.name} changed.`);
  return (
    <section class="rider-panel" aria-label={`Rider in hand: ${entry.name}`}>
      <p>
        <strong>{entry.name} is in hand:</strong> tap an empty seat to move there.
      </p>
      <p class="row">
        <Name kept={entry.name} set={(name) => set({ name })} />
        <Weight kept={writtenText(entry.weight)} typical={entry.typical} set={set} />
        <label>
          typical{' '}
          <select
            value={entry.typical ?? ''}
            onChange={(e) => {
              const typical = e.currentTarget.value;
              if (typical !== '') set({ typical });
              else if (entry.weight !== undefined) set({ typical: undefined });
            }}
          >
            {(entry.typical === undefined || entry.weight !== undefined) && (
              <option value="">not given</option>
            )}
            <TypicalOptions />
          </select>
        </label>
        <label>
          duty{' '}
          <select
            value={entry.duty ?? 'rider'}
            onChange={(e) => {
              const duty = e.currentTarget.value;
              set({ duty: duty === 'rider' ? undefined : duty });
            }}
          >
            {duties.map((d) => (
              <option key={d}>{d}</option>
            ))}
          </select>
        </label>
      </p>
      <p class="row">
        <button
          type="button"
          onClick={() => {
            chosen.value = null;
            step(letOff(paper.value, index), `${entry.name} is let off.`);
          }}
        >
          Let off
        </button>
        {entry.seat !== undefined && (
          <button
            type="button"
            onClick={() => step(platformed(paper.value, index), `${entry.name} waits on the platform.`)}
          >
            To the platform
          </button>
        )}
        <button
          type="button"
          onClick={() => {
            chosen.value = null;
          }}
        >
          Done
        </button>
      </p>
    </section>
  );
}

function Name({ kept, set }: { readonly kept: string; readonly set: (name: string) => void }) {
  const text = useTyped(kept);
  return (
    <label>
      name{' '}
      <input
        value={text.value}
        size={14}
        autocomplete="off"
        onInput={(e) => {
          text.value = e.currentTarget.value;
        }}
        onChange={() => {
          const name = text.value.trim();
          if (name === '') text.value = kept;
          else if (name !== kept) set(name);
        }}
      />
    </label>
  );
}

interface WeightProps {
  readonly kept: string;
  readonly typical: string | undefined;
  readonly set: (part: Readonly<Record<string, unknown>>) => void;
}

/** A weight enters the paper only when it can be read: a slip here must not stop the answer. */
function Weight({ kept, typical, set }: WeightProps) {
  const text = useTyped(kept);
  const now = text.value.trim();
  const echo = now === '' ? undefined : understoodAs(now, 'mass');
  const commit = (): void => {
    if (now === kept) return;
    if (echo?.ok) set({ weight: now });
    else if (now === '') set({ weight: undefined, typical: typical ?? 'adult' });
  };
  return (
    <span class="figure">
      <label for="rider-weight">weight</label>
      <input
        id="rider-weight"
        value={text.value}
        size={9}
        placeholder="by the table"
        aria-invalid={echo !== undefined && !echo.ok}
        aria-describedby="rider-weight-told"
        onInput={(e) => {
          text.value = e.currentTarget.value;
        }}
        onChange={commit}
      />
      <Told id="rider-weight" echo={echo} />
    </span>
  );
}
