/** The tests that may be worth their minutes: what each would find of an outing, and how far it narrows what is assumed. */
import { exact, type Quantity } from '../../engine/base/quantity.ts';
import { pick } from '../../engine/base/spread.ts';
import type { TestKind } from '../../engine/calibrate/tests/index.ts';
import { openOuting } from '../../engine/outing/open.ts';
import type { Outing } from '../../engine/outing/types.ts';
import { frictionAt, trainBrakes } from '../../engine/things/brake/force.ts';
import type { BrakeGear, Vehicle } from '../../engine/things/vehicle/types.ts';

/** A vehicle finds what it is by itself, or all of a sort alike. */
export type Found = (assumed: Quantity, vehicle?: string) => Quantity;

export interface Candidate {
  readonly kind: TestKind;
  /** Spread after the test ÷ before, as tests of random true trains had it. */
  readonly narrowed: number;
  /** What is assumed of a vehicle: those of which the same is, are of one sort; undefined: nothing. Absent: a test of the whole. */
  readonly assumed?: (vehicle: Vehicle, priors: Priors) => readonly Quantity[] | undefined;
  /** Each of a sort is tested by itself; else one test tells all of them. */
  readonly each?: true;
  /** The outing as the test finds it; undefined: nothing of it is assumed. */
  readonly find: (
    outing: Outing,
    found: Found,
    of: ReadonlySet<string>,
    priors: Priors,
  ) => Outing | undefined;
}

/** What is assumed of the force of each brake, by vehicle and brake: stated, or reckoned from its parts. */
export type Priors = ReadonlyMap<BrakeGear, Quantity>;

const unmeasured = (q: Quantity | undefined): q is Quantity =>
  q !== undefined && q.how !== 'measured' && q.high > q.low;

const those = (all: readonly (Quantity | undefined)[]): readonly Quantity[] | undefined => {
  const open = all.filter(unmeasured);
  return open.length > 0 ? open : undefined;
};

const ofVehicles =
  (change: (v: Vehicle, found: (q: Quantity) => Quantity, outing: Outing, priors: Priors) => Vehicle) =>
  (outing: Outing, found: Found, of: ReadonlySet<string>, priors: Priors): Outing => ({
    ...outing,
    train: {
      ...outing.train,
      vehicles: outing.train.vehicles.map((v) =>
        of.has(v.id) ? change(v, (q) => found(q, v.id), outing, priors) : v,
      ),
    },
  });

/** One figure of a vehicle. */
const figure = (
  kind: TestKind,
  narrowed: number,
  get: (v: Vehicle) => Quantity | undefined,
  put: (v: Vehicle, q: Quantity) => Vehicle,
): Candidate => ({
  kind,
  narrowed,
  assumed: (v) => those([get(v)]),
  find: ofVehicles((v, found) => put(v, found(get(v) as Quantity))),
});

const timed = (key: 'deadTime' | 'buildUp', { assumed }: Outing, gear: BrakeGear): Quantity | undefined =>
  gear[key] ?? (gear.rigging ? undefined : assumed[key][gear.kind]);

/** Force of every brake at a stand, with what is not known of its blocks. */
export function priorsOf(outing: Outing): Priors {
  const { loaded, air, outing: timedOuting } = openOuting(outing);
  const written = new Map(
    timedOuting.train.vehicles.flatMap((v, i) =>
      v.brakes.map((g, k): [BrakeGear, BrakeGear] => [g, outing.train.vehicles[i].brakes[k]]),
    ),
  );
  const priors = new Map<BrakeGear, Quantity>();
  for (const { gear, block, friction } of trainBrakes(loaded, timedOuting.assumed, air.pressure, air.seaLevel)
    .groups) {
    const own = written.get(gear);
    // What only the push gives nobody pulls against.
    if (!own || own.force?.how === 'measured' || gear.pushed) continue;
    const at = (p: -1 | 0 | 1): number =>
      pick(block, p) * (own.force || !friction ? 1 : frictionAt(friction, 0, p));
    const sum = priors.get(own) ?? exact(0);
    priors.set(own, {
      value: sum.value + at(0),
      low: sum.low + at(-1),
      high: sum.high + at(1),
      how: 'assumed',
    });
  }
  return priors;
}

export const candidates: readonly Candidate[] = [
  {
    kind: 'brake-pull',
    narrowed: 0.35,
    each: true,
    assumed: ({ brakes }, priors) => those(brakes.map((b) => priors.get(b))),
    find: ofVehicles((v, found, _, priors) => ({
      ...v,
      brakes: v.brakes.map((gear) => {
        const prior = priors.get(gear);
        return unmeasured(prior) ? { ...gear, force: found(prior) } : gear;
      }),
    })),
  },
  figure(
    'coast-down',
    0.25,
    (v) => v.resistance.rolling,
    (v, rolling) => ({ ...v, resistance: { ...v.resistance, rolling } }),
  ),
  {
    kind: 'locked-wheels',
    narrowed: 0.2,
    find: (outing, found) => {
      const { railState, adhesion } = outing.conditions;
      const q = adhesion ?? outing.assumed.adhesion[railState];
      if (!unmeasured(q)) return undefined;
      const known = found(q);
      return {
        ...outing,
        conditions: { ...outing.conditions, adhesion: known },
        assumed: { ...outing.assumed, adhesion: { ...outing.assumed.adhesion, [railState]: known } },
      };
    },
  },
  {
    kind: 'stop-test',
    narrowed: 0.5,
    // From a signal that he does not expect.
    find: (outing, found) => {
      const { reaction } = outing.conditions;
      if (!unmeasured(reaction)) return undefined;
      return { ...outing, conditions: { ...outing.conditions, reaction: found(reaction) } };
    },
  },
  {
    kind: 'apply-time',
    narrowed: 0.5,
    find: (outing, found) => {
      let any = false;
      const vehicles = outing.train.vehicles.map((v) => ({
        ...v,
        brakes: v.brakes.map((gear) => {
          const [deadTime, buildUp] = [timed('deadTime', outing, gear), timed('buildUp', outing, gear)];
          any ||= unmeasured(deadTime) || unmeasured(buildUp);
          return {
            ...gear,
            ...(unmeasured(deadTime) ? { deadTime: found(deadTime) } : {}),
            ...(unmeasured(buildUp) ? { buildUp: found(buildUp) } : {}),
          };
        }),
      }));
      return any ? { ...outing, train: { ...outing.train, vehicles } } : undefined;
    },
  },
  {
    ...figure(
      'tilt',
      0.1,
      (v) => v.centreHeight,
      (v, centreHeight) => ({ ...v, centreHeight }),
    ),
    each: true,
  },
  {
    ...figure(
      'weighing',
      0.2,
      (v) => v.tare,
      (v, tare) => ({ ...v, tare }),
    ),
    each: true,
  },
  figure(
    'hauling-pull',
    0.2,
    ({ traction }) => (traction?.kind === 'steam' ? traction.meanPressureFactor : undefined),
    (v, meanPressureFactor) =>
      v.traction?.kind === 'steam' ? { ...v, traction: { ...v.traction, meanPressureFactor } } : v,
  ),
  {
    kind: 'curve-resistance',
    narrowed: 0.4,
    find: (outing, found) => {
      const { curveConstant } = outing.assumed;
      if (outing.line.curves.length === 0 || !unmeasured(curveConstant)) return undefined;
      return { ...outing, assumed: { ...outing.assumed, curveConstant: found(curveConstant) } };
    },
  },
  {
    kind: 'slack',
    narrowed: 0.1,
    find: (outing, found) => {
      const { couplerSlack } = outing.assumed;
      const both = outing.train.vehicles.flatMap((v) => [v.front.slack, v.rear.slack]);
      if (both.every((q) => q !== undefined) || !unmeasured(couplerSlack)) return undefined;
      return { ...outing, assumed: { ...outing.assumed, couplerSlack: found(couplerSlack) } };
    },
  },
];
