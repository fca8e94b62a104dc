/**
 * Seat them for me: the best seating found and proven; all of it taken with one tap, or one person's move alone. What was
 * found stays while the people and the cars are the same.
 */
import { signal } from '@preact/signals';
import { ridersOf, seated } from '../../desk/make-up.ts';
import { type SeatedOuting, seatOuting } from '../../desk/seating.ts';
import type { Change } from '../../engine/outing/change.ts';
import type { NoSeating, Place } from '../../engine/questions/seat/types.ts';
import { seatingTable } from '../../views/tables/balance.ts';
import { refusalOfSeating } from '../../words/seating.ts';
import { riderName, type Voice, vehicleName } from '../../words/voice.ts';
import { change, type Json, outing, paper, tryOut } from '../state/session.ts';
import { Tick } from './tick.tsx';
import { Table } from './word-table.tsx';

type State =
  | { readonly is: 'idle' | 'working' | 'fault' }
  | { readonly is: 'refused'; readonly why: NoSeating }
  | { readonly is: 'found'; readonly seated: SeatedOuting; readonly of: string };

const state = signal<State>({ is: 'idle' });
const afresh = signal(false);

/** People and cars without who sits where: while these are the same, what was found holds. */
const apartFromSeats = (json: Json): string =>
  JSON.stringify({
    ...json,
    riders: ridersOf(json).map(({ vehicle: _vehicle, seat: _seat, ...rest }) => rest),
  });

async function seek(): Promise<void> {
  const now = outing.value;
  if (!now) return;
  state.value = { is: 'working' };
  try {
    const of = apartFromSeats(paper.value);
    const found = await seatOuting(now, { afresh: afresh.value });
    state.value = 'seating' in found ? { is: 'found', seated: found, of } : { is: 'refused', why: found };
  } catch {
    state.value = { is: 'fault' };
  }
}

/** Those who do not sit yet where they would. */
function movesLeft({ seating }: SeatedOuting): readonly (Place & { readonly index: number })[] {
  const riders = outing.value?.riders ?? [];
  return seating.places.flatMap((place) => {
    const index = riders.findIndex((r) => r.id === place.rider);
    const now = riders[index];
    return now && (now.vehicle !== place.vehicle || now.seat !== place.seat) ? [{ ...place, index }] : [];
  });
}

/** One person's move; whoever sits there now takes the seat that is left. */
function trialOf({ rider, vehicle, seat }: Place): Change {
  const riders = outing.value?.riders ?? [];
  const from = riders.find((r) => r.id === rider);
  const other = riders.find((r) => r.vehicle === vehicle && r.seat === seat);
  const back =
    other && from?.vehicle !== undefined && from.seat !== undefined
      ? [{ rider: other.id, vehicle: from.vehicle, seat: from.seat }]
      : [];
  return { kind: 'seat', moves: [{ rider, vehicle, seat }, ...back] };
}

function takeAll({ outing: made }: SeatedOuting): void {
  const riders = ridersOf(paper.value).map((entry, i) => {
    const { vehicle, seat } = made.riders[i] ?? {};
    return vehicle === undefined || seat === undefined ? entry : { ...entry, vehicle, seat };
  });
  change({ ...paper.value, riders });
}

export function SeatThem({ voice }: { readonly voice: Voice }) {
  const now = state.value;
  return (
    <section class="seat-them">
      <h2>Seat them for me</h2>
      <p>
        So that the worst car keeps as much on its lightest wheel as can be: groups together, children with
        the adult who holds them, ratings and the host's rules kept, few people moved.
      </p>
      <div class="seat-tools">
        <button type="button" disabled={now.is === 'working'} onClick={() => void seek()}>
          Find the seating
        </button>
        <Tick
          on={afresh.value}
          set={(on) => {
            afresh.value = on;
          }}
        >
          no matter where they sit now
        </Tick>
      </div>
      <div aria-live="polite">
        {now.is === 'working' && <p>Seeking …</p>}
        {now.is === 'fault' && (
          <p role="alert">The solver could not be loaded; open this room once with a connection.</p>
        )}
        {now.is === 'refused' && <p role="alert">{refusalOfSeating(now.why)}</p>}
        {now.is === 'found' && (
          <Found found={now.seated} fresh={now.of === apartFromSeats(paper.value)} voice={voice} />
        )}
      </div>
    </section>
  );
}

interface FoundProps {
  readonly found: SeatedOuting;
  readonly fresh: boolean;
  readonly voice: Voice;
}

function Found({ found, fresh, voice }: FoundProps) {
  // Names are of the people for whom it was found.
  if (!fresh) return <p>The train or its riders have changed since: find the seating again.</p>;
  const left = movesLeft(found);
  return (
    <>
      <Table table={seatingTable(found.seating, voice)} />
      {left.length === 0 ? (
        <p>Taken: they sit so. Undo brings them back to where they sat.</p>
      ) : (
        <>
          <button type="button" class="main" onClick={() => takeAll(found)}>
            Take these seats
          </button>
          <ul class="moves">
            {left.map(({ rider, vehicle, seat, index }) => (
              <li key={rider}>
                <span>
                  {riderName(voice, rider)} to seat {seat} of {vehicleName(voice, vehicle)}
                </span>
                <button
                  type="button"
                  aria-label={`Move just ${riderName(voice, rider)}`}
                  onClick={() => change(seated(paper.value, index, { vehicle, seat }))}
                >
                  Move just this one
                </button>
                <button
                  type="button"
                  aria-label={`Try ${riderName(voice, rider)} there`}
                  onClick={() => void tryOut(trialOf({ rider, vehicle, seat }))}
                >
                  Try it first
                </button>
              </li>
            ))}
          </ul>
        </>
      )}
    </>
  );
}
