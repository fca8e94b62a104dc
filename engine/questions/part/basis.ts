/** What all partings of one outing share: the grid, the ground under each vehicle, where each would go over. */

import type { OutingContext } from '../../outing/open.ts';
import type { Line, PlaceKind } from '../../things/line/types.ts';
import { tareCentre } from '../balance/body.ts';
import type { Rolling, Ground as Under } from '../balance/margins.ts';
import { speedLeaving } from '../balance/tipping.ts';
import { type Grid, gridFor, vehicleGrounds } from './ground.ts';
import type { Basis } from './part.ts';

/** What balance knows of the vehicles: those whose centre of gravity is known or bounded. */
export interface Bodies {
  readonly rolling: readonly Rolling[];
  /** On the grid of the speed map. */
  readonly grounds: readonly Under[];
}

/** Where people stand, step off or cross: nothing may come back through there by itself. */
export const peopleAt: ReadonlySet<PlaceKind> = new Set(['station', 'stop', 'crossing', 'yard']);
/** A place without length counts as this long, m. */
const PLACE_LENGTH = 2;

/** @param lineCells cells of the speed map's grid over the line */
export function basisOf(context: OutingContext, lineCells: number, bodies: Bodies): Basis {
  const { line, loaded, outing } = context;
  const grid = gridFor(line, loaded.length, lineCells);
  return {
    context,
    grid,
    vehicles: vehicleGrounds(line, loaded, outing.assumed.curveConstant.low, grid),
    tips: loaded.vehicles.map((_, i) => tipOf(bodies, i)),
    unmeasured: new Set(
      loaded.vehicles.flatMap((v, i) => (tareCentre(v.vehicle)?.known === false ? [i] : [])),
    ),
    places: placesOn(line, grid),
  };
}

/** v²/2 at which the vehicle goes over outward, by node of the speed map's grid. */
function tipOf({ rolling, grounds }: Bodies, index: number): Float64Array | undefined {
  const at = rolling.findIndex((r) => r.index === index);
  if (at < 0) return undefined;
  const { over, wind } = rolling[at];
  const { curvature, cant } = grounds[at];
  const under = { curvature: 0, cant: 0 };
  return curvature.map((k, j) => {
    if (k === 0) return Infinity;
    under.curvature = k;
    under.cant = cant[j];
    const v = speedLeaving(over, under, 0, wind);
    return (v * v) / 2;
  });
}

function placesOn(line: Line, grid: Grid): Int16Array {
  const cells = new Int16Array(grid.lineCells).fill(-1);
  line.places.forEach((place, i) => {
    if (!peopleAt.has(place.kind)) return;
    const from = Math.floor(place.at / grid.step);
    const to = Math.ceil((place.to ?? place.at + PLACE_LENGTH) / grid.step);
    for (let j = from; j < Math.max(to, from + 1); j++) {
      const cell = grid.loop ? ((j % grid.lineCells) + grid.lineCells) % grid.lineCells : j;
      if (cell >= 0 && cell < cells.length) cells[cell] = i;
    }
  });
  return cells;
}
