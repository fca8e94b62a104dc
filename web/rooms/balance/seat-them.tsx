/** Seat them for me: the best seating found and proven, taken with one tap and undone with one. */
import { useState } from 'preact/hooks';
import { ridersOf } from '../../../desk/make-up.ts';
import { type SeatedOuting, seatOuting } from '../../../desk/seating.ts';
import type { NoSeating } from '../../../engine/questions/seat/types.ts';
import { seatingTable } from '../../../views/tables/balance.ts';
import { refusalOfSeating } from '../../../words/seating.ts';
import type { Voice } from '../../../words/voice.ts';
import { Tick } from '../../parts/tick.tsx';
import { Table } from '../../parts/word-table.tsx';
import { change, outing, paper, trials } from '../../state/session.ts';

type State =
  | { readonly is: 'idle' | 'working' | 'taken' }
  | { readonly is: 'refused'; readonly why: NoSeating }
  | { readonly is: 'fault' }
  | { readonly is: 'found'; readonly seated: SeatedOuting; readonly paper: unknown };

export function SeatThem({ voice }: { readonly voice: Voice }) {
  const [state, setState] = useState<State>({ is: 'idle' });
  const [afresh, setAfresh] = useState(false);
  const seek = async (): Promise<void> => {
    const now = outing.value;
    if (!now) return;
    setState({ is: 'working' });
    try {
      const asked = paper.value;
      const found = await seatOuting(now, { afresh });
      setState(
        'seating' in found ? { is: 'found', seated: found, paper: asked } : { is: 'refused', why: found },
      );
    } catch {
      setState({ is: 'fault' });
    }
  };
  const take = ({ outing: seated }: SeatedOuting): void => {
    trials.value = [];
    const riders = ridersOf(paper.value).map((entry, i) => {
      const { vehicle, seat } = seated.riders[i] ?? {};
      return vehicle === undefined || seat === undefined ? entry : { ...entry, vehicle, seat };
    });
    change({ ...paper.value, riders });
    setState({ is: 'taken' });
  };
  const stale = state.is === 'found' && state.paper !== paper.value;
  return (
    <section class="seat-them">
      <h2>Seat them for me</h2>
      <p>
        So that the worst car keeps as much on its lightest wheel as can be: groups together, children with
        the adult who holds them, ratings and the host's rules kept, few people moved.
      </p>
      <div class="seat-tools">
        <button type="button" disabled={state.is === 'working'} onClick={() => void seek()}>
          Find the seating
        </button>
        <Tick on={afresh} set={setAfresh}>
          no matter where they sit now
        </Tick>
      </div>
      <div aria-live="polite">
        {state.is === 'working' && <p>Seeking …</p>}
        {state.is === 'fault' && (
          <p role="alert">The solver could not be loaded; open this room once with a connection.</p>
        )}
        {state.is === 'refused' && <p role="alert">{refusalOfSeating(state.why)}</p>}
        {state.is === 'taken' && <p>Taken. Undo brings them back to where they sat.</p>}
        {state.is === 'found' && (
          <>
            <Table table={seatingTable(state.seated.seating, voice)} />
            {stale ? (
              <p>The train or its riders have changed since: find the seating again.</p>
            ) : (
              <button type="button" onClick={() => take(state.seated)}>
                Take these seats
              </button>
            )}
          </>
        )}
      </div>
    </section>
  );
}
