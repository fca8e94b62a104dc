/** Trying changes on an outing. Apart from what is asked, since the answer itself does without it. */
import { applyChange, type Change } from '../engine/outing/change.ts';
import type { Outing } from '../engine/outing/types.ts';
import type { FileProblem, Load, Read } from '../papers/index.ts';
import { fileProblem, show } from '../papers/problem.ts';
import { readTried } from '../papers/tried.ts';
import type { Trial } from './asked.ts';

/** Changes one after the other, each on what the last one left. */
export function trying(outing: Outing, changes: readonly Change[]): Trial[] {
  let from = outing;
  return changes.map((change) => {
    const trial = { change, from, to: applyChange(from, change) };
    from = trial.to;
    return trial;
  });
}

export interface OpenTried {
  readonly paper: Readonly<Record<string, unknown>>;
  readonly outing: Outing;
  readonly trials: readonly Trial[];
}

/** A file of an outing with what is tried on it. A change that finds nothing to change is refused, not passed over. */
export async function openTriedFile(
  json: Record<string, unknown>,
  name: string,
  load: Load,
): Promise<Read<OpenTried>> {
  const read = await readTried(json, name, load);
  if (!read.ok) return read;
  const { paper, outing, changes } = read.value;
  const trials: Trial[] = [];
  const problems: FileProblem[] = [];
  for (const [i, change] of changes.entries()) {
    const from = trials[trials.length - 1]?.to ?? outing;
    const stray = strayIn(from, change);
    if (stray !== undefined) {
      const expected = 'a vehicle, rider, seat or gap of the outing as it stands before this change';
      problems.push(fileProblem(name, { path: ['changes', i], found: show(stray), expected }));
      break;
    }
    trials.push(...trying(from, [change]));
  }
  return problems.length > 0 ? { ok: false, problems } : { ok: true, value: { paper, outing, trials } };
}

/** The first name or gap in a change that the outing has not. */
function strayIn(outing: Outing, change: Change): string | number | undefined {
  const { vehicles } = outing.train;
  const noVehicle = (id: string): boolean => !vehicles.some((v) => v.id === id);
  const noRider = (id: string): boolean => !outing.riders.some((r) => r.id === id);
  switch (change.kind) {
    case 'fewer-cars':
      return change.leave.length >= vehicles.length ? 'all vehicles' : change.leave.find(noVehicle);
    case 'order':
      return change.order.find(noVehicle);
    case 'fewer-riders':
      return change.leave.find(noRider);
    case 'brake-car':
      return [change.vehicle, change.like].find(noVehicle);
    case 'ballast':
    case 'parking-brake':
    case 'driver-brake':
    case 'coupler-raised':
    case 'part-lifted':
    case 'wheel-gauge':
      return [change.vehicle].find(noVehicle);
    case 'guard-rail':
      return (outing.line.flangeways ?? []).some((f) => f.id === change.flangeway)
        ? undefined
        : change.flangeway;
    case 'set-back':
    case 'raised':
      return (outing.line.structures ?? []).some((s) => s.id === change.structure)
        ? undefined
        : change.structure;
    case 'seat': {
      const noSeat = (m: (typeof change.moves)[number]): boolean =>
        !vehicles.some((v) => v.id === m.vehicle && v.seats.some((s) => s.id === m.seat));
      const odd = change.moves.find((m) => noRider(m.rider) || noSeat(m));
      return odd && `${odd.rider} to ${odd.vehicle}/${odd.seat}`;
    }
    case 'chain-size':
      return change.gap === undefined || change.gap < vehicles.length - 1 ? undefined : change.gap;
    case 'longer-coupling':
      return change.gap < vehicles.length - 1 ? undefined : change.gap;
    case 'together': {
      let from = outing;
      for (const part of change.changes) {
        const stray = strayIn(from, part);
        if (stray !== undefined) return stray;
        from = applyChange(from, part);
      }
      return undefined;
    }
    default:
      return undefined;
  }
}
