/** The car counts for every rail, the day's rail marked. */

import type { Told } from '../../desk/asked.ts';
import {
  type CountWay,
  countWays,
  countWords,
  engineBrakeNote,
  heldNote,
  leastWords,
  limitLines,
} from '../../desk/count-ways.ts';
import type { CarCount } from '../../engine/answer/types.ts';
import { toldRails } from '../../engine/things/rail.ts';
import { tellRail } from '../../words/rails.ts';
import { speech } from '../state/session.ts';

/** "7", "40+" where the search ended before it failed. */
export const shortCount = (count: CarCount, way: CountWay): string => countWords(count, way, (n) => `${n}+`);

/** Before its counts are reckoned the table takes its room at once, so that nothing below it moves. */
export function Counts({ told }: { readonly told: Told | null }) {
  const today = told?.asked.outing.conditions.railState;
  const rails = toldRails(today).map((rail) => ({
    rail,
    count: told?.answer.cars.find((c) => c.railState === rail),
  }));
  const v = told ? { ...speech.value, outing: told.asked.outing } : null;
  const ways = countWays(told?.answer.cars ?? [], v ?? speech.value);
  const count = told?.answer.cars.find((c) => c.railState === today);
  return (
    <section class="counts">
      <h2>How many cars</h2>
      <div class="scroll" tabIndex={0} role="region" aria-label="Car counts by rail">
        <table>
          <thead>
            <tr>
              <td />
              {rails.map(({ rail }) => (
                <th key={rail} class={rail === today ? 'today' : ''} scope="col">
                  {tellRail(rail)}
                  {rail === today ? <br /> : ''}
                  {rail === today ? '(today)' : ''}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {ways.map(([way, words]) => (
              <tr key={way}>
                <th scope="row">{words}</th>
                {rails.map(({ rail, count: c }) => (
                  <td key={rail} class={rail === today ? 'today' : ''}>
                    {c ? shortCount(c, way) : '…'}
                  </td>
                ))}
              </tr>
            ))}
            <tr>
              <th scope="row">at most</th>
              {rails.map(({ rail, count: c }) => (
                <td key={rail} class={rail === today ? 'today' : ''}>
                  <strong>{c ? leastWords(c) : '…'}</strong>
                </td>
              ))}
            </tr>
          </tbody>
        </table>
      </div>
      {v && <p>{engineBrakeNote(v.outing)}</p>}
      <details>
        <summary>What sets each, and what it means</summary>
        {count && v && (
          <ul>
            {limitLines(count, told?.answer.cars ?? [], v).map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
        )}
        <p>{heldNote}</p>
      </details>
    </section>
  );
}
