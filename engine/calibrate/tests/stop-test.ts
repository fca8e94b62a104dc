/**
 * Stop test: from a steady speed, full brake from a mark on, and where the head comes to rest; at several speeds, both ways,
 * dry and wet apart. What is fitted: the full retarding force of the brakes, their dead time and their build-up. Dead time
 * lengthens a stop with the speed, force with its square: stops at one speed alone do not tell them apart.
 *
 * From a signal that the driver does not expect, instead of a mark at which he acts, the stop has his reaction in it.
 */
import { exact } from '../../base/quantity.ts';
import { remembered } from '../../base/remember.ts';
import { emptyTrace, modelOf, type StopModel, type StopTrace } from '../../motion/model.ts';
import { likely } from '../../motion/scenario.ts';
import { stopInto } from '../../motion/stop.ts';
import { buildInputs } from '../../motion/stop-inputs.ts';
import type { OutingContext } from '../../outing/open.ts';
import { type BrakedGroup, forceAtRest, trainBrakes } from '../../things/brake/force.ts';
import { type BrakeKind, brakeKinds } from '../../things/brake/kinds/index.ts';
import { buildPotential, type Potential } from '../../things/line/potential.ts';
import { brakedOnSand, type RailState } from '../../things/rail.ts';
import { type Fitting, fitReadings, type Parameter, type Reading, type Values } from '../fit.ts';
import { type Around, besides, errorOf, sharedBy } from '../instruments.ts';
import { type Further, type Refusal, refuse } from '../refusal.ts';
import { type Belongs, type Looked, type Outcome, resultsOf } from '../result.ts';
import {
  alike,
  numbered,
  pooled,
  rollingOf,
  runningLine,
  type Sense,
  stretchesOf,
  wheelsOf,
} from '../train.ts';
import type { Recorded } from './recorded.ts';

export interface Stop {
  readonly way: Sense;
  /** Where the brake was put on or the signal was given: chainage of the head, m. */
  readonly from: number;
  /** m/s there. */
  readonly speed: number;
  /** Where the head came to rest. */
  readonly restAt: number;
  /** From the mark to rest, s. */
  readonly time?: number;
}

export interface StopTest extends Recorded {
  readonly kind: 'stop-test';
  /** `signal`: the driver's reaction is part of it. */
  readonly begins: 'action' | 'signal';
  readonly rail: RailState;
  /** Kinds that were put on; absent: all that answer the driver. */
  readonly brakes?: readonly BrakeKind[];
  readonly stops: readonly Stop[];
}

const LEAST = 3;
/** A stop is followed so far beyond the place where it ended, m. */
const BEYOND = 150;
const STEP = 0.5;

export function stopTest(test: StopTest, around: Around): Outcome {
  const { outing: context } = around;
  if (!context) return refuse('not-stated', { field: 'outing' });
  const wrong = firstWrong(test, context);
  if (wrong) return wrong;
  const { pressure, seaLevel } = context.air;
  const groups = trainBrakes(context.loaded, context.outing.assumed, pressure, seaLevel).groups.filter(
    (g) => test.brakes?.includes(g.gear.kind) ?? true,
  );
  if (groups.length === 0) return refuse('not-stated', { field: 'brakes.force' });
  const made = fitReadings(fittingOf(test, context, groups, around));
  if ('code' in made) return made;
  return resultsOf(made, lookedFor(test, context, groups), test, furtherOf(test, groups));
}

function furtherOf({ stops }: StopTest, groups: readonly BrakedGroup[]): Further {
  if (kindsOf(groups).length > 1) return 'one-brake';
  const speeds = stops.map((s) => s.speed);
  return Math.max(...speeds) < 1.5 * Math.min(...speeds) ? 'more-speeds' : 'more-readings';
}

function firstWrong({ stops }: StopTest, { outing }: OutingContext): Refusal | undefined {
  if (stops.length < LEAST) return refuse('too-few-readings', { found: stops.length, needed: LEAST });
  const back = stops.findIndex((s) => !(distanceOf(s, outing.line.length, outing.line.loop) > 0));
  return back < 0 ? undefined : refuse('runs-backwards', { reading: back + 1 });
}

/** Beyond half a lap it went the other way. */
function distanceOf({ way, from, restAt }: Stop, length: number, loop: boolean): number {
  const on = way === 'forward' ? restAt - from : from - restAt;
  return loop && on < -length / 2 ? on + length : on;
}

function lookedFor(
  { begins }: StopTest,
  { outing }: OutingContext,
  groups: readonly BrakedGroup[],
): Looked[] {
  const gears = [...new Set(groups.map((g) => g.gear))].map((gear) => {
    const own = groups.filter((g) => g.gear === gear);
    const force = own.reduce((sum, g) => sum + forceAtRest(g), 0);
    const spread = pooled(own, (g) => g.block);
    return {
      gear,
      own,
      force: { ...spread, value: force, low: force * spread.low, high: force * spread.high },
    };
  });
  const belongs = (field: string, of: readonly (typeof gears)[number][]): Belongs[] =>
    of.map(({ gear, own }) => ({
      paper: 'vehicle',
      field,
      vehicle: outing.train.vehicles[own[0].vehicle].id,
      gear: gear.id,
    }));
  const each = (
    key: string,
    kind: Looked['kind'],
    field: string,
    factor: string,
    of: (g: (typeof gears)[number]) => Looked['before'] & object,
  ): Looked[] => {
    const same = brakeKinds.flatMap((k) =>
      alike(
        gears.filter((g) => g.gear.kind === k),
        of,
      ),
    );
    return same.map((some, i) => ({
      key: numbered(key, i, same.length),
      kind,
      of: (v) => v[`${factor} ${some[0].gear.kind}`] * of(some[0]).value,
      law: 'log',
      before: of(some[0]),
      belongs: belongs(field, some),
    }));
  };
  return [
    ...each('force', 'force', 'brakes.force', 'brake', (g) => g.force),
    ...each('deadTime', 'time', 'brakes.deadTime', 'dead', (g) => g.own[0].deadTime),
    ...each('buildUp', 'time', 'brakes.buildUp', 'build', (g) => g.own[0].buildUp),
    ...(begins === 'signal'
      ? [
          {
            key: 'reaction',
            kind: 'time',
            of: (v: Values) => v['reaction'],
            law: 'log',
            before: outing.conditions.reaction,
            belongs: [{ paper: 'outing', field: 'conditions.reaction' }],
          } as const,
        ]
      : []),
  ];
}

function fittingOf(
  test: StopTest,
  context: OutingContext,
  groups: readonly BrakedGroup[],
  { instruments }: Around,
): Fitting {
  const { outing, loaded } = context;
  const [watch, mark] = [instruments.stopwatch, instruments.mark].map(errorOf);
  const speed = errorOf(instruments.speed);
  const readings = test.stops.flatMap((stop): Reading[] => [
    { value: stop.speed, error: speed, kind: 'speed' },
    { value: distanceOf(stop, outing.line.length, outing.line.loop), error: mark },
    ...(stop.time === undefined
      ? []
      : [{ value: stop.time, error: Math.SQRT2 * watch, kind: 'time' as const }]),
  ]);
  const parameters: Parameter[] = [
    ...kindsOf(groups).flatMap((kind): Parameter[] => {
      const own = groups.filter((g) => g.gear.kind === kind);
      return [
        { key: `brake ${kind}`, prior: pooled(own, (g) => g.block, forceAtRest), law: 'log' },
        { key: `dead ${kind}`, prior: pooled(own, (g) => g.deadTime, forceAtRest), law: 'log' },
        { key: `build ${kind}`, prior: pooled(own, (g) => g.buildUp, forceAtRest), law: 'log' },
      ];
    }),
    ...(test.begins === 'signal'
      ? [{ key: 'reaction', prior: outing.conditions.reaction, law: 'log' } as const]
      : []),
    besides('adhesion', outing.conditions.adhesion ?? brakedOnSand(outing.assumed, test.rail)),
    besides('rolling', rollingOf(loaded.vehicles)),
    besides('wheels', wheelsOf(loaded.vehicles)),
    sharedBy('grade', outing.assumed.gradeSpread[outing.line.heightQuality]),
    sharedBy('tape', instruments.tape),
    sharedBy('speedometer', instruments.speedometer),
    ...test.stops.map((stop, i): Parameter => ({ key: `speed ${i}`, start: stop.speed, law: 'log' })),
  ];
  const ways = { forward: stopper('forward'), reverse: stopper('reverse') };
  const model = (v: Values): number[] =>
    test.stops.flatMap((stop, i) => {
      const from = runningLine(outing.line, stop.way).at(stop.from);
      const told = ways[stop.way](v, from, v[`speed ${i}`]);
      return [
        v[`speed ${i}`] / v['speedometer'],
        told.distance / v['tape'],
        ...(stop.time === undefined ? [] : [told.time]),
      ];
    });
  return { parameters, readings, kind: 'length', model };

  /** Made ready anew only for what changes it: not for the tape, nor for how fast another stop began. */
  function stopper(way: Sense): (v: Values, from: number, speed: number) => StopTrace {
    const potential = potentialFor(test.stops, way, context);
    const by = [...READY_BY, ...kindsOf(groups).flatMap((k) => [`brake ${k}`, `dead ${k}`, `build ${k}`])];
    const ready = remembered((key: string) => {
      const figures = key.split(' ').map(Number);
      const v = Object.fromEntries(by.map((k, i) => [k, figures[i]]));
      return modelFor(context, groups, test.rail, potential as Potential, v, way);
    });
    return (v, from, speed) => {
      const out = emptyTrace();
      stopInto(ready(by.map((k) => v[k] ?? 0).join(' ')), from, speed, out);
      return out;
    };
  }
}

/** One pipe, one pressure: brakes of a kind are strong or slow together, those of another kind by themselves. */
const kindsOf = (groups: readonly BrakedGroup[]): readonly BrakeKind[] =>
  brakeKinds.filter((kind) => groups.some((g) => g.gear.kind === kind));

const READY_BY = ['reaction', 'adhesion', 'rolling', 'wheels', 'grade'];

/** Of all stops that way. */
function potentialFor(
  all: readonly Stop[],
  way: Sense,
  { outing, loaded }: OutingContext,
): Potential | undefined {
  const stops = all.filter((s) => s.way === way);
  if (stops.length === 0) return undefined;
  const { line, at } = runningLine(outing.line, way);
  const reach = stops.map((s) => ({ from: at(s.from), length: distanceOf(s, line.length, line.loop) }));
  return buildPotential(
    line,
    stretchesOf(loaded),
    Math.min(...reach.map((r) => r.from)),
    Math.max(...reach.map((r) => r.from + 2 * r.length)) + BEYOND,
    STEP,
    outing.assumed.curveConstant.value,
  );
}

/** The train's stops as the engine reckons them, with what is fitted put in. */
function modelFor(
  { outing, loaded }: OutingContext,
  groups: readonly BrakedGroup[],
  rail: RailState,
  potential: Potential,
  v: Values,
  way: Sense,
): StopModel {
  const own = groups.map((g) => ({
    ...g,
    block: exact(g.block.value * v[`brake ${g.gear.kind}`]),
    deadTime: exact(g.deadTime.value * v[`dead ${g.gear.kind}`]),
    buildUp: exact(g.buildUp.value * v[`build ${g.gear.kind}`]),
  }));
  const inputs = buildInputs(
    loaded,
    own,
    potential,
    exact(v['adhesion']),
    exact(v['reaction'] ?? 0),
    outing.assumed,
    { state: rail, grade: exact((way === 'forward' ? 1 : -1) * v['grade']) },
  );
  const model = modelOf(inputs, likely, false);
  model.a += (v['rolling'] - 1) * inputs.resistance.value.a;
  model.inertia += (v['wheels'] - 1) * (inputs.effectiveMass - inputs.mass);
  return model;
}
