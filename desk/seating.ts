/**
 * "Seat them for me": the outing with its riders on the best seats. The solver is large and is loaded on
 * first use only.
 */

import { GRAVITY } from '../engine/base/constants.ts';
import { applyChange } from '../engine/outing/change.ts';
import { openOuting } from '../engine/outing/open.ts';
import type { Outing } from '../engine/outing/types.ts';
import { layTrack } from '../engine/questions/balance/track.ts';
import { seatPeople } from '../engine/questions/seat/seat.ts';
import type {
  NoSeating,
  Seating,
  SeatingProblem,
  SeatingRules,
  Solve,
} from '../engine/questions/seat/types.ts';
import { hostCeilings, runningSpeed } from '../engine/questions/speed/ceilings.ts';
import { gridOf } from '../engine/questions/speed/map.ts';
import { isCar } from '../engine/things/train/cars.ts';
import type { Rider } from '../engine/things/train/types.ts';

export interface SeatingOptions {
  readonly heldChild?: SeatingRules['heldChild'];
  /** Forget where people sit now: no regard for moves. */
  readonly afresh?: boolean;
}

/** Side demand is looked at no further than this, as a share of g: faster curves are limited anyway. */
const MOST_DEMAND = 0.1;

/** Riders on cars are seated; driver and guard, and whoever rides on the engine, keep their places. */
export function seatingProblem(outing: Outing, options: SeatingOptions = {}): SeatingProblem {
  const { loaded } = openOuting(outing);
  const cars = loaded.vehicles.filter((v) => isCar(v.vehicle));
  const stays = new Set(
    loaded.vehicles
      .flatMap((v) => v.riders.map((r) => ({ r, car: isCar(v.vehicle) })))
      .filter(({ r, car }) => !car || r.rider.duty !== 'rider')
      .map(({ r }) => r.rider.id),
  );
  const { mostRidersPerCar, ridersPerAxle } = outing.host;
  return {
    cars: cars.map((v) => ({
      vehicle: v.vehicle,
      fixed: v.riders.filter((r) => stays.has(r.rider.id)),
    })),
    people: outing.riders
      .filter((r) => r.duty === 'rider' && !stays.has(r.id))
      .map((r) => (options.afresh ? withoutSeat(r) : r)),
    base: outing.line.contactWidth,
    adultCentre: outing.assumed.riderCentre,
    sideDemand: sideDemand(outing),
    rules: {
      heldChild: options.heldChild ?? 'in-front',
      ...(mostRidersPerCar ? { mostRidersPerCar: mostRidersPerCar.value } : {}),
      ...(ridersPerAxle ? { ridersPerAxle: ridersPerAxle.value } : {}),
    },
  };
}

const withoutSeat = ({ vehicle: _, seat: __, ...rider }: Rider): Rider => rider;

/** Greatest side acceleration along the line, moving or standing, as a share of g. */
function sideDemand(outing: Outing): number {
  const context = openOuting(outing);
  const grid = gridOf(context.line.length);
  const speed = runningSpeed(context, grid, hostCeilings(context, grid));
  const track = layTrack(context.line, 0, context.line.length);
  let most = 0;
  for (let j = 0; j < grid.length; j++) {
    const k = Math.min(track.count - 1, Math.round(grid[j] / track.step));
    const sin = Math.sin(track.cant[k]);
    const felt = (speed[j] * speed[j] * track.curvature[k]) / GRAVITY;
    most = Math.max(most, Math.abs(sin), Math.abs(sin - felt * Math.cos(track.cant[k])));
  }
  return Math.min(most, MOST_DEMAND);
}

let solver: Promise<Solve> | undefined;

/** The mixed-integer solver, loaded once. */
export function loadSolver(): Promise<Solve> {
  solver ??= import('highs').then(async ({ default: load }) => {
    const highs = await load();
    return (program) => {
      const { Status, Columns } = highs.solve(program, { output_flag: false, time_limit: 5 });
      const status = Status === 'Optimal' ? 'optimal' : Status === 'Infeasible' ? 'infeasible' : 'other';
      const values = new Map<string, number>();
      if (status === 'optimal') {
        for (const [name, column] of Object.entries(Columns)) {
          values.set(name, 'Primal' in column ? (column.Primal ?? 0) : 0);
        }
      }
      return { status, values };
    };
  });
  return solver;
}

export interface SeatedOuting {
  readonly outing: Outing;
  readonly seating: Seating;
}

export async function seatOuting(
  outing: Outing,
  options: SeatingOptions = {},
): Promise<SeatedOuting | NoSeating> {
  const seating = seatPeople(seatingProblem(outing, options), await loadSolver());
  if (!seating.ok) return seating;
  const moves = seating.places.map((p) => ({ rider: p.rider, vehicle: p.vehicle, seat: p.seat }));
  return { outing: applyChange(outing, { kind: 'seat', moves }), seating };
}
