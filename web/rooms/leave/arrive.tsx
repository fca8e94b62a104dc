/** A train that is out: one press when it is back; how far and how many, if somebody says so. */
import { useSignal } from '@preact/signals';
import { tellTrip } from '../../../desk/leave/tell.ts';
import type { Trip } from '../../../records/service.ts';
import { record, saying } from '../../state/records.ts';

export function Arrive({ trip }: { readonly trip: Trip }) {
  const distance = useSignal('');
  const carried = useSignal('');
  const events = useSignal('');
  const fault = useSignal('');
  const { hash } = trip.departure.first.row;
  const was = trip.arrival?.amendments.at(-1) ?? trip.arrival?.first;
  const arrive = async (): Promise<void> => {
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
        // Said anew it arrived when it did.
        ...(trip.arrival && was ? { amends: trip.arrival.first.row.hash, said: was.body.said } : {}),
      });
    } catch (error) {
      fault.value = saying(error);
    }
  };
  const field = (label: string, of: typeof distance, placeholder: string) => (
    <p class="field">
      <label>
        {label}{' '}
        <input
          value={of.value}
          placeholder={placeholder}
          onInput={(e) => {
            of.value = e.currentTarget.value;
          }}
        />
      </label>
    </p>
  );
  return (
    <div class="out">
      <p>{tellTrip(trip)}</p>
      <details>
        <summary>How far, how many, what happened</summary>
        {field('Distance, all laps together', distance, '1.5 mile')}
        {field('Riders carried, all laps together', carried, '12')}
        {field('What happened on the way; facts only', events, '')}
      </details>
      <button type="button" class="main leave" onClick={() => void arrive()}>
        {trip.arrival ? 'Say its arrival anew' : 'It has arrived'}
      </button>
      {fault.value !== '' && <p role="alert">{fault.value}</p>}
    </div>
  );
}
