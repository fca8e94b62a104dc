/** Leaving and arriving, with one hand: what is seen to, one press to leave, one to arrive. */
import '../../look/rooms.css';
import '../records/records.css';
import './leave.css';
import { useEffect } from 'preact/hooks';
import { tellTrip } from '../../../desk/leave/tell.ts';
import { trips } from '../../../records/service.ts';
import { begun } from '../../parts/inspecting.ts';
import { noWord, RECKONING } from '../../parts/no-word.ts';
import { barred, kept, openRecords } from '../../state/records.ts';
import { told } from '../../state/session.ts';
import { Unfinished } from '../inspect/unfinished.tsx';
import { Begin } from '../records/begin.tsx';
import { Arrive } from './arrive.tsx';
import { Leaving } from './leaving.tsx';
import { ServiceTable } from './service-table.tsx';

export function Room() {
  useEffect(() => void openRecords(), []);
  const records = kept.value;
  const now = told.value;
  const all = records ? trips(records.entries) : [];
  const out = all.filter(({ arrival }) => !arrival);
  return (
    <>
      <h1>Leave</h1>
      {barred.value !== '' && (
        <p class="notice" role="alert">
          {barred.value}
        </p>
      )}
      {records && !records.me && (
        <Begin what="Sign the train out by its word when all is seen to, and in when it is back." />
      )}
      {records?.me && <Unfinished all={begun.value} />}
      {records?.me && now && <Leaving told={now} all={all} key={now.asked.id} />}
      {records?.me && !now && (
        <>
          <p>{noWord()}</p>
          {noWord() !== RECKONING && (
            <p>There is no answer to the outing as it stands, and so nothing to leave by.</p>
          )}
        </>
      )}
      {out.length > 0 && (
        <section aria-label="Out on the line">
          <h2>Out on the line</h2>
          {out.map((trip) => (
            <Arrive key={trip.departure.first.row.hash} trip={trip} />
          ))}
        </section>
      )}
      {all.length > out.length && (
        <section aria-label="Back">
          <h2>Back</h2>
          <ul class="records">
            {all
              .filter(({ arrival }) => arrival)
              .slice(-10)
              .reverse()
              .map((trip) => (
                <li key={trip.departure.first.row.hash}>
                  <span>{tellTrip(trip)}</span>
                  {records?.me && (
                    <details>
                      <summary>Say its arrival anew</summary>
                      <Arrive trip={trip} />
                    </details>
                  )}
                </li>
              ))}
          </ul>
        </section>
      )}
      {all.length > 0 && <ServiceTable all={all} />}
      <p>
        <a href="#crew">Crew</a> · <a href="#board">Riders’ board</a> · <a href="#inspect">Inspect</a> ·{' '}
        <a href="#incident">Incidents</a> · <a href="#due">What is due</a> ·{' '}
        <a href="#records">All records</a>
      </p>
    </>
  );
}
