/** The day on the first screen: the rail by a dial, dark or daylight, how many ride; and what a turn of it changed. */
import { hasWayBack, withDark, withRail, withSand, withWayBack } from '../../../desk/day.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import { bareRails, beneath, isBare, sandedOn } from '../../../engine/things/rail.ts';
import { Changed } from '../../parts/changed.tsx';
import { People } from '../../parts/people.tsx';
import { change, paper, outing as read } from '../../state/session.ts';

/** @param outing as asked about, with what is tried on it */
export function Day({ outing }: { readonly outing: Outing }) {
  const { railState, night } = outing.conditions;
  return (
    <section class="day" aria-label="The day">
      <fieldset class="dial">
        <legend class="unseen">Rail today</legend>
        {bareRails.map((rail) => (
          <label key={rail}>
            <input
              type="radio"
              name="rail"
              value={rail}
              checked={rail === beneath(railState)}
              onChange={() => change(withRail(paper.value, isBare(railState) ? rail : sandedOn(rail)))}
            />
            <span>{rail}</span>
          </label>
        ))}
        <button
          type="button"
          class="sand"
          aria-pressed={!isBare(railState)}
          onClick={() => change(withSand(paper.value, railState))}
        >
          sand
        </button>
      </fieldset>
      <div class="day-row">
        <button
          type="button"
          class="dark"
          aria-pressed={night === true}
          onClick={() => change(withDark(paper.value, night !== true))}
        >
          dark
        </button>
        {hasWayBack(outing) && (
          <button
            type="button"
            class="back"
            aria-pressed={outing.direction === 'reverse'}
            onClick={() => change(withWayBack(paper.value))}
          >
            way back
          </button>
        )}
        {read.value && <People outing={read.value} />}
      </div>
      <Changed />
    </section>
  );
}
