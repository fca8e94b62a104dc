/** The other trains of the day on this line: one tap shows another of them. */
import { useEffect } from 'preact/hooks';
import { sameDay, tellTrainOfDay } from '../../desk/same-day.ts';
import { paper } from '../state/session.ts';
import { openOwn, openShelf, others } from './shelf.ts';

export function AlsoToday() {
  useEffect(() => void openShelf(), []);
  const trains = sameDay(paper.value, others());
  if (trains.length === 0) return null;
  return (
    <nav class="row also-today no-print" aria-label="Also today on this line">
      <span>Also today on this line:</span>
      {trains.map((train) => (
        <button type="button" key={String(train['name'])} onClick={() => void openOwn(train)}>
          {tellTrainOfDay(train)}
        </button>
      ))}
      <a href="#card">Cards of all</a>
    </nav>
  );
}
