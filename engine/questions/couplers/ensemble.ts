/**
 * Coupler forces of an outing in a scenario, as a band over many runs.
 *
 * A single peak through slack is not repeatable: how the slack stood at the start decides it. So runs are
 * drawn by seed over slack, its start, stiffness, masses, resistance, adhesion, the engine's pull and the brakes' forces
 * and times, and told as a band. Adhesion and the pull of steam are drawn once a run, what a vehicle has for itself for
 * each. The first run is the likely one, everything at its likely value and the slack half out where it may stand anyhow.
 */

import { GRAVITY } from '../../base/constants.ts';
import type { Quantity } from '../../base/quantity.ts';
import { percentile, pick, seeded, triangular } from '../../base/spread.ts';
import { type Ramp, type RowBody, type RowCoupler, runRow } from '../../motion/row.ts';
import { between3 } from '../../motion/stop-inputs.ts';
import type { OutingContext } from '../../outing/open.ts';
import { bestRail } from '../../outing/rails.ts';
import { type BrakedGroup, groupForce } from '../../things/brake/force.ts';
import { buildPotential, type Potential } from '../../things/line/potential.ts';
import { adhesionLimit, machinePull } from '../../things/traction/pull.ts';
import { isCar } from '../../things/train/cars.ts';
import type { LoadedVehicle } from '../../things/train/loaded.ts';

export const couplerScenarios = [
  'start',
  'start-bunched',
  'full-brake',
  'engine-brake',
  'run-in',
  'rear-brake',
] as const;
export type CouplerScenario = (typeof couplerScenarios)[number];

interface Course {
  /** Which vehicles brake; absent: the engines pull. */
  readonly brakes?: 'all' | 'engines' | 'rear';
  /** How the slack stands at the start: all in (−1), all out (1); absent: anyhow. */
  readonly slack?: -1 | 1;
}

const courses: Readonly<Record<CouplerScenario, Course>> = {
  start: {},
  'start-bunched': { slack: -1 },
  'full-brake': { brakes: 'all' },
  'engine-brake': { brakes: 'engines' },
  'run-in': { brakes: 'engines', slack: 1 },
  'rear-brake': { brakes: 'rear' },
};

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
  /** Head's chainage, m; absent: level and straight. */
  readonly at?: number;
  /** m/s; a start is from rest. */
  readonly speed: number;
  readonly runs: number;
  readonly seed: number;
  /** s */
  readonly time: number;
}

/** Peaks of one gap by run, N, ≥ 0. */
export interface GapRuns {
  readonly pull: Float64Array;
  readonly push: Float64Array;
}

export const couplerBands = (
  context: OutingContext,
  brakes: readonly BrakedGroup[],
  ask: EnsembleAsk,
): GapBand[] =>
  couplerRuns(context, brakes, ask).map(({ pull, push }, gap) => ({
    gap,
    pull: bandOf(pull),
    push: bandOf(push),
  }));

export function couplerRuns(
  context: OutingContext,
  brakes: readonly BrakedGroup[],
  ask: EnsembleAsk,
): GapRuns[] {
  const grades = ask.at === undefined ? [] : context.loaded.vehicles.map((v) => gradeUnder(context, v));
  const drawn = seeded(ask.seed);
  // By themselves: they leave all other draws as they were.
  const byItself = seeded(ask.seed + BY_ITSELF);
  const runs = context.loaded.vehicles
    .slice(1)
    .map((): GapRuns => ({ pull: new Float64Array(ask.runs), push: new Float64Array(ask.runs) }));
  const course = courses[ask.scenario];
  const speed = course.brakes ? ask.speed : 0;
  for (let run = 0; run < ask.runs; run++) {
    const [uniform, apart] = run === 0 ? [half, half] : [drawn, byItself];
    const bodies = drawBodies(context, grades, uniform);
    const grip = triangular(uniform());
    const result = runRow({
      bodies,
      couplers: drawCouplers(context, bodies, course, uniform),
      efforts: course.brakes ? [] : drawEfforts(context, grip, uniform, apart),
      brakes: drawBrakes(context, brakes, course, speed, grip, uniform),
      head: ask.at ?? 0,
      speeds: bodies.map(() => speed),
      time: ask.time,
    });
    runs.forEach(({ pull, push }, gap) => {
      pull[run] = result.pull[gap];
      push[run] = result.push[gap];
    });
  }
  return runs;
}

const half = (): number => 0.5;
const BY_ITSELF = 1_000_003;

function bandOf(values: Float64Array): Band {
  const sorted = values.slice().sort();
  return { median: percentile(sorted, 0.5), p90: percentile(sorted, 0.9), most: sorted[sorted.length - 1] };
}

function drawBodies(
  { loaded, outing: { assumed } }: OutingContext,
  grades: readonly Potential[],
  uniform: () => number,
): RowBody[] {
  const draw = (q: Quantity): number => pick(q, triangular(uniform()));
  return loaded.vehicles.map(({ vehicle, mass, massLow, massHigh, effectiveMass }, i) => {
    const heavy = between3(massLow, mass, massHigh, triangular(uniform()));
    const weight = heavy * GRAVITY;
    const { rolling, starting } = vehicle.resistance;
    const resists = weight * draw(rolling);
    return {
      mass: effectiveMass + heavy - mass,
      rolling: resists,
      starting: starting ? weight * draw(starting) : resists * draw(assumed.startingFactor),
      ...(grades.length > 0 ? { grade: grades[i] } : {}),
    };
  });
}

function gradeUnder({ line, outing }: OutingContext, { behind, vehicle, mass }: LoadedVehicle): Potential {
  const stretch = { behind, length: vehicle.length, mass };
  return buildPotential(line, [stretch], 0, line.length, 0.5, outing.assumed.curveConstant.value);
}

function drawCouplers(
  { loaded, outing }: OutingContext,
  bodies: readonly RowBody[],
  { slack: stands }: Course,
  uniform: () => number,
): RowCoupler[] {
  const { couplerSlack, couplerStiffness, coupler } = outing.assumed;
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
      damping: 2 * coupler.damping.value * Math.sqrt(stiffness * mass),
      start: (stands === undefined ? uniform() - 0.5 : stands / 2) * slack,
    };
  });
}

/** @param grip position of today's adhesion */
function drawEfforts(
  context: OutingContext,
  grip: number,
  uniform: () => number,
  apart: () => number,
): Ramp[] {
  const { loaded, outing } = context;
  const { low, high } = outing.assumed.throttle;
  const adhesion = outing.assumed.adhesion[bestRail(context, outing.conditions.railState)];
  const [steam, height] = [triangular(uniform()), triangular(apart())];
  return loaded.vehicles.flatMap((v, vehicle) => {
    if (!v.vehicle.traction) return [];
    // Where the machine is not known, what adhesion allows.
    const machine = machinePull(v.vehicle.traction, 0, steam) ?? Infinity;
    const force = Math.min(
      machine,
      adhesionLimit(v, pick(adhesion, grip), 0, outing.assumed.engineHeight, height),
    );
    return [{ vehicle, force, dead: 0, rise: low + (high - low) * uniform() }];
  });
}

/** Brake forces at half the speed: friction changes little over a stop, the times much more. */
function drawBrakes(
  context: OutingContext,
  groups: readonly BrakedGroup[],
  { brakes }: Course,
  speed: number,
  grip: number,
  uniform: () => number,
): Ramp[] {
  const { loaded, outing } = context;
  const adhesion = pick(outing.assumed.adhesion[bestRail(context, outing.conditions.railState)], grip);
  const { floor, fallSpeed } = outing.assumed.skid;
  const skid = { floor: floor.value, fallSpeed: fallSpeed.value };
  const onCar = (g: BrakedGroup): boolean => isCar(loaded.vehicles[g.vehicle].vehicle);
  const rear = Math.max(...groups.filter(onCar).map((g) => g.vehicle));
  const acts = (g: BrakedGroup): boolean =>
    brakes === 'all' || (brakes === 'engines' && !onCar(g)) || (brakes === 'rear' && g.vehicle === rear);
  return groups.filter(acts).map((g) => ({
    vehicle: g.vehicle,
    force: groupForce(g, speed / 2, adhesion, skid, triangular(uniform())),
    dead: pick(g.deadTime, triangular(uniform())),
    rise: Math.max(1e-3, pick(g.buildUp, triangular(uniform()))),
  }));
}
