/** The four car counts for every rail, the day's rail marked. */
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
import { answer, tried, voice } from '../state/session.ts';

/** "7", "40+" where the search ended before it failed. */
export const shortCount = (count: CarCount, way: CountWay): string => countWords(count, way, (n) => `${n}+`);

export function Counts() {
  const cars = answer.value?.cars ?? [];
  const ways = countWays(cars);
  const today = tried.value?.conditions.railState;
  const v = voice.value;
  const count = cars.find((c) => c.railState === today);
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
            {cars.map((c) => (
              <tr key={c.railState} class={c.railState === today ? 'today' : ''}>
                <th>
                  {c.railState}
                  {c.railState === today ? ' (today)' : ''}
                </th>
                {ways.map(([way]) => (
                  <td key={way}>{shortCount(c, way)}</td>
                ))}
                <td>
                  <strong>{leastWords(c)}</strong>
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      {count && v && (
        <ul>
          {limitLines(count, cars, v).map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      )}
      {v && <p>{engineBrakeNote(v.outing)}</p>}
      <p>{heldNote}</p>
    </section>
  );
}
