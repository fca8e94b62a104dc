/** What each car keeps on its lightest wheel, as people sit; who sets it, and the one move that helps most. */
import { useMemo } from 'preact/hooks';
import { ridersOf, seated } from '../../../desk/make-up.ts';
import { lookAtPlatform, type Move } from '../../../desk/platform.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import { tellPlatform, tellShare } from '../../../words/seating.ts';
import { vehicleName } from '../../../words/voice.ts';
import { change, outing, paper, speech, tryOut } from '../../state/session.ts';
import { since } from '../../state/since.ts';
import { told } from './state.ts';

export function Margins({ of }: { readonly of: Outing }) {
  const now = useMemo(() => lookAtPlatform(of), [of]);
  const was = since.value?.asked.outing;
  const before = useMemo(() => (was ? lookAtPlatform(was) : undefined), [was]);
  const voice = { ...speech.value, outing: of };
  const words = tellPlatform(now, voice);
  const wasKept = (vehicle: string): string => {
    const share = before?.cars.find((c) => c.vehicle === vehicle)?.keeps;
    const kept = now.cars.find((c) => c.vehicle === vehicle)?.keeps;
    if (share === undefined || kept === undefined || tellShare(share) === tellShare(kept)) return '';
    return `${tellShare(share).replace(' %', '')} → `;
  };
  return (
    <section class="margins" aria-label="What each car keeps">
      <h2>What each car keeps on its lightest wheel</h2>
      <ol>
        {now.cars.map((car) => {
          const sets = car === now.worst;
          return (
            <li key={car.vehicle} class={sets ? 'sets' : ''}>
              <span class="of">
                {sets ? '▸ ' : ''}
                {vehicleName(voice, car.vehicle)}
              </span>
              <span class="bar" aria-hidden="true">
                <span style={{ width: `${Math.max(0, Math.min(100, car.keeps * 100))}%` }} />
              </span>
              <span class="share">
                {wasKept(car.vehicle)}
                {tellShare(car.keeps)}
              </span>
            </li>
          );
        })}
      </ol>
      {/* As high as it mostly needs: seats are pressed below it. */}
      <div class="margin-words">
        {words.lines.map((line) => (
          <p key={line}>{line}</p>
        ))}
        {now.move ? (
          <p class="row">
            <button
              type="button"
              class="main one-move"
              onClick={() => now.move && take(now.move, words.move)}
            >
              Move just this one: {words.move}
            </button>
            <button type="button" onClick={() => now.move && tryMove(now.move, of)}>
              Try it first
            </button>
          </p>
        ) : (
          <p>No single move leaves the worst car with more.</p>
        )}
      </div>
    </section>
  );
}

function take({ rider, to }: Move, words: string): void {
  const at = outing.value?.riders.findIndex((r) => r.id === rider) ?? -1;
  if (!ridersOf(paper.value)[at]) return;
  change(seated(paper.value, at, to));
  told.value = words;
}

/** In the answer alone: the papers stay as they are until it is written into them. */
function tryMove({ rider, to, changesWith }: Move, of: Outing): void {
  const from = of.riders.find((r) => r.id === rider);
  const back =
    changesWith === undefined || from?.vehicle === undefined || from.seat === undefined
      ? []
      : [{ rider: changesWith, vehicle: from.vehicle, seat: from.seat }];
  void tryOut({ kind: 'seat', moves: [{ rider, ...to }, ...back] });
}
