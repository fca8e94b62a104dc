/** The train stood on its line at one place, wheels midway in their play: where each body lies, and how far it hangs over. */
import type { Corner } from '../../base/numerics/polygon.ts';
import type { OutingContext } from '../../outing/open.ts';
import {
  MIDDLE,
  placeAt,
  pointBeside,
  type SweptShape,
  standing,
  standOn,
} from '../../things/clearance/swept.ts';
import { guidesOf } from '../../things/coupler/bend.ts';
import { layPlan, type Plan } from '../../things/line/plan.ts';
import type { LoadedVehicle } from '../../things/train/loaded.ts';

/** How far the axis lies off the middle of the track, m, to the left above nothing. */
export interface Hang {
  readonly front: number;
  readonly middle: number;
  readonly rear: number;
}

export interface PlacedVehicle {
  readonly name: string;
  /** Ends of its axis, the front first. */
  readonly axis: readonly [Corner, Corner];
  /** Corners round; undefined: nobody measured its width. */
  readonly corners?: readonly [Corner, Corner, Corner, Corner];
  /** Where its guides stand on the track: truck centres, or outer axles. */
  readonly guides: readonly [Corner, Corner];
  readonly hang: Hang;
}

/** null in place of a vehicle: its frame cannot stand there. */
export type PlacedTrain = readonly (PlacedVehicle | null)[];

export interface StandingPlan {
  readonly plan: Plan;
  /** Chainage of the head in the running direction. */
  readonly stand: (head: number) => PlacedTrain;
}

/** Beyond the ends of the line and over a loop's seam so far, m: a whole train, and as much of the line about it as is looked at. */
const BEYOND = 20;

/** The plan is laid once; each stand is then a matter of a chord a vehicle. */
export function standingPlan({ line, loaded }: OutingContext): StandingPlan {
  const reach = loaded.length + BEYOND;
  const plan = layPlan(line, -reach, line.length + reach);
  return {
    plan,
    stand: (head) => loaded.vehicles.map((v) => placed(plan, v, head)),
  };
}

function placed(plan: Plan, { vehicle, behind }: LoadedVehicle, head: number): PlacedVehicle | null {
  const [first, last] = guidesOf(vehicle);
  const half = vehicle.envelope === undefined ? 0 : vehicle.envelope.width / 2;
  const shape: SweptShape = {
    guides: last - first,
    box: { rear: last - vehicle.length, front: last, right: -half, left: half },
  };
  const rear = head - behind - last;
  const stand = standing(shape.guides);
  if (!standOn(plan, shape.guides, rear, MIDDLE, stand)) return null;
  const spot = (along: number, across: number): Corner => ({
    x: stand.x + along * stand.ux - across * stand.uy,
    y: stand.y + along * stand.uy + across * stand.ux,
  });
  const { box } = shape;
  const off = (along: number): number =>
    (pointBeside(plan, shape, rear, { along, across: 0 }, MIDDLE) as { readonly aside: number }).aside;
  return {
    name: vehicle.name,
    axis: [spot(box.front, 0), spot(box.rear, 0)],
    guides: [spot(shape.guides, 0), spot(0, 0)],
    hang: { front: off(box.front), middle: off(shape.guides / 2), rear: off(box.rear) },
    ...(half === 0
      ? {}
      : {
          corners: [
            spot(box.front, half),
            spot(box.front, -half),
            spot(box.rear, -half),
            spot(box.rear, half),
          ] as const,
        }),
  };
}

/** A place so far to the left of the track's middle, m. */
export function besideTrack(plan: Plan, s: number, aside: number): Corner {
  const { x, y, nx, ny } = placeAt(plan, s);
  return { x: x + aside * nx, y: y + aside * ny };
}
