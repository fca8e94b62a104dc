/** What this train asks to be seen to, what is in the way, and the press by which it leaves. */
import { useSignal } from '@preact/signals';
import type { Told } from '../../../desk/asked.ts';
import { rejectedOf } from '../../../desk/inspect/unfinished.ts';
import { asWritten, hindrances, standsOf } from '../../../desk/leave/depart.ts';
import { tellHindrances } from '../../../desk/leave/tell.ts';
import type { Check } from '../../../papers/record/fields.ts';
import { stillOut, type Trip } from '../../../records/service.ts';
import { checkWords } from '../../../words/records/leaving.ts';
import { shortHash } from '../../../words/records/record.ts';
import { begun } from '../../parts/inspecting.ts';
import { silence } from '../../state/at-hand.ts';
import { clock, kept, person, record, saying } from '../../state/records.ts';
import { edit, speech } from '../../state/session.ts';
import { SkyAsked } from './sky.tsx';

/** What was recorded last, told where the next one may leave already. */
const said: { text: string } = { text: '' };

export function Leaving({ told, all }: { readonly told: Told; readonly all: readonly Trip[] }) {
  const done = useSignal<readonly Check[]>([]);
  const why = useSignal('');
  const busy = useSignal(false);
  const fault = useSignal('');
  const { outing } = told.asked;
  const today = clock.now().slice(0, 10);
  const stands = standsOf(outing, asWritten(told.asked), told.answer.verdict);
  const out = stillOut(
    all,
    outing.train.vehicles.map(({ name }) => name),
  ).map(({ departure }) => departure.first.row.hash);
  const inTheWay = [
    ...hindrances(stands, done.value, today, out, kept.value?.faults.length),
    ...rejectedOf(
      begun.value,
      [...outing.train.vehicles.map(({ name }) => name), outing.line.name],
      today,
    ).map((one) => ({ what: 'rejected', ...one }) as const),
    ...(silence.value === '' ? [] : [{ what: 'records' } as const]),
  ];
  const words = tellHindrances(inTheWay.filter(({ what }) => what !== 'checks'));
  const left = inTheWay.some(({ what }) => what === 'checks');
  const leave = async (against?: string): Promise<void> => {
    busy.value = true;
    fault.value = '';
    try {
      said.text = await recordDeparture(told, done.value, today, against);
      done.value = [];
      why.value = '';
    } catch (error) {
      fault.value = saying(error);
    }
    busy.value = false;
  };
  return (
    <section class="leaving" aria-label="It leaves">
      <p class="big">{outing.name}</p>
      {stands.asked.map((check) => {
        const on = done.value.includes(check);
        return (
          <button
            key={check}
            type="button"
            class="check"
            aria-pressed={on}
            onClick={() => {
              done.value = on ? done.value.filter((c) => c !== check) : [...done.value, check];
            }}
          >
            <span aria-hidden="true">{on ? '✓' : '○'}</span> {checkWords[check]}
          </button>
        );
      })}
      {words.length > 0 && (
        <ul>
          {words.map((line) => (
            <li key={line}>It may not leave as it is: {line}.</li>
          ))}
        </ul>
      )}
      {stands.unsaid.length > 0 && <SkyAsked of={stands.unsaid} />}
      {inTheWay.some(({ what }) => what === 'day') && (
        <button type="button" onClick={() => edit(['date'], today)}>
          The outing is of today
        </button>
      )}
      <button
        type="button"
        class="main leave"
        disabled={busy.value || inTheWay.length > 0}
        onClick={() => void leave()}
      >
        {busy.value ? 'Recording …' : 'It leaves'}
      </button>
      <p role="status">
        {fault.value || said.text || (left ? 'Press each as it is seen to; then it leaves.' : '')}
      </p>
      {/* Shut again once a train has left: the next has a reason of its own. */}
      {inTheWay.length > 0 && (
        <details key={said.text}>
          <summary>It leaves all the same</summary>
          <p class="field">
            <label for="against">Why: this is recorded with what was in the way</label>
            <input
              id="against"
              value={why.value}
              onInput={(e) => {
                why.value = e.currentTarget.value;
              }}
            />
          </p>
          <button
            type="button"
            disabled={busy.value || why.value.trim() === ''}
            onClick={() => void leave(why.value.trim())}
          >
            Record that it leaves all the same
          </button>
        </details>
      )}
    </section>
  );
}

async function recordDeparture(
  { asked }: Told,
  done: readonly Check[],
  today: string,
  against: string | undefined,
): Promise<string> {
  // What the answer on the screen does not need is loaded now.
  const { asWritten, departureContent, readyToLeave } = await import('../../../desk/leave/depart.ts');
  const ready = await readyToLeave(asWritten(asked), speech.value);
  if ('problems' in ready) throw new Error(ready.problems[0].message);
  const content = await departureContent(ready, done, today, person, against);
  const { row } = await record({ kind: 'departure', content });
  return `${content.outing} left. Recorded as ${shortHash(row.hash)}.`;
}
