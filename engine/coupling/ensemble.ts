/**
 * Coupler forces of an outing in a scenario, as a band over many runs.
 *
 * A single peak through slack is not repeatable: how the slack stood at the start decides it. So runs are
 * drawn by seed over slack, its start, stiffness and the brakes' forces and times, and told as a band.
 */
import { type BrakedGroup, groupForce } from '../brake/force.ts';
import { GRAVITY } from '../constants.ts';
import { buildPotential } from '../line/potential.ts';
import { percentile, pick, seeded, triangular } from '../numerics/spread.ts';
import type { OutingContext } from '../outing/context.ts';
import { isCar } from '../train/cars.ts';
import { mostPull } from './loads.ts';
import { type Ramp, type RowBody, type RowCoupler, runRow } from './run.ts';

export type CouplerScenario = 'start' | 'full-brake' | 'engine-brake' | 'rear-brake';
export const couplerScenarios: readonly CouplerScenario[] = [
  'start',
  'full-brake',
  'engine-brake',
  'rear-brake',
];

/** Damping ÷ critical of a pair of neighbours; common practice, no source. */
const DAMPING = 0.1;
/** The throttle is opened fully within this time, s; common practice, no source. */
const THROTTLE = 1;

export interface Band {
  readonly median: number;
  readonly p90: number;
  readonly most: number;
}

export interface GapBand {
  readonly gap: number;
  /** N, ≥ 0 */
  readonly pull: Band;
  readonly push: Band;
}

export interface EnsembleAsk {
  readonly scenario: CouplerScenario;
  /** Head's chainage, m, and speed, m/s (a start is from rest). */
  readonly at: number;
  readonly speed: number;
  readonly runs: number;
  readonly seed: number;
  /** s */
  readonly time: number;
}

export function couplerBands(
  context: OutingContext,
  brakes: readonly BrakedGroup[],
  ask: EnsembleAsk,
): GapBand[] {
  const bodies = bodiesOf(context);
  const uniform = seeded(ask.seed);
  const gaps = Math.max(0, bodies.length - 1);
  const pulls = Array.from({ length: gaps }, () => new Float64Array(ask.runs));
  const pushes = Array.from({ length: gaps }, () => new Float64Array(ask.runs));
  const speed = ask.scenario === 'start' ? 0 : ask.speed;
  for (let run = 0; run < ask.runs; run++) {
    const result = runRow({
      bodies,
      couplers: drawCouplers(context, bodies, uniform),
      efforts: ask.scenario === 'start' ? drawEfforts(context, uniform) : [],
      brakes: ask.scenario === 'start' ? [] : drawBrakes(context, brakes, ask, uniform),
      head: ask.at,
      speeds: bodies.map(() => speed),
      time: ask.time,
    });
    for (let g = 0; g < gaps; g++) {
      pulls[g][run] = result.pull[g];
      pushes[g][run] = result.push[g];
    }
  }
  return pulls.map((pull, gap) => ({ gap, pull: bandOf(pull), push: bandOf(pushes[gap]) }));
}

function bandOf(values: Float64Array): Band {
  const sorted = values.sort();
  return { median: percentile(sorted, 0.5), p90: percentile(sorted, 0.9), most: sorted[sorted.length - 1] };
}

function bodiesOf({ line, loaded, outing }: OutingContext): RowBody[] {
  return loaded.vehicles.map(({ vehicle, mass, effectiveMass, behind }) => {
    const rolling = mass * GRAVITY * vehicle.resistance.rolling.value;
    return {
      mass: effectiveMass,
      rolling,
      starting: vehicle.resistance.starting
        ? mass * GRAVITY * vehicle.resistance.starting.value
        : rolling * outing.assumed.startingFactor.value,
      grade: buildPotential(
        line,
        [{ behind, length: vehicle.length, mass }],
        0,
        line.length,
        0.5,
        outing.assumed.curveConstant.value,
      ),
    };
  });
}

function drawCouplers(
  { loaded, outing }: OutingContext,
  bodies: readonly RowBody[],
  uniform: () => number,
): RowCoupler[] {
  const { couplerSlack, couplerStiffness } = outing.assumed;
  const draw = (q: typeof couplerSlack): number => pick(q, triangular(uniform()));
  return loaded.vehicles.slice(0, -1).map(({ vehicle }, i) => {
    const [a, b] = [vehicle.rear, loaded.vehicles[i + 1].vehicle.front];
    const slack = draw(a.slack ?? couplerSlack) + draw(b.slack ?? couplerSlack);
    // Two couplers in series give way one after the other.
    const stiffness =
      1 / (1 / draw(a.stiffness ?? couplerStiffness) + 1 / draw(b.stiffness ?? couplerStiffness));
    const mass = 1 / (1 / bodies[i].mass + 1 / bodies[i + 1].mass);
    return {
      slack,
      stiffness,
      damping: 2 * DAMPING * Math.sqrt(stiffness * mass),
      start: (uniform() - 0.5) * slack,
    };
  });
}

function drawEfforts({ loaded, outing }: OutingContext, uniform: () => number): Ramp[] {
  const adhesion = outing.assumed.adhesion[outing.conditions.railState];
  return loaded.vehicles.flatMap((v, vehicle) =>
    v.vehicle.traction
      ? [{ vehicle, force: mostPull(v, adhesion), dead: 0, rise: THROTTLE * (0.2 + 0.8 * uniform()) }]
      : [],
  );
}

/** Brake forces at half the speed: friction changes little over a stop, the times much more. */
function drawBrakes(
  { loaded, outing }: OutingContext,
  groups: readonly BrakedGroup[],
  { scenario, speed }: EnsembleAsk,
  uniform: () => number,
): Ramp[] {
  const adhesion = outing.assumed.adhesion[outing.conditions.railState].value;
  const braked = loaded.vehicles.flatMap((v, i) =>
    isCar(v.vehicle) && groups.some((g) => g.vehicle === i) ? [i] : [],
  );
  const rear = braked[braked.length - 1];
  return groups
    .filter((g) =>
      scenario === 'engine-brake'
        ? !isCar(loaded.vehicles[g.vehicle].vehicle)
        : scenario === 'rear-brake'
          ? g.vehicle === rear
          : true,
    )
    .map((g) => ({
      vehicle: g.vehicle,
      force: groupForce(g, speed / 2, adhesion, outing.assumed.slideFactor.value, triangular(uniform())),
      dead: pick(g.deadTime, triangular(uniform())),
      rise: Math.max(1e-3, pick(g.buildUp, triangular(uniform()))),
    }));
}
