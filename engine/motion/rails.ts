/**
 * The rail by place: how much of a train is on rail in another state, and what its brakes do there.
 *
 *   σ = Σ w_g·c_g      w_g = loss_g/Σ loss      p = min(1, 2·σ a second ago)
 *   F = (1 − Σp)·[ F₀ − Σ σ·(F₀ − E) ] + Σ p·G·[ 1 + (1 − σ)·(R₀/R − 1) ]
 *
 * c_g share of a braked group's wheels on that rail, loss_g what its brake loses there before anybody eases (N); F₀ the
 * train's brakes on the best rail of the line, E before and G after the driver eases on the other one, all of the train
 * being there, R₀ and R what the blocks ask for on either: wet rail wets those that are on it (N, by speed). Each wheel does what its own rail holds. A driver has one handle for all: he eases as far as
 * the worse rail asks once half of what can slide there slides, and does so, and puts it on anew, as much later as he
 * takes to notice anywhere. A train wholly on one rail does what it does on a line of that rail; a stretch shorter and
 * shorter counts for less and less. Half is an assumed value; docs/decisions/0008 argues it.
 */

import type { StopModel } from './model.ts';
import { beforeEasing } from './scenario-forces.ts';
import { RAMP_STEPS, SPEED_NODES, SPEED_STEP, type StopInputs } from './stop-inputs.ts';

/** Losses are weighed at these nodes of speed: 0 … 10 mph by 1 mph. */
const WEIGHED = 11;

/** Rail in one state. */
export interface RailPlace {
  readonly model: StopModel;
  /** Where the head meets it, m: apart, growing; of the day's own rail none: it is what the others leave. */
  readonly from: Float64Array;
  readonly to: Float64Array;
  /** By speed and braked group: share of all that is lost on this rail against the best one. */
  readonly weight: Float64Array;
  /** By speed: what some groups do more here than on the best rail, whose blocks it wets less, N. */
  readonly more: Float64Array;
  /** By speed: what the blocks ask for on the best rail ÷ here. */
  readonly drier: Float64Array;
  /** The most that all brakes lose there against the best rail, eased, N. */
  lost: number;
}

export interface Rails {
  /** Other than the day's, in the inputs's order. */
  readonly places: readonly RailPlace[];
  /** Where the groups' wheels are behind the head, m. */
  readonly front: Float64Array;
  readonly rear: Float64Array;
  /** Mean share of full brake of each group over each step of the build-up. */
  readonly ramp: Float64Array;
  /** Rail that holds most: −1 the day's own, else an index of places; and weights of the day's own rail against it. */
  readonly best: number;
  readonly own: Float64Array;
  readonly ownMore: Float64Array;
  readonly ownDrier: Float64Array;
  ownLost: number;
  /** Share of what can slide that a driver feels as all of it. */
  readonly felt: number;
}

/** @param emptyModel room for the model of one rail */
export function emptyRails(inputs: StopInputs, emptyModel: (inputs: StopInputs) => StopModel): Rails {
  const grip = (k: StopInputs): number => k.adhesion.value;
  const holdsMost = inputs.elsewhere.reduce(
    (best, e, i) => (grip(e.inputs) > grip(best < 0 ? inputs : inputs.elsewhere[best].inputs) ? i : best),
    -1,
  );
  return {
    places: inputs.elsewhere.map(({ inputs: other, from, to }) => ({
      model: emptyModel(other),
      from,
      to,
      weight: new Float64Array(WEIGHED * inputs.groups),
      more: new Float64Array(WEIGHED),
      drier: new Float64Array(SPEED_NODES),
      lost: 0,
    })),
    front: inputs.front,
    rear: inputs.rear,
    ramp: inputs.rampMean,
    best: holdsMost,
    own: new Float64Array(WEIGHED * inputs.groups),
    ownMore: new Float64Array(WEIGHED),
    ownDrier: new Float64Array(SPEED_NODES),
    ownLost: 0,
    felt: inputs.easing.felt.value,
  };
}

/** Once the day's model and those of all places are laid. */
export function layRails(model: StopModel, rails: Rails, inputs: StopInputs): void {
  const { places, best, own, ownMore, ownDrier } = rails;
  const [bestModel, bestKit] =
    best < 0 ? [model, inputs] : [places[best].model, inputs.elsewhere[best].inputs];
  const { groups } = inputs;
  const weigh = (weight: Float64Array, more: Float64Array, m: StopModel, k: StopInputs): void => {
    for (let node = 0; node < WEIGHED; node++) {
      const row = node * groups;
      let sum = 0;
      more[node] = 0;
      for (let g = 0; g < groups; g++) {
        const lost = beforeEasing(bestModel, bestKit, g, node) - beforeEasing(m, k, g, node);
        weight[row + g] = Math.max(0, lost);
        if (lost < 0) more[node] -= lost;
        sum += weight[row + g];
      }
      for (let g = 0; g < groups; g++) weight[row + g] = sum > 0 ? weight[row + g] / sum : 0;
    }
  };
  weigh(own, ownMore, model, inputs);
  rails.ownLost = mostLost(bestModel, model);
  layDrier(ownDrier, bestModel, model, inputs);
  places.forEach((place, i) => {
    weigh(place.weight, place.more, place.model, inputs.elsewhere[i].inputs);
    place.lost = mostLost(bestModel, place.model);
    layDrier(place.drier, bestModel, place.model, inputs);
  });
}

function layDrier(drier: Float64Array, best: StopModel, here: StopModel, inputs: StopInputs): void {
  for (let k = 0; k < SPEED_NODES; k++) {
    const asked = askedFor(here, inputs, k);
    drier[k] = asked > 0 ? askedFor(best, inputs, k) / asked : 1;
  }
}

/** What all blocks ask of the rail, N. */
function askedFor({ scratch, factor }: StopModel, { material, groups }: StopInputs, node: number): number {
  let sum = 0;
  for (let g = 0; g < groups; g++) sum += scratch.drawn[g] * factor[material[g] * SPEED_NODES + node];
  return sum;
}

function mostLost({ force }: StopModel, other: StopModel): number {
  let most = 0;
  for (let k = 0; k < SPEED_NODES; k++) most = Math.max(most, force[k] - other.force[k]);
  return most;
}

/** Share of a length of rail that lies in a place. */
export function covered({ from, to }: Pick<RailPlace, 'from' | 'to'>, rear: number, front: number): number {
  let on = 0;
  for (let i = 0; i < from.length; i++) {
    const ends = Math.min(to[i], front);
    const begins = Math.max(from[i], rear);
    if (ends > begins) on += ends - begins;
  }
  return on / (front - rear);
}

/** σ of a place with the train's head at s, at a speed and, while the brakes build up, in a step of it. */
export function shareOn(
  rails: Rails,
  place: RailPlace,
  s: number,
  v: number,
  k: number = RAMP_STEPS,
): number {
  const { front, rear } = rails;
  let [all, here] = [0, 0];
  for (let g = 0; g < front.length; g++) {
    const weight = weightOf(rails, place.weight, g, v, k);
    all += weight;
    if (weight > 0) here += weight * covered(place, s - rear[g], s - front[g]);
  }
  return all > 0 ? here / all : 0;
}

/** σ of the day's own rail. */
export function shareOnOwn(rails: Rails, s: number, v: number, k: number = RAMP_STEPS): number {
  const { places, front, rear, own } = rails;
  let [all, here] = [0, 0];
  for (let g = 0; g < front.length; g++) {
    const weight = weightOf(rails, own, g, v, k);
    all += weight;
    if (weight === 0) continue;
    let left = 1;
    for (const place of places) left -= covered(place, s - rear[g], s - front[g]);
    here += weight * left;
  }
  return all > 0 ? here / all : 0;
}

function weightOf({ front, ramp }: Rails, weight: Float64Array, g: number, v: number, k: number): number {
  const r = Math.min(v / SPEED_STEP, WEIGHED - 1.001);
  const i = (r | 0) * front.length + g;
  const full = weight[i] + (r - (r | 0)) * (weight[i + front.length] - weight[i]);
  return k < RAMP_STEPS ? full * ramp[g * RAMP_STEPS + k] : full;
}

/** What some groups do more on a rail than on the best one, at a speed, N: nobody relies on it. */
export function moreThere(more: Float64Array, v: number): number {
  const i = Math.min((v / SPEED_STEP) | 0, WEIGHED - 2);
  return Math.max(more[i], more[i + 1]);
}

/** @param felt share of what can slide that a driver feels as all of it */
export const easedBy = (share: number, felt: number): number => (share < felt ? share / felt : 1);

/** Whether a train whose head goes from s to `end` has wheels on rail in another state. */
export function meetsOther({ places }: Rails, length: number, s: number, end: number): boolean {
  for (const { from, to } of places) {
    for (let i = 0; i < from.length; i++) if (to[i] > s - length && from[i] < end) return true;
  }
  return false;
}

/** What all brakes, eased, do less with the head at s than on the day's own rail, at most, N; negative: more. */
export function lostAt(model: StopModel, s: number, v: number): number {
  const { rails } = model;
  if (!rails) return 0;
  let lost = rails.best < 0 ? 0 : easedBy(shareOnOwn(rails, s, v), rails.felt) * rails.ownLost;
  rails.places.forEach((place, i) => {
    if (i !== rails.best) lost += easedBy(shareOn(rails, place, s, v), rails.felt) * place.lost;
  });
  return Math.min(lost, mostOf(rails)) - rails.ownLost;
}

const mostOf = ({ places, ownLost }: Rails): number =>
  places.reduce((most, { lost }) => Math.max(most, lost), ownLost);
