/**
 * An outing made ready for stops: the potential, the brakes that answer, and per rail state the likely and
 * the cautious model. Everything is computed at most once.
 */

import { GRAVITY } from '../base/constants.ts';
import type { Quantity } from '../base/quantity.ts';
import type { OutingContext } from '../outing/open.ts';
import type { DayAir } from '../things/air/day.ts';

import { type TrainBrakes, trainBrakes } from '../things/brake/force.ts';
import { buildPotential, type Potential, type Stretch } from '../things/line/potential.ts';
import type { Line } from '../things/line/types.ts';
import { type RailState, unsanded } from '../things/rail.ts';
import type { LoadedTrain } from '../things/train/loaded.ts';
import { buildKit, heldOn, type StopKit } from './kit.ts';
import { type MapModels, modelOf, type StopModel } from './model.ts';
import { cautiousShare } from './sample.ts';
import { likely, unsafeBy } from './scenario.ts';

/** How far beyond a point-to-point line's end, or beyond one lap, a stop is followed, m. */
const BEYOND_END = 300;

export interface Prepared {
  readonly context: OutingContext;
  readonly air: DayAir;
  readonly brakes: TrainBrakes;
  /** With the curve drag at its low bound. */
  readonly potential: Potential;
  readonly kit: (state: RailState) => StopKit;
  readonly models: (state: RailState) => MapModels;
  /** The cautious stop of one who holds full brake with sliding wheels. */
  readonly heldOn: (state: RailState) => StopModel;
  /** Where the cautious share is set: the steepest fall first. */
  readonly references: readonly { readonly at: number; readonly speed: number }[];
  /** Share of the way to the unsafe bounds that the cautious model stands for. */
  readonly cautiousShare: (state: RailState) => number;
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
 * @param samples stops drawn per reference place to set the cautious share; 0 takes the bounds themselves
 */
export function prepare(context: OutingContext, step = 0.5, samples = 1000): Prepared {
  const { outing, line, loaded } = context;
  const { air } = context;
  const brakes = trainBrakes(loaded, outing.assumed, air.pressure, air.seaLevel);
  const potential = potentialOf(line, loaded, outing.assumed.curveConstant.low, step, beyondOf(line));
  const references = referenceCases(context, potential);
  const kits = new Map<RailState, StopKit>();
  const shares = new Map<RailState, number>();
  const models = new Map<RailState, MapModels>();
  const kit = (state: RailState): StopKit =>
    remember(kits, state, () =>
      buildKit(
        loaded,
        brakes.groups,
        potential,
        outing.assumed.adhesion[state],
        outing.conditions.reaction,
        outing.assumed,
        { state, bare: unsanded(outing.assumed, state), grade: gradeSpread(context) },
      ),
    );
  const share = (state: RailState): number =>
    remember(shares, state, () => (samples === 0 ? 1 : cautiousShare(kit(state), references, samples)));
  return {
    context,
    air,
    brakes,
    potential,
    kit,
    references,
    heldOn: (state) => modelOf(heldOn(kit(state)), unsafeBy(share(state))),
    cautiousShare: share,
    models: (state) =>
      remember(models, state, () => ({
        likely: modelOf(kit(state), likely, false),
        cautious: modelOf(kit(state), unsafeBy(share(state))),
      })),
  };
}

/** Receivers and guesses are asked to be levelled (`survey`): until then they count as a stated profile. */
function gradeSpread({ outing, line }: OutingContext): Quantity {
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

/** Where the cautious share is set: the steepest fall and a middling place, at running speed. */
function referenceCases(context: OutingContext, potential: Potential): { at: number; speed: number }[] {
  const { outing, line } = context;
  const speed = Math.min(
    outing.plannedSpeed ?? outing.host.speed?.value ?? 3,
    outing.host.speed?.value ?? Infinity,
  );
  const nodes = Math.floor(line.length / potential.step);
  const order = Array.from({ length: nodes }, (_, j) => j).sort(
    (a, b) => potential.slope[a] - potential.slope[b],
  );
  const at = (j: number): number => potential.from + j * potential.step;
  const steep = at(order[0]);
  const middling = at(order[nodes >> 1]);
  return [
    { at: steep, speed },
    { at: middling, speed },
  ];
}
