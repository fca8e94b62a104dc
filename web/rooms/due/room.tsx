/** Due: what stands, what is out, whether this outing is in order here today, and the days as a calendar file. */
import '../../look/rooms.css';
import '../records/records.css';
import './due.css';
import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { dueCalendar } from '../../../desk/due/calendar.ts';
import { dueOn } from '../../../records/due.ts';
import { tellFinding } from '../../../words/finding.ts';
import { tellDue } from '../../../words/records/due.ts';
import { save } from '../../parts/save.ts';
import { barred, clock, type Kept, kept, openRecords } from '../../state/records.ts';
import { outing, told, voice } from '../../state/session.ts';
import { Begin } from '../records/begin.tsx';
import { Add } from './add.tsx';

export function Room() {
  useEffect(() => void openRecords(), []);
  const now = kept.value;
  return (
    <>
      <h1>Due</h1>
      {barred.value !== '' && (
        <p class="notice" role="alert">
          {barred.value}
        </p>
      )}
      {now && !now.me && (
        <Begin what="Certificates and tests of engine, people and club: what stands, what is due, what is out of date." />
      )}
      {now && <HereToday />}
      {now && <List now={now} />}
      {now?.me && <Add now={now} />}
    </>
  );
}

const orderCodes: ReadonlySet<string> = new Set([
  'out-of-date',
  'not-shown',
  'in-grace',
  'defect-open',
  'ground-amiss',
  'line-closed',
  'line-slow',
  'limit-off-line',
  'not-signed-for-this',
]);

/** What the host of the outing on the screen asks for, by its answer. */
function HereToday() {
  const answer = told.value?.answer;
  const asked = outing.value?.host.inDate?.length ?? 0;
  const speaks = voice.value;
  const found = answer?.findings.filter(({ code }) => orderCodes.has(code)) ?? [];
  const day = outing.value?.date ?? clock.now().slice(0, 10);
  return (
    <section aria-label="In order here today?">
      <h2>In order here on {day}?</h2>
      {asked === 0 && found.length === 0 ? (
        <p>The host of this outing asks for nothing to be in date: its rules are under Line.</p>
      ) : found.length === 0 ? (
        <p>
          <strong>Yes:</strong> all that {outing.value?.host.name} asks for stands.
        </p>
      ) : (
        <ul>{speaks && found.map((finding, i) => <li key={i}>{tellFinding(finding, speaks).what}</li>)}</ul>
      )}
    </section>
  );
}

function List({ now }: { readonly now: Kept }) {
  const day = clock.now().slice(0, 10);
  const items = dueOn(now.entries, day);
  const whose = useSignal('');
  if (items.length === 0) return null;
  const holders = [...new Set(items.map((item) => tellDue(item, now.names).of))].sort();
  const calendar = (): void => {
    const those = items.filter((item) => whose.value === '' || tellDue(item, now.names).of === whose.value);
    const text = dueCalendar(whose.value || 'Due', those, now.names);
    save(new Blob([text], { type: 'text/calendar' }), 'due.ics');
  };
  return (
    <section aria-label="What stands">
      <h2>Today, the worst first</h2>
      <ul class="records">
        {items.map((item) => {
          const { what, of, state, until, by } = tellDue(item, now.names);
          return (
            <li key={item.from.first.row.hash}>
              <span>
                {of}: {what}
              </span>
              <strong class={`state is-${item.state}`}>{state}</strong>
              <small>
                {until}
                {until === '' ? '' : ' · '}by {by}
              </small>
            </li>
          );
        })}
      </ul>
      <p class="row">
        <label>
          Of{' '}
          <select
            value={whose.value}
            onChange={(e) => {
              whose.value = e.currentTarget.value;
            }}
          >
            <option value="">all</option>
            {holders.map((one) => (
              <option key={one}>{one}</option>
            ))}
          </select>
        </label>
        <button type="button" onClick={calendar}>
          Save the days for a calendar
        </button>
      </p>
    </section>
  );
}
