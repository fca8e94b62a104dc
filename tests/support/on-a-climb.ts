/** A made-up incline without curves, with an engine of constant pull and two cars, of which all is known. */
import { exact } from '../../engine/base/quantity.ts';
import { type OutingContext, openOuting } from '../../engine/outing/open.ts';
import type { RailStretch } from '../../engine/things/line/types.ts';
import { randomOuting } from './random-outings.ts';

export const G = 9.80665;
export const GRADE = 0.02;
export const ROLLING = 0.006;
export const PER_SPEED = 0.001;
const LENGTH = 400;
export const base = randomOuting(5, 2);

export interface OnClimb {
  /** Starting ÷ rolling resistance. */
  readonly starting?: number;
  /** N at a stand, and falling to nothing at 10 m/s. */
  readonly pull?: number;
  readonly stretches?: readonly RailStretch[];
  /** The rail is level but for this, m. */
  readonly climb?: readonly [number, number];
  readonly signal?: number;
  readonly plannedSpeed?: number;
}

const onRails = exact(1);

export function laid({
  pull = 1000,
  stretches = [],
  climb = [0, LENGTH],
  signal,
  plannedSpeed = 2,
  starting = 1.5,
}: OnClimb): OutingContext {
  const [foot, top] = climb;
  const heights = [...new Set([0, foot, top, LENGTH])].map((at) => ({
    at,
    height: GRADE * (Math.min(Math.max(at, foot), top) - foot),
  }));
  const { assumed, train } = base;
  return openOuting({
    ...base,
    plannedSpeed,
    line: {
      ...base.line,
      loop: false,
      length: LENGTH,
      heights,
      curves: [],
      cants: [],
      speedLimits: [],
      places:
        signal === undefined
          ? []
          : [{ id: 's', name: 'Signal', kind: 'signal' as const, at: signal, stop: false }],
    },
    conditions: { ...base.conditions, railState: 'dry', railStretches: stretches },
    train: {
      ...train,
      vehicles: train.vehicles.map((v, i) => {
        const { traction: _own, ...vehicle } = v;
        const curve = [
          { speed: 0, force: pull },
          { speed: 10, force: 0 },
        ];
        return {
          ...vehicle,
          bearing: 'ball' as const,
          groups: v.groups.map((g) => ({ ...g, driven: i === 0 })),
          resistance: { rolling: exact(ROLLING), perSpeed: exact(PER_SPEED), perSpeedSquared: 0 },
          ...(i === 0 ? { traction: { kind: 'drawbar' as const, how: 'measured' as const, curve } } : {}),
        };
      }),
    },
    assumed: {
      ...assumed,
      adhesion: { ...assumed.adhesion, dry: { ...onRails, how: 'measured' }, greasy: exact(0.02) },
      gradeSpread: { ...assumed.gradeSpread, [base.line.heightQuality]: exact(0) },
      startingByBearing: { ...assumed.startingByBearing, ball: exact(starting) },
    },
  } as typeof base);
}
