/** A train that is out: one press when it is back; how far and how many, if somebody says so. */
import { useSignal } from '@preact/signals';
import { tellTrip } from '../../../desk/leave/tell.ts';
import type { Trip } from '../../../records/service.ts';
import { localTime } from '../../../records/time.ts';
import { Written } from '../../parts/written.tsx';
import { record, saying } from '../../state/records.ts';

export function Arrive({ trip }: { readonly trip: Trip }) {
  const distance = useSignal('');
  const carried = useSignal('');
  const events = useSignal('');
  const when = useSignal('');
  const fault = useSignal('');
  const { hash } = trip.departure.first.row;
  const was = trip.arrival?.amendments.at(-1) ?? trip.arrival?.first;
  const arrive = async (): Promise<void> => {
    const at = when.value === '' ? undefined : localTime(new Date(when.value));
    // What is typed has no seconds.
    const left = Math.floor(Date.parse(trip.departure.first.body.said) / 60_000) * 60_000;
    if (at !== undefined && Date.parse(at) < left) {
      fault.value = 'That is before it left: expected a later time.';
      return;
    }
    const [far, many, what] = [distance, carried, events].map(({ value }) => value.trim());
    try {
      await record({
        kind: 'arrival',
        content: {
          departure: hash,
          ...(far === '' ? {} : { distance: far }),
          ...(many === '' ? {} : { carried: /^\d+$/.test(many) ? Number(many) : many }),
          ...(what === '' ? {} : { events: what }),
        },
        // Said anew without another time it arrived when it did.
        ...(trip.arrival && was ? { amends: trip.arrival.first.row.hash, said: was.body.said } : {}),
        ...(at === undefined ? {} : { said: at }),
      });
    } catch (error) {
      fault.value = saying(error);
    }
  };
  const field = (label: string, of: typeof distance, more: object = {}) => (
    <Written as="field" label={label} value={of} {...more} />
  );
  return (
    <div class="out">
      <p>{tellTrip(trip)}</p>
      <details>
        <summary>How far, how many, what happened</summary>
        {field('Distance, all laps together', distance, { placeholder: '1.5 mile' })}
        {field('Riders carried, all laps together', carried, { placeholder: '12' })}
        {field('What happened on the way; facts only', events)}
        {field('When it arrived; now, if nothing is said', when, { type: 'datetime-local' })}
      </details>
      <button type="button" class="main leave" onClick={() => void arrive()}>
        {trip.arrival ? 'Say its arrival anew' : 'It has arrived'}
      </button>
      {fault.value !== '' && <p role="alert">{fault.value}</p>}
    </div>
  );
}
