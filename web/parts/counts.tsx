/** The four car counts for every rail, the day's rail marked. */
import type { CarCount } from '../../engine/answer/types.ts';
import { answer, tried } from '../state/session.ts';

export type Way = 'pulled' | 'stopped' | 'held' | 'host';

/** "7", "40+" where the search ended before it failed, "?" where it cannot be told. */
export function countWords(count: CarCount, way: Way): string {
  const n = count[way];
  if (n === null) return way === 'host' ? 'no rule' : '?';
  return way !== 'host' && count.unlimited.includes(way) ? `${n}+` : `${n}`;
}

export function Counts() {
  const cars = answer.value?.cars ?? [];
  const today = tried.value?.conditions.railState;
  return (
    <section class="counts">
      <h2>How many cars</h2>
      <div class="scroll" tabIndex={0} role="region" aria-label="Car counts by rail">
        <table>
          <thead>
            <tr>
              <th>rail</th>
              <th>pulled</th>
              <th>stopped</th>
              <th>held</th>
              <th>host</th>
              <th>least</th>
            </tr>
          </thead>
          <tbody>
            {cars.map((c) => (
              <tr key={c.railState} class={c.railState === today ? 'today' : ''}>
                <th>
                  {c.railState}
                  {c.railState === today ? ' (today)' : ''}
                </th>
                {(['pulled', 'stopped', 'held', 'host'] as const).map((way) => (
                  <td key={way}>{countWords(c, way)}</td>
                ))}
                <td>
                  <strong>{c.least ?? '?'}</strong>
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </section>
  );
}
