/** The other trains of the day on this line: which of their cards go into the same file. */
import type { Signal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { sameDay, tellTrainOfDay } from '../../../desk/same-day.ts';
import { MOST_CARDS } from '../../../views/card-made.ts';
import { openShelf, others } from '../../parts/shelf.ts';
import { type Json, paper } from '../../state/session.ts';

export function DayTrains({ chosen }: { readonly chosen: Signal<readonly Json[]> }) {
  useEffect(() => void openShelf(), []);
  const trains = sameDay(paper.value, others());
  // Of those that lie there still.
  const with_ = chosen.value.filter((p) => trains.includes(p));
  const gone = with_.length < chosen.value.length;
  useEffect(() => {
    if (gone) chosen.value = with_;
  }, [gone]);
  if (trains.length === 0) return null;
  return (
    <fieldset class="day-trains no-print">
      <legend>Into the same PDF: other trains of the day on this line</legend>
      {trains.map((train) => (
        <label key={String(train['name'])}>
          <input
            type="checkbox"
            checked={with_.includes(train)}
            disabled={!with_.includes(train) && with_.length + 1 >= MOST_CARDS}
            onChange={(e) => {
              chosen.value = e.currentTarget.checked ? [...with_, train] : with_.filter((p) => p !== train);
            }}
          />
          {tellTrainOfDay(train)}
        </label>
      ))}
    </fieldset>
  );
}
