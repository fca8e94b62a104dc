/**
 * The line under the parted halves: for every vehicle the energy to pass each cell of an even grid, forward
 * and backward, added up for any run of vehicles.
 *
 * All places are those of the whole train's head, so that both halves share one grid. Gravity gives back on
 * the way down what it took on the way up; curves take in both directions.
 */
import { buildPotential } from '../../things/line/potential.ts';
import type { Line } from '../../things/line/types.ts';
import type { LoadedTrain } from '../../things/train/loaded.ts';

export interface Grid {
  readonly loop: boolean;
  /** m */
  readonly step: number;
  /** Cells; a loop's are one lap, else they reach a train's length beyond the end of the line. */
  readonly cells: number;
  /** Nodes of the line itself, whose last is the end of the line. */
  readonly lineCells: number;
}

/** Energy by cell (J) and force by node (N) on some vehicles together. */
export interface Ground {
  /** To go forward through the cell. */
  readonly climb: Float64Array;
  /** To go backward through it. */
  readonly back: Float64Array;
  /** Against going forward, at each node; and that part of the force against going backward, as W′ has it. */
  readonly slopeForward: Float64Array;
  readonly slopeBack: Float64Array;
}

/** The grid of the speed map, carried on beyond the end of a point-to-point line. */
export function gridFor(line: Line, trainLength: number, lineCells: number): Grid {
  const step = line.length / lineCells;
  const beyond = line.loop ? 0 : Math.ceil(trainLength / step) + 1;
  return { loop: line.loop, step, cells: lineCells + beyond, lineCells };
}

/** Ground of each vehicle by itself. */
export function vehicleGrounds(line: Line, loaded: LoadedTrain, curveConstant: number, grid: Grid): Ground[] {
  const to = grid.cells * grid.step;
  return loaded.vehicles.map(({ vehicle, behind, mass }) => {
    const body = [{ behind, length: vehicle.length, mass }];
    const ahead = buildPotential(line, body, 0, to, grid.step, curveConstant);
    const astern = buildPotential(line, body, 0, to, grid.step, -curveConstant);
    const climb = new Float64Array(grid.cells);
    const back = new Float64Array(grid.cells);
    for (let j = 0; j < grid.cells; j++) {
      climb[j] = ahead.W[j + 1] - ahead.W[j];
      back[j] = astern.W[j] - astern.W[j + 1];
    }
    return { climb, back, slopeForward: ahead.slope, slopeBack: astern.slope };
  });
}

/** Ground of vehicles first … last together. */
export function groundOf(vehicles: readonly Ground[], first: number, last: number): Ground {
  const sum = (of: (g: Ground) => Float64Array): Float64Array => {
    const total = of(vehicles[first]).slice();
    for (let v = first + 1; v <= last; v++) {
      const more = of(vehicles[v]);
      for (let j = 0; j < total.length; j++) total[j] += more[j];
    }
    return total;
  };
  return {
    climb: sum((g) => g.climb),
    back: sum((g) => g.back),
    slopeForward: sum((g) => g.slopeForward),
    slopeBack: sum((g) => g.slopeBack),
  };
}

/** Cell or node on the grid: round a loop, held to the ends of a line. */
export const wrapCell = (loop: boolean, cells: number, cell: number): number => {
  if (!loop) return cell < 0 ? 0 : cell < cells ? cell : cells - 1;
  const j = cell % cells;
  return j < 0 ? j + cells : j;
};
