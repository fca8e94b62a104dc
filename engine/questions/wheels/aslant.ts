/**
 * Do the outer wheels of a rigid base of two axles, which stand aslant in a curve, still find room between the rails?
 *
 * Of a base of three or more the middle axle asks for far more (`frame.ts`). A base whose flanges nobody measured is held against usual ones,
 * and then it is a note: hand-pushing tells. An owner who states the least radius knows that it goes round.
 */
import { amount } from '../../base/quantity.ts';
import type { OutingContext } from '../../outing/open.ts';
import { guidesOf } from '../../things/coupler/bend.ts';
import type { Vehicle } from '../../things/vehicle/types.ts';
import { aslantRoom, type FlangeShape } from '../../things/wheel/aslant.ts';
import { playOf } from '../../things/wheel/pair.ts';
import type { Finding } from '../finding.ts';
import { makeFinding, marginOf } from '../make.ts';
import { type Tightest, tightestOf } from './frame.ts';

interface Base {
  readonly name: string;
  /** Between its two axles, m. */
  readonly long: number;
  readonly wheelRadius: number | undefined;
}

export function aslantBinds({ line, outing }: OutingContext): Finding[] {
  const curves = tightestOf(line);
  return outing.train.vehicles.flatMap((vehicle) => {
    const found = basesOf(vehicle).flatMap((base) => bindsIn(vehicle, base, curves, line.gauge, outing));
    // Trucks alike bind alike: the worst of a vehicle.
    return found.sort((a, b) => (a.margin ?? 0) - (b.margin ?? 0)).slice(0, 1);
  });
}

/** Trucks of two axles; two single axles in the frame itself. */
function basesOf(vehicle: Vehicle): Base[] {
  const { groups } = vehicle;
  if (groups.length === 2 && groups.every((g) => g.axles === 1)) {
    const [first, last] = guidesOf(vehicle);
    return [{ name: 'its two axles', long: last - first, wheelRadius: groups[0].wheelRadius }];
  }
  return groups
    .filter((g) => g.axles === 2)
    .map((g) => ({ name: g.name, long: g.wheelBase, wheelRadius: g.wheelRadius }));
}

function bindsIn(
  vehicle: Vehicle,
  base: Base,
  curves: readonly Tightest[],
  gauge: number,
  { assumed }: OutingContext['outing'],
): Finding[] {
  const own = playOf(vehicle, gauge);
  const play = own ?? assumed.coupler.play.high;
  const shape = shapeOf(vehicle, base, gauge, assumed.practice);
  const worst = curves
    .map(({ radius, widening, at }) => {
      const needs = mostRoom(shape.flange, gauge - play, Math.min(1, base.long / (2 * radius)));
      return { radius, at, needs, gives: play + widening };
    })
    .reduce<{ radius: number; at: number; needs: number; gives: number } | undefined>(
      (a, b) => (a && a.gives - a.needs <= b.gives - b.needs ? a : b),
      undefined,
    );
  if (!worst || worst.needs <= worst.gives) return [];
  const throughout = shape.measured && own !== undefined;
  if (!throughout && (vehicle.ratings.leastRadius ?? Infinity) <= worst.radius + 1e-9) return [];
  return [
    makeFinding('wheels-aslant-bind', throughout ? 'forbids' : 'notes', 'fit', {
      where: { vehicle: vehicle.id, from: worst.at, to: worst.at },
      found: amount(worst.needs, 'length'),
      required: amount(worst.gives, 'length'),
      margin: marginOf(worst.needs, worst.gives),
      facts: {
        group: base.name,
        widening: amount(worst.needs - worst.gives, 'length'),
        radius: amount(worst.radius, 'length'),
      },
      ...(throughout ? {} : { sure: 'assumed' as const, measure: 'vehicle.axleGroups.wheelRadius' }),
      source: 'geometry of a flange aslant',
    }),
  ];
}

/** Ways to stand that are looked at between straight and as the curve has it. */
const WAYS = 60;

/** Coming into the curve it stands in every way between: a sharper curve never asks for less. */
const mostRoom = (flange: FlangeShape, over: number, sine: number): number =>
  Math.max(...Array.from({ length: WAYS + 1 }, (_, i) => aslantRoom(flange, over, (sine * i) / WAYS)));

/** As measured; what nobody measured is as it usually is. */
function shapeOf(
  { wheelsets = [], flange }: Vehicle,
  { wheelRadius }: Base,
  gauge: number,
  practice: OutingContext['outing']['assumed']['practice'],
): { readonly flange: FlangeShape; readonly measured: boolean } {
  const across = wheelsets.flatMap((w) => w.diameters ?? []);
  const radius = wheelRadius ?? (across.length > 0 ? Math.max(...across) / 2 : undefined);
  const heights = wheelsets.flatMap((w) => (w.flangeHeight === undefined ? [] : [w.flangeHeight]));
  const height = heights.length > 0 ? Math.max(...heights) : undefined;
  return {
    flange: {
      radius: radius ?? practice['wheel-usual'].value * gauge,
      height: height ?? practice['flange-least'].value * gauge,
      angle: flange?.angle ?? Math.PI / 2 - practice['flange-draft'].value,
    },
    measured: radius !== undefined && height !== undefined && flange?.angle !== undefined,
  };
}
