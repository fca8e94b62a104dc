/** Who signed somebody off for what: what is left empty is not limited. */
import { type Signal, useSignal } from '@preact/signals';
import { type Power, powers } from '../../../engine/things/duty.ts';
import { Written } from '../../parts/written.tsx';
import { outing } from '../../state/session.ts';

const powerWords: Readonly<Record<Power, string>> = {
  steam: 'steam',
  electric: 'battery or wire',
  petrol: 'petrol or diesel',
};

export interface SignedOff {
  readonly powers: Signal<readonly Power[]>;
  readonly engines: Signal<string>;
  readonly gauge: Signal<string>;
  readonly heaviest: Signal<string>;
  readonly line: Signal<string>;
}

export const useSignedOff = (): SignedOff => ({
  powers: useSignal<readonly Power[]>([]),
  engines: useSignal(''),
  gauge: useSignal(''),
  heaviest: useSignal(''),
  line: useSignal(''),
});

/** As the record takes it; nothing, where nothing is limited. */
export function limitsOf(of: SignedOff): { readonly signedFor?: object } {
  const engines = of.engines.value
    .split(',')
    .map((one) => one.trim())
    .filter((one) => one !== '');
  const texts = { gauge: of.gauge, heaviest: of.heaviest, line: of.line };
  const limits = {
    ...(of.powers.value.length === 0 ? {} : { powers: of.powers.value }),
    ...(engines.length === 0 ? {} : { engines }),
    ...Object.fromEntries(
      Object.entries(texts).flatMap(([key, { value }]) => (value.trim() === '' ? [] : [[key, value.trim()]])),
    ),
  };
  return Object.keys(limits).length === 0 ? {} : { signedFor: limits };
}

export function SignedFor({ of }: { readonly of: SignedOff }) {
  return (
    <fieldset>
      <legend>Signed off for; what is empty is not limited</legend>
      <p class="row">
        {powers.map((power) => {
          const on = of.powers.value.includes(power);
          return (
            <button
              key={power}
              type="button"
              aria-pressed={on}
              onClick={() => {
                of.powers.value = on
                  ? of.powers.value.filter((one) => one !== power)
                  : [...of.powers.value, power];
              }}
            >
              {powerWords[power]}
            </button>
          );
        })}
      </p>
      <Written as="field" label="These engines alone, with commas" value={of.engines} />
      <Written as="field" label="This gauge alone" value={of.gauge} placeholder="7-1/4 in" />
      <Written as="field" label="Engines to this weight" value={of.heaviest} placeholder="900 lb" />
      <Written
        as="field"
        label="This line alone"
        value={of.line}
        placeholder={outing.value?.line.name ?? ''}
      />
    </fieldset>
  );
}
