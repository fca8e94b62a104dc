/** The four car counts for every rail, the day's rail marked. */
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
import { railStates } from '../../engine/things/rail.ts';
import { speech } from '../state/session.ts';

/** "7", "40+" where the search ended before it failed. */
export const shortCount = (count: CarCount, way: CountWay): string => countWords(count, way, (n) => `${n}+`);

/** Before its counts are reckoned the table takes its room at once, so that nothing below it moves. */
export function Counts({ told }: { readonly told: Told | null }) {
  const today = told?.asked.outing.conditions.railState;
  const rows = railStates.map((rail) => told?.answer.cars.find((c) => c.railState === rail) ?? rail);
  const ways = countWays(told?.answer.cars ?? []);
  const v = told ? { ...speech.value, outing: told.asked.outing } : null;
  const count = told?.answer.cars.find((c) => c.railState === today);
  return (
    <section class="counts">
      <h2>How many cars</h2>
      <div class="scroll" tabIndex={0} role="region" aria-label="Car counts by rail">
        <table>
          <thead>
            <tr>
              <th>rail</th>
              {ways.map(([way, words]) => (
                <th key={way}>{words}</th>
              ))}
              <th>least</th>
            </tr>
          </thead>
          <tbody>
            {rows.map((row) => {
              const c = typeof row === 'string' ? undefined : row;
              const rail = typeof row === 'string' ? row : row.railState;
              return (
                <tr key={rail} class={rail === today ? 'today' : ''}>
                  <th>
                    {rail}
                    {rail === today ? ' (today)' : ''}
                  </th>
                  {ways.map(([way]) => (
                    <td key={way}>{c ? shortCount(c, way) : '…'}</td>
                  ))}
                  <td>
                    <strong>{c ? leastWords(c) : '…'}</strong>
                  </td>
                </tr>
              );
            })}
          </tbody>
        </table>
      </div>
      {count && v && (
        <ul>
          {limitLines(count, told?.answer.cars ?? [], v).map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      )}
      {v && <p>{engineBrakeNote(v.outing)}</p>}
      <p>{heldNote}</p>
    </section>
  );
}
