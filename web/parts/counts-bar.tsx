/** The four car counts on today's rail in one line of words and numbers, always in sight. */
import type { CarCount } from '../../engine/outing/answer.ts';
import { isCar } from '../../engine/train/cars.ts';
import { answer, tried } from '../state/session.ts';

type Way = 'pulled' | 'stopped' | 'held' | 'host';

const ways: readonly (readonly [Way, string])[] = [
  ['pulled', 'can be started anywhere'],
  ['stopped', 'can be stopped'],
  ['held', 'can be held'],
  ['host', 'host allows'],
];

function figure(count: CarCount, way: Way): string {
  const n = count[way];
  if (n === null) return way === 'host' ? 'no rule' : '?';
  return way !== 'host' && count.unlimited.includes(way) ? `${n}+` : `${n}`;
}

export function CountsBar() {
  const rail = tried.value?.conditions.railState;
  const count = answer.value?.cars.find((c) => c.railState === rail);
  const here = tried.value?.train.vehicles.filter(isCar).length ?? 0;
  if (!count) return <Coming here={here} rail={rail ?? ''} />;
  const over = count.least !== null && here > count.least;
  return (
    <section class={over ? 'counts-bar over' : 'counts-bar'} aria-label={`Car counts on ${rail} rail`}>
      <p class="this">
        <b>{here}</b> {here === 1 ? 'car' : 'cars'} here
      </p>
      {ways.map(([way, words]) => (
        <p key={way} class={count.by === way ? 'least' : ''}>
          <b>{figure(count, way)}</b> {words}
        </p>
      ))}
      <p class="verdict-line">
        {count.least === null ? (
          <>most: cannot tell</>
        ) : (
          <>
            <b>{count.least}</b> at most on {rail} rail{over ? `, ${here - count.least} fewer than here` : ''}
          </>
        )}
      </p>
    </section>
  );
}

/** The same bar before its counts are reckoned: it takes its room at once, so that nothing below it moves. */
function Coming({ here, rail }: { readonly here: number; readonly rail: string }) {
  return (
    <section class="counts-bar" aria-label={`Car counts on ${rail} rail`} aria-busy="true">
      <p class="this">
        <b>{here}</b> {here === 1 ? 'car' : 'cars'} here
      </p>
      {ways.map(([way, words]) => (
        <p key={way}>
          <b>…</b> {words}
        </p>
      ))}
      <p class="verdict-line">
        <b>…</b> at most on {rail} rail
      </p>
    </section>
  );
}
