/** Weather and night that the host has rules for and nobody has said: a press or a figure each. */
import { useSignal } from '@preact/signals';
import type { Sky } from '../../../desk/leave/checks.ts';
import { edit } from '../../state/session.ts';

const yesNo = {
  lightning: { no: 'No lightning about', yes: 'Lightning is about' },
  night: { no: 'By daylight', yes: 'After dark' },
} as const;
const figures = {
  wind: { field: 'wind', label: 'Wind, the strongest gust', such: '8 mph' },
  heat: { field: 'temperature', label: 'Heat in the shade', such: '75 °F' },
} as const;

export function SkyAsked({ of }: { readonly of: readonly Sky[] }) {
  return (
    <div role="group" aria-label="The sky">
      {of.map((sign) =>
        sign === 'lightning' || sign === 'night' ? (
          <p key={sign} class="row">
            {(['no', 'yes'] as const).map((said) => (
              <button key={said} type="button" onClick={() => edit(['conditions', sign], said === 'yes')}>
                {yesNo[sign][said]}
              </button>
            ))}
          </p>
        ) : (
          <Figure key={sign} sign={sign} />
        ),
      )}
    </div>
  );
}

function Figure({ sign }: { readonly sign: keyof typeof figures }) {
  const typed = useSignal('');
  const { field, label, such } = figures[sign];
  return (
    <p class="field">
      <label>
        {label}{' '}
        <input
          value={typed.value}
          placeholder={such}
          onInput={(e) => {
            typed.value = e.currentTarget.value;
          }}
        />
      </label>{' '}
      <button
        type="button"
        disabled={typed.value.trim() === ''}
        onClick={() => edit(['conditions', field], typed.value.trim())}
      >
        Say it
      </button>
    </p>
  );
}
