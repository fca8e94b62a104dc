/**
 * An outing made ready for stops: the potential, the brakes that answer, and per rail state the likely and
 * the cautious model. Everything is computed at most once.
 */

import { GRAVITY } from '../base/constants.ts';
import type { Quantity } from '../base/quantity.ts';
import type { OutingContext } from '../outing/open.ts';
import { railsMetBy } from '../outing/rails.ts';
import type { Outing } from '../outing/types.ts';
import type { DayAir } from '../things/air/day.ts';

import { type TrainBrakes, trainBrakes } from '../things/brake/force.ts';
import { buildPotential, type Potential, type Stretch } from '../things/line/potential.ts';
import type { Line } from '../things/line/types.ts';
import { brakedOnSand, type RailState, unsanded, wetter } from '../things/rail.ts';
import type { LoadedTrain } from '../things/train/loaded.ts';
import { type Careful, cautiousScenarios } from './caution.ts';
import { cautiousModel, type MapModels, modelOf, type StopModel } from './model.ts';
import { pressedLess } from './pressed-less.ts';
import type { Speeds } from './references.ts';
import type { Case } from './sample.ts';
import { type Caution, likely, unsafeBy } from './scenario.ts';
import { buildInputs, heldOn, type InputsElsewhere, type StopInputs, type Today } from './stop-inputs.ts';

/** How far beyond a point-to-point line's end, or beyond one lap, a stop is followed, m. */
const BEYOND_END = 300;

export interface Prepared {
  readonly context: OutingContext;
  readonly air: DayAir;
  readonly brakes: TrainBrakes;
  /** With the curve drag at its low bound, and what surge brakes lose on an uneven grade. */
  readonly potential: Potential;
  readonly inputs: (state: RailState) => StopInputs;
  readonly models: (state: RailState) => MapModels;
  /** The cautious stop of one who holds full brake with sliding wheels. */
  readonly heldOn: (state: RailState) => StopModel;
  /** The steepest fall under the train's head, at the speed meant. */
  readonly steepest: Case;
  /** What stands for one stop in a hundred. */
  readonly caution: (state: RailState) => Caution;
  /** How parts of the train are set the same caution by themselves. */
  readonly careful: Careful;
}

export function potentialOf(
  line: Line,
  loaded: LoadedTrain,
  curveConstant: number,
  step: number,
  beyond: number,
): Potential {
  return buildPotential(line, stretchesOf(loaded), 0, line.length + beyond, step, curveConstant);
}

const stretchesOf = ({ vehicles }: LoadedTrain): Stretch[] =>
  vehicles.map((v) => ({ behind: v.behind, length: v.vehicle.length, mass: v.mass }));

/** Mean grade under a train with its head at a place, weighted by mass, rise over run along the rail. */
export const gradeUnder = (line: Line, loaded: LoadedTrain, at: number): number =>
  buildPotential(line, stretchesOf(loaded), at, at + 1, 1, 0).slope[0] / (loaded.mass * GRAVITY);

/** Room for a stop beyond the last grid point: a further lap, or ground that continues as the line ends. */
export const beyondOf = (line: Line): number => (line.loop ? Math.max(line.length, BEYOND_END) : BEYOND_END);

/**
 * @param step grid step of the potential, m
 * @param samples stops drawn to set the cautious scenarios; 0 takes the bounds themselves
 */
export function prepare(context: OutingContext, step = 0.5, samples = 1000): Prepared {
  const { outing, line, loaded } = context;
  const { air } = context;
  const brakes = trainBrakes(loaded, outing.assumed, air.pressure, air.seaLevel);
  const curveConstant = outing.assumed.curveConstant.low;
  const ground = potentialOf(line, loaded, curveConstant, step, beyondOf(line));
  const potential = pressedLess(ground, line, loaded, brakes.groups, curveConstant);
  const byRail = new Map<RailState, StopInputs>();
  const cautions = new Map<RailState, Caution>();
  const models = new Map<RailState, MapModels>();
  const inputsOn = (state: RailState, today: Partial<Today>): StopInputs =>
    buildInputs(
      loaded,
      brakes.groups,
      potential,
      brakedOnSand(outing.assumed, state),
      outing.conditions.reaction,
      outing.assumed,
      { state, bare: unsanded(outing.assumed, state), grade: gradeSpread(context), ...today },
    );
  const inputs = (state: RailState): StopInputs =>
    remember(byRail, state, () =>
      inputsOn(state, { elsewhere: inputsElsewhere(context, state, potential, inputsOn) }),
    );
  const caution = (state: RailState): Caution =>
    remember(cautions, state, () =>
      samples === 0
        ? [unsafeBy(1)]
        : cautiousScenarios(inputs(state), speedsOf(outing), line.length, samples),
    );
  return {
    context,
    air,
    brakes,
    potential,
    inputs,
    steepest: steepestFall(context, potential),
    heldOn: (state) => cautiousModel(heldOn(inputs(state)), caution(state)),
    caution,
    careful: { run: speedMeant(outing), draws: Math.ceil(samples / 5) },
    models: (state) =>
      remember(models, state, () => ({
        likely: modelOf(inputs(state), likely, false),
        cautious: cautiousModel(inputs(state), caution(state)),
      })),
  };
}

/** The train on each other rail that the line has: where that is drier the blocks stay as wet as the rest left them. */
function inputsElsewhere(
  context: OutingContext,
  state: RailState,
  { from, step, count }: Potential,
  inputsOn: (state: RailState, today: Partial<Today>) => StopInputs,
): InputsElsewhere[] {
  const { loaded } = context;
  const pieces = railsMetBy(context, state, loaded.length, from + (count - 1) * step);
  return [...new Set(pieces.map((p) => p.state))].map((other) => {
    const own = pieces.filter((p) => p.state === other);
    return {
      inputs: inputsOn(other, { blocksOn: wetter(state, other) }),
      from: Float64Array.from(own, (p) => p.from),
      to: Float64Array.from(own, (p) => p.to),
    };
  });
}

/** Receivers and guesses are asked to be levelled (`survey`): until then they count as a stated profile. */
export function gradeSpread({ outing, line }: OutingContext): Quantity {
  const { heightQuality: quality } = line;
  return outing.assumed.gradeSpread[quality === 'gps' || quality === 'assumed' ? 'stated' : quality];
}

function remember<K, V>(memory: Map<K, V>, key: K, make: () => V): V {
  const known = memory.get(key);
  if (known !== undefined) return known;
  const made = make();
  memory.set(key, made);
  return made;
}

/** Running speed as planned or ruled, m/s; undefined where neither driver nor host names one. */
export function speedNamed({ host, plannedSpeed }: Outing): number | undefined {
  const least = Math.min(plannedSpeed ?? Infinity, host.speed?.value ?? Infinity);
  return least < Infinity ? least : undefined;
}

/** The same, and where nobody names one the highest that is looked at. */
export const speedMeant = (outing: Outing): number => speedNamed(outing) ?? outing.assumed.unstatedSpeed;

const speedsOf = (outing: Outing): Speeds => {
  const run = speedMeant(outing);
  const { plannedSpeed = 0, host, assumed } = outing;
  return { run, fastest: Math.max(run, plannedSpeed, host.speed?.value ?? assumed.unstatedSpeed) };
};

function steepestFall({ outing, line }: OutingContext, potential: Potential): Case {
  const nodes = Math.floor(line.length / potential.step);
  let worst = 0;
  for (let j = 1; j < nodes; j++) if (potential.slope[j] < potential.slope[worst]) worst = j;
  return { at: potential.from + worst * potential.step, speed: speedMeant(outing) };
}
