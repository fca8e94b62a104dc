/** The four car counts for every rail, the day's rail marked. */
import { answer, tried } from '../state/session.ts';

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
                {(['pulled', 'stopped', 'held'] as const).map((way) => (
                  <td key={way}>
                    {c[way] === null ? '?' : c.unlimited.includes(way) ? `${c[way]}+` : c[way]}
                  </td>
                ))}
                <td>{c.host ?? 'no rule'}</td>
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
