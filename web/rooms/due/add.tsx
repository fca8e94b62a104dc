/** A certificate: what, whose, when, how long, by whom. */
import { useSignal } from '@preact/signals';
import { type InDateKind, inDateKinds } from '../../../engine/things/in-date.ts';
import { readInterval } from '../../../papers/due/interval.ts';
import { tellInDate } from '../../../words/in-date.ts';
import { Written } from '../../parts/written.tsx';
import { type Kept, person, record, saying } from '../../state/records.ts';
import { outing } from '../../state/session.ts';
import { Anew, amending } from '../records/anew.tsx';
import { limitsOf, SignedFor, useSignedOff } from './signed-for.tsx';

const ofPersons: ReadonlySet<InDateKind> = new Set([
  'first-aid',
  'driver-competence',
  'guard-competence',
  'lookout-competence',
  'fit-for-duty',
]);

const goesByRuns = (interval: string): boolean => readInterval(interval.trim())?.serviceDays !== undefined;

export function Add({ now }: { readonly now: Kept }) {
  const what = useSignal<InDateKind>('boiler-steam-test');
  const of = useSignal('');
  const on = useSignal('');
  const interval = useSignal('');
  const until = useSignal('');
  const by = useSignal('');
  const details = useSignal('');
  const runsKeptSince = useSignal('');
  const anew = useSignal('');
  const limits = useSignedOff();
  const said = useSignal('');
  const isOfPerson = ofPersons.has(what.value);
  const isCompetence = what.value.endsWith('-competence');
  const add = async (): Promise<void> => {
    // What was said of the one before is not said of this one; said again, it is heard again.
    said.value = '';
    const whose = of.value.trim();
    const holder = whose === '' ? {} : isOfPerson ? { person: await person(whose) } : { of: whose };
    const given = {
      interval: interval.value.trim(),
      until: until.value,
      details: details.value.trim(),
      runsKeptSince: goesByRuns(interval.value) ? runsKeptSince.value : '',
    };
    try {
      await record({
        kind: 'certificate',
        content: {
          what: what.value,
          ...holder,
          on: on.value,
          ...Object.fromEntries(Object.entries(given).filter(([, text]) => text !== '')),
          by: by.value.trim(),
          ...(isCompetence ? limitsOf(limits) : {}),
        },
        ...amending(anew),
      });
      anew.value = '';
      said.value = `Recorded: ${tellInDate(what.value)}.`;
    } catch (fault) {
      said.value = saying(fault);
    }
  };
  const field = (label: string, value: typeof of, more: object = {}) => (
    <Written as="field" label={label} value={value} {...more} />
  );
  return (
    <section class="certificate" aria-label="A certificate">
      <h2>A certificate</h2>
      <p class="field">
        <label>
          What{' '}
          <select
            value={what.value}
            onChange={(e) => {
              what.value = e.currentTarget.value as InDateKind;
            }}
          >
            {inDateKinds.map((kind) => (
              <option key={kind} value={kind}>
                {tellInDate(kind)}
              </option>
            ))}
          </select>
        </label>
      </p>
      {field(isOfPerson ? 'Of whom' : 'Of which vehicle or thing; the club, if empty', of, {
        list: 'whose',
      })}
      <datalist id="whose">
        {(isOfPerson
          ? outing.value?.riders.filter(({ duty }) => duty !== 'rider')
          : outing.value?.train.vehicles
        )?.map(({ name }) => (
          <option key={name} value={name} />
        ))}
      </datalist>
      {field('Done, or begins', on, { type: 'date' })}
      {field('How long it stands', interval, { placeholder: 'annually, not to exceed 14 months' })}
      {field('Or its last day', until, { type: 'date' })}
      {goesByRuns(interval.value) &&
        field(
          'Every run of it is recorded here since (a day that nobody says is taken for one of service)',
          runsKeptSince,
          {
            type: 'date',
          },
        )}
      {field('By whom', by)}
      {isCompetence && <SignedFor of={limits} />}
      <details>
        <summary>What it says; whether it says another one anew</summary>
        {field('Pressure and factor of a test, limits; nothing of anybody’s health', details)}
        <Anew now={now} kind="certificate" value={anew} />
      </details>
      <button
        type="button"
        class="main"
        disabled={on.value === '' || by.value.trim() === ''}
        onClick={() => void add()}
      >
        Record the certificate
      </button>
      <p role="status">{said.value}</p>
    </section>
  );
}
