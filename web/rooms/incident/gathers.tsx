/** Whether they gather somewhere more than chance has it: reckoned when it is asked for. */
import { useSignal } from '@preact/signals';
import { type IncidentKind, incidentKinds } from '../../../papers/record/incident-fields.ts';
import { isPattern, patterns } from '../../../records/patterns.ts';
import { parseQuantity } from '../../../units/index.ts';
import { incidentWords } from '../../../words/records/incident.ts';
import { CAVEAT, tellGround, tellLook } from '../../../words/records/patterns.ts';
import { Written } from '../../parts/written.tsx';
import type { Kept } from '../../state/records.ts';
import { speech } from '../../state/session.ts';
import { Chosen } from './fields.tsx';

export function Gathers({ now }: { readonly now: Kept }) {
  const open = useSignal(false);
  return (
    <details
      class="gathers"
      onToggle={(e) => {
        open.value = e.currentTarget.open;
      }}
    >
      <summary>Do they gather somewhere more than chance has it?</summary>
      {open.value && <Odds now={now} />}
    </details>
  );
}

const usual = { imperial: '100 ft', metric: '30 m' } as const;

function Odds({ now }: { readonly now: Kept }) {
  const kind = useSignal<string>('derailment');
  const { system } = speech.value;
  const [within, days] = [useSignal<string>(usual[system]), useSignal('10')];
  const length = parseQuantity(within.value, 'length');
  const firstDays = Number(days.value);
  const sound = length.ok && length.si > 0 && Number.isInteger(firstDays) && firstDays > 0;
  const all = sound
    ? patterns(now.entries, kind.value as IncidentKind, { within: length.si, firstDays })
    : undefined;
  return (
    <>
      <Chosen
        label="Of which kind"
        value={kind}
        of={incidentKinds.map((one) => [one, incidentWords[one]] as const)}
      />
      <Written label="Stretch that is one place" value={within} />
      <Written label="Days that a driver counts as new" value={days} inputMode="numeric" />
      {!all && <p role="alert">Write a length such as 100 ft, and whole days.</p>}
      {all && tellGround(all, within.value, firstDays).map((line) => <p key={line}>{line}</p>)}
      <ul class="records">
        {all?.looks.map((look) => {
          const { where, word, figures, odds } = tellLook(look, all.looked, { system });
          return (
            <li key={where}>
              <span>
                <strong class={isPattern(look) ? 'wrong' : ''}>{word}</strong>: {where}
              </span>
              <small>
                {figures}; {odds}.
              </small>
            </li>
          );
        })}
      </ul>
      <p>{CAVEAT}</p>
    </>
  );
}
