/**
 * Tests by spring balance: a brake pulled against, a car started and moved, an engine held until it slips or stalls, wheels
 * locked and dragged.
 *
 *   P·k = F + W·(r ± i)     k scale of the balance, F what is looked for, W weight, r rolling resistance, i fall of the floor
 *
 * Pulled both ways, the floor falls out.
 */
import { GRAVITY } from '../../base/constants.ts';
import { exact } from '../../base/quantity.ts';
import { machinePull } from '../../things/traction/pull.ts';
import type { Vehicle } from '../../things/vehicle/types.ts';
import { type Fitting, fitReadings, type Parameter, type Reading, type Values } from '../fit.ts';
import { type Around, errorOf, sharedBy } from '../instruments.ts';
import { type Refusal, refuse } from '../refusal.ts';
import { type Looked, type Outcome, resultsOf } from '../result.ts';
import type { Sense } from '../train.ts';
import type { Recorded } from './recorded.ts';

export interface Pull {
  /** N */
  readonly force: number;
  readonly way: Sense;
}

interface Pulled extends Recorded {
  readonly pulls: readonly Pull[];
  /** Of the vehicle as it was pulled, kg; absent: its tare. */
  readonly mass?: number;
}

/** Brake full on, the vehicle drawn along slowly. */
export interface BrakePull extends Pulled {
  readonly kind: 'brake-pull';
  /** Id of the brake. */
  readonly gear: string;
}

/** What starts a vehicle from rest, and what keeps it moving. */
export interface StartingPull extends Pulled {
  readonly kind: 'starting-pull';
  readonly keeping?: readonly Pull[];
}

/** The engine made fast by a balance and opened up, until its wheels slip or it stalls. */
export interface HaulingPull extends Pulled {
  readonly kind: 'hauling-pull';
  readonly ended: 'slip' | 'stall';
  /** Load on its driven wheels, kg. */
  readonly drivenMass?: number;
  /** Pressure in the boiler as it was pulled, Pa; absent: its working pressure. */
  readonly boilerPressure?: number;
}

/** Wheels locked by brake or wedge and dragged over the rail. */
export interface LockedWheels extends Pulled {
  readonly kind: 'locked-wheels';
}

const LEAST = 3;

interface Pulling {
  readonly test: Pulled;
  readonly vehicle: Vehicle;
  readonly around: Around;
  readonly mass: number;
}

function opened(test: Pulled, around: Around): Pulling | Refusal {
  const { vehicle } = around;
  if (!vehicle) return refuse('not-stated', { field: 'vehicle' });
  if (test.pulls.length < LEAST)
    return refuse('too-few-readings', { found: test.pulls.length, needed: LEAST });
  const none = test.pulls.findIndex((p) => !(p.force > 0));
  if (none >= 0) {
    const found = test.pulls[none].force;
    return refuse('out-of-range', { field: `pulls.${none}.force`, found, low: 0, high: Infinity });
  }
  return { test, vehicle, around, mass: test.mass ?? vehicle.tare.value };
}

/** What is looked for acts with the rolling resistance, or in its place. */
function pulled(
  { test, vehicle, around, mass }: Pulling,
  looked: Looked,
  rolls: boolean,
  also: readonly Pull[] = [],
  more: readonly Looked[] = [],
): Outcome {
  const { instruments } = around;
  const weight = mass * GRAVITY;
  const reading = ({ force }: Pull): Reading => ({ value: force, error: errorOf(instruments.pull) * force });
  const start = test.pulls.reduce((sum, p) => sum + p.force, 0) / test.pulls.length;
  const rolling: Parameter = { key: 'rolling', prior: vehicle.resistance.rolling, law: 'log' };
  const parameters: Parameter[] = [
    { key: 'force', start, law: 'log' },
    ...(rolls ? [also.length > 0 ? rolling : { ...rolling, systematic: true as const }] : []),
    sharedBy('balance', instruments.balance),
    sharedBy('floor', instruments.floor),
  ];
  const tilt = (v: Values, way: Sense): number => (way === 'forward' ? 1 : -1) * weight * v['floor'];
  const keeps = (v: Values): number => (rolls ? weight * v['rolling'] : 0);
  const fitting: Fitting = {
    parameters,
    readings: [...test.pulls.map(reading), ...also.map(reading)],
    kind: 'force',
    model: (v) => [
      ...test.pulls.map(
        (p) => (v['force'] + (also.length > 0 ? 0 : keeps(v)) + tilt(v, p.way)) / v['balance'],
      ),
      ...also.map((p) => (keeps(v) + tilt(v, p.way)) / v['balance']),
    ],
  };
  const made = fitReadings(fitting);
  if ('code' in made) return made;
  return resultsOf(made, [looked, ...more], test, 'more-readings');
}

export function brakePull(test: BrakePull, around: Around): Outcome {
  const open = opened(test, around);
  if ('code' in open) return open;
  const gear = open.vehicle.brakes.find((g) => g.id === test.gear || g.name === test.gear);
  if (!gear)
    return refuse('no-such-brake', { found: test.gear, has: open.vehicle.brakes.map((b) => b.name) });
  const force: Looked = {
    key: 'force',
    kind: 'force',
    of: (v) => v['force'],
    law: 'log',
    ...(gear.force ? { before: gear.force } : {}),
    belongs: [{ paper: 'vehicle', field: 'brakes.force', gear: gear.id }],
  };
  return pulled(open, force, true);
}

export function startingPull(test: StartingPull, around: Around): Outcome {
  const open = opened(test, around);
  if ('code' in open) return open;
  const { vehicle, mass } = open;
  const { rolling, starting } = vehicle.resistance;
  const first: Looked = {
    key: 'starting',
    kind: 'specificForce',
    of: (v) => v['force'] / (mass * GRAVITY),
    law: 'log',
    ...(starting ? { before: starting } : {}),
    belongs: [{ paper: 'vehicle', field: 'resistance.starting' }],
  };
  const keeping: Looked = {
    key: 'rolling',
    kind: 'specificForce',
    of: (v) => v['rolling'],
    law: 'log',
    before: rolling,
    belongs: [{ paper: 'vehicle', field: 'resistance.rolling' }],
  };
  const also = test.keeping ?? [];
  return also.length > 0 ? pulled(open, first, true, also, [keeping]) : pulled(open, first, false);
}

export function lockedWheels(test: LockedWheels, around: Around): Outcome {
  const open = opened(test, around);
  if ('code' in open) return open;
  const weight = open.mass * GRAVITY;
  const adhesion: Looked = {
    key: 'adhesion',
    kind: 'ratio',
    of: (v) => v['force'] / weight,
    law: 'log',
    belongs: [{ paper: 'outing', field: 'conditions.adhesion' }],
  };
  return pulled(open, adhesion, false);
}

export function haulingPull(test: HaulingPull, around: Around): Outcome {
  const open = opened(test, around);
  if ('code' in open) return open;
  const { vehicle } = open;
  if (test.ended === 'slip') {
    const driven = test.drivenMass ?? (vehicle.groups.every((g) => g.driven) ? open.mass : undefined);
    if (driven === undefined) return refuse('not-stated', { field: 'drivenMass' });
    return pulled(
      open,
      {
        key: 'drivenAdhesion',
        kind: 'ratio',
        of: (v) => v['force'] / (driven * GRAVITY),
        law: 'log',
        belongs: [{ paper: 'outing', field: 'conditions.adhesion' }],
      },
      false,
    );
  }
  const { traction } = vehicle;
  if (!traction) return refuse('not-stated', { field: 'traction' });
  if (traction.kind === 'drawbar')
    return pulled(
      open,
      {
        key: 'drawbarPull',
        kind: 'force',
        of: (v) => v['force'],
        law: 'log',
        careful: 'low',
        belongs: [{ paper: 'vehicle', field: 'traction.curve.force' }],
      },
      false,
    );
  const boilerPressure = test.boilerPressure ?? traction.boilerPressure;
  const perFactor = machinePull(
    { ...traction, boilerPressure, meanPressureFactor: exact(1) },
    0,
    0,
  ) as number;
  return pulled(
    open,
    {
      key: 'meanPressureFactor',
      kind: 'ratio',
      of: (v) => v['force'] / perFactor,
      law: 'log',
      before: traction.meanPressureFactor,
      belongs: [{ paper: 'vehicle', field: 'traction.meanPressureFactor' }],
    },
    false,
  );
}
