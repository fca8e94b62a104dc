/** Incidents: where the line is slow or shut, what happened, what is done about it, and whether it gathers somewhere. */
import '../../look/rooms.css';
import '../records/records.css';
import './incident.css';
import { useEffect } from 'preact/hooks';
import { barred, kept, openRecords } from '../../state/records.ts';
import { Begin } from '../records/begin.tsx';
import { Gathers } from './gathers.tsx';
import { Happened } from './happened.tsx';
import { Limits, SetLimit } from './limits.tsx';
import { List } from './list.tsx';

export function Room() {
  useEffect(() => void openRecords(), []);
  const now = kept.value;
  return (
    <>
      <h1>Incidents</h1>
      {barred.value !== '' && (
        <p class="notice" role="alert">
          {barred.value}
        </p>
      )}
      {now && !now.me && (
        <Begin what="What happened that ought not to have, and where the line is slow or shut until it is mended: every train here heeds that at once." />
      )}
      {now && <Limits now={now} />}
      {now?.me && <Happened now={now} />}
      {now?.me && <SetLimit now={now} />}
      {now && <List now={now} />}
      {now && now.entries.length > 0 && <Gathers now={now} />}
    </>
  );
}
