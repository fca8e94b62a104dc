/**
 * Does a rigid frame of three axles or more go round the sharpest curve?
 *
 *   v = R − √(R² − b²/4)      goes round if   v ≤ p + s
 *
 * v how far a middle axle stands inward of the track's middle, R radius, b between the outer axles; p play of the flanges with the
 * widening there, s how far a middle axle moves in the frame. All m. Range: b < 2R, equal spacing (unequal: less). Both outer
 * flanges touch the outer rail then, and the middle one the inner. Source: chord geometry.
 *
 * An owner who states the least radius knows that it goes round: then only what was measured throughout speaks against it.
 */
import { amount } from '../../base/quantity.ts';
import type { OutingContext } from '../../outing/open.ts';
import { middleThrow } from '../../things/clearance/throw.ts';
import type { Line } from '../../things/line/types.ts';
import type { AxleGroup, Vehicle } from '../../things/vehicle/types.ts';
import { playOf } from '../../things/wheel/pair.ts';
import type { Finding, Severity } from '../finding.ts';
import { makeFinding, marginOf } from '../make.ts';

export interface Tightest {
  readonly radius: number;
  readonly widening: number;
  readonly at: number;
}

export function framesBind({ line, outing }: OutingContext): Finding[] {
  const curves = tightestOf(line);
  if (curves.length === 0) return [];
  return outing.train.vehicles.flatMap((vehicle) =>
    vehicle.groups
      .filter((g) => g.axles > 2)
      .flatMap((group) => bindsIn(vehicle, group, curves, line, outing)),
  );
}

/** Of each widening the sharpest curve. */
export function tightestOf({ curves }: Line): Tightest[] {
  const by = new Map<number, Tightest>();
  for (const { from, to, startCurvature, endCurvature, gaugeWidening: widening } of curves) {
    const k = Math.max(Math.abs(startCurvature), Math.abs(endCurvature));
    const known = by.get(widening);
    if (k > 0 && (!known || 1 / k < known.radius))
      by.set(widening, { radius: 1 / k, widening, at: (from + to) / 2 });
  }
  return [...by.values()];
}

function bindsIn(
  vehicle: Vehicle,
  group: AxleGroup,
  curves: readonly Tightest[],
  line: Line,
  { assumed }: OutingContext['outing'],
): Finding[] {
  const own = playOf(vehicle, line.gauge);
  const play = own ?? assumed.coupler.play.high;
  const { middlePlay } = group;
  const lacking = curves
    .map((curve) => {
      // Longer than the curve is wide it cannot stand in it at all: the throw of the widest chord is far beyond any play.
      const needs = middleThrow(curve.radius, Math.min(group.wheelBase, 2 * curve.radius));
      const gives = play + curve.widening + (middlePlay ?? 0);
      return { ...curve, needs, gives, left: gives - needs };
    })
    .reduce<{
      radius: number;
      widening: number;
      at: number;
      needs: number;
      gives: number;
      left: number;
    } | null>((a, b) => (a === null || b.left < a.left ? b : a), null);
  if (lacking === null || lacking.left >= 0) return [];
  const throughout = own !== undefined && middlePlay !== undefined;
  const rated = (vehicle.ratings.leastRadius ?? Infinity) <= lacking.radius + 1e-9;
  if (!throughout && rated) return [];
  const severity: Severity = throughout ? 'forbids' : 'unknown';
  return [
    makeFinding('frame-binds-in-curve', severity, 'fit', {
      where: { vehicle: vehicle.id, from: lacking.at, to: lacking.at },
      found: amount(lacking.needs, 'length'),
      required: amount(lacking.gives, 'length'),
      margin: marginOf(lacking.needs, lacking.gives),
      facts: {
        group: group.name,
        play: amount(lacking.gives, 'length'),
        widening: amount(-lacking.left, 'length'),
        radius: amount(lacking.radius, 'length'),
      },
      ...(throughout
        ? {}
        : {
            sure: 'assumed' as const,
            measure:
              middlePlay === undefined ? 'vehicle.axleGroups.middlePlay' : 'vehicle.wheelsets.backToBack',
          }),
      source: 'chord geometry',
    }),
  ];
}
