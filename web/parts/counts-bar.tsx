/** The car counts on today's rail in one line of words and numbers, always in sight. */

import { type CountWay, leastWords } from '../../desk/count-ways.ts';
import { isCar } from '../../engine/things/train/cars.ts';
import { tellRail } from '../../words/rails.ts';
import { told, tried } from '../state/session.ts';
import { shortCount } from './counts.tsx';

const ways: readonly (readonly [CountWay, string])[] = [
  ['pulled', 'starts anywhere'],
  ['stopped', 'stopped'],
  ['held', 'held by the crew'],
  ['heldByAll', 'held by all'],
  ['host', 'host allows'],
];

/** Before its counts are reckoned the bar takes its room at once, so that nothing below it moves. */
export function CountsBar() {
  const now = told.value;
  const outing = now?.asked.outing ?? tried.value;
  const rail = outing?.conditions.railState;
  const onRail = rail ? tellRail(rail) : '';
  const count = now?.answer.cars.find((c) => c.railState === rail);
  const here = outing?.train.vehicles.filter(isCar).length ?? 0;
  const fewer = Math.max(0, here - (count?.least ?? here));
  return (
    <section
      class={fewer > 0 ? 'counts-bar over' : 'counts-bar'}
      aria-label={`Car counts on ${onRail} rail`}
      aria-busy={count ? undefined : 'true'}
    >
      <p class="this">
        <b>{here}</b> {here === 1 ? 'car' : 'cars'} here
      </p>
      {ways.map(([way, words]) => (
        <p key={way} class={count?.by === way ? 'least' : ''}>
          <b>{count ? shortCount(count, way) : '…'}</b> {words}
        </p>
      ))}
      <p class="verdict-line">
        {count?.least === null ? (
          <>
            most on {onRail} rail: {leastWords(count)}
          </>
        ) : (
          <>
            <b>{count?.least ?? '…'}</b> at most on {onRail} rail
            {fewer > 0 ? `, ${fewer} fewer than here` : ''}
          </>
        )}
      </p>
    </section>
  );
}
