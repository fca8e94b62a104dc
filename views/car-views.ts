/**
 * A vehicle drawn to scale, from the side and from above, front to the left; both views share the scale
 * along the car, so that what lies below a seat is what carries it. Pure: data in, scene out.
 *
 * Lengths, wheels, trucks, seats and their heights are the vehicle's own. The shape of body and people is
 * only a likeness.
 */
import type { LoadedVehicle, SeatedRider } from '../engine/things/train/loaded.ts';
import type { AxleGroup, Vehicle } from '../engine/things/vehicle/types.ts';
import { bodyTop, bodyWidth, buildOf, CROWN, floorOf, HEAD, wheelOf } from './silhouette.ts';
import {
  drawing,
  group,
  lineShape,
  pathShape,
  px,
  rectShape,
  type Scene,
  type Shape,
  shape,
  textShape,
} from './strip/scene.ts';

export interface CarView {
  /** px per metre. */
  readonly scale: number;
  /** Height shown above the rail, m. */
  readonly top: number;
  /** Written over each rider, as a weight; absent: nothing. */
  readonly weigh?: (kilograms: number) => string;
}

/** Coupler drawn at either end, m; the length of a vehicle is over its couplers. */
const COUPLER = 0.07;
const RAIL_ROOM = 8;

/** Axles of a group from the front, m. */
export function axlesOf({ at, axles, wheelBase }: AxleGroup): number[] {
  if (axles === 1) return [at];
  return Array.from({ length: axles }, (_, i) => at - wheelBase / 2 + (wheelBase * i) / (axles - 1));
}

/** Height that shows everything of the vehicle and everybody on it, m. */
export function heightOf({ vehicle, riders }: LoadedVehicle): number {
  const heads = riders.map((r) => r.seat.height + CROWN * buildOf(r.rider) + 0.02);
  const seats = vehicle.seats.map((s) => s.height + 0.3);
  return Math.max(0.5, ...heads, ...seats, vehicle.role === 'car' ? 0 : bodyTop(vehicle) + 0.12);
}

export function carSide(loaded: LoadedVehicle, view: CarView): Scene {
  const { vehicle, riders } = loaded;
  const { scale, top } = view;
  const lettering = view.weigh ? 15 : 0;
  const x = (m: number): number => m * scale;
  const y = (h: number): number => lettering + (top - h) * scale;
  const at: Place = { x, y, scale };
  const width = x(vehicle.length);
  return drawing(width, y(0) + RAIL_ROOM, `${vehicle.name} from the side`, [
    lineShape('rail', 0, y(0), width, y(0)),
    ...couplers(vehicle, at),
    ...sideBody(vehicle, at),
    ...vehicle.seats
      .filter((s) => !riders.some((r) => r.seat.id === s.id))
      .map((s) => emptySeat(s.at, s.height, at)),
    ...riders.map((r) => person(r, floorOf(vehicle), at)),
    ...(view.weigh ? weights(riders, at, view.weigh) : []),
  ]);
}

const sideBody = (vehicle: Vehicle, at: Place): Shape[] => [
  ...vehicle.groups.flatMap((g) => running(g, at)),
  ...(vehicle.role === 'car' || vehicle.role === 'guard' ? carBody(vehicle, at) : engineBody(vehicle, at)),
];

/** The same without what is too small on a strip: rail at 0, front to the left. @param scale px per metre */
export function silhouette({ vehicle, riders }: LoadedVehicle, scale: number): Shape[] {
  const at: Place = { x: (m) => m * scale, y: (h) => -h * scale, scale };
  return [...riders.map((r) => person(r, floorOf(vehicle), at)), ...sideBody(vehicle, at)];
}

interface Place {
  readonly x: (m: number) => number;
  readonly y: (h: number) => number;
  readonly scale: number;
}

function couplers(vehicle: Vehicle, { x, y }: Place): Shape[] {
  const ends = [
    { end: vehicle.front, from: 0, to: COUPLER * 1.6 },
    { end: vehicle.rear, from: vehicle.length - COUPLER * 1.6, to: vehicle.length },
  ];
  return ends.flatMap(({ end, from, to }) => {
    const h = y(end.height ?? floorOf(vehicle) - 0.02);
    const bar = rectShape(end.height === undefined ? 'seat' : 'solid', x(from), h - 2, x(to) - x(from), 4);
    if (!end.chain) return [bar];
    const sag = `M${px(x(from))},${px(h + 4)}q${px((x(to) - x(from)) / 2)},8 ${px(x(to) - x(from))},0`;
    return [bar, pathShape('fine', sag)];
  });
}

function running(g: AxleGroup, { x, y, scale }: Place): Shape[] {
  const r = wheelOf(g);
  const axles = axlesOf(g);
  const [first, last] = [axles[0], axles[axles.length - 1]];
  const frame =
    axles.length > 1
      ? [
          rectShape(
            'body',
            x(first - r * 0.5),
            y(r * 1.25),
            x(last - first + r),
            Math.max(3, r * 0.5 * scale),
          ),
        ]
      : [];
  const rods =
    g.driven && axles.length > 1 ? [lineShape('bold', x(first), y(r * 0.8), x(last), y(r * 0.8))] : [];
  return [
    ...axles.map((a) =>
      shape('circle', { class: 'wheel', cx: px(x(a)), cy: px(y(r)), r: px(Math.max(2, r * scale)) }),
    ),
    ...frame,
    ...rods,
  ];
}

/** A bed over the trucks and a bench to the height of the seats. */
function carBody(vehicle: Vehicle, { x, y, scale }: Place): Shape[] {
  const floor = floorOf(vehicle);
  const bed = rectShape(
    'body',
    x(COUPLER),
    y(floor),
    x(vehicle.length - 2 * COUPLER),
    Math.max(3, 0.04 * scale),
  );
  if (vehicle.seats.length === 0) return [bed];
  const ats = vehicle.seats.map((s) => s.at);
  const seat = Math.min(...vehicle.seats.map((s) => s.height));
  const from = Math.max(COUPLER * 1.4, Math.min(...ats) - 0.26);
  const to = Math.min(vehicle.length - COUPLER * 1.4, Math.max(...ats) + 0.26);
  return [
    bed,
    rectShape('body', x(from), y(seat), x(to - from), (seat - floor) * scale),
    lineShape('bold', x(from), y(seat), x(to), y(seat)),
  ];
}

/** A boiler with chimney and dome, or a hood; behind it the place of the driver. */
function engineBody(vehicle: Vehicle, { x, y, scale }: Place): Shape[] {
  const floor = floorOf(vehicle);
  const high = bodyTop(vehicle);
  const driver = Math.min(...vehicle.seats.map((s) => s.at), vehicle.length);
  const end = Math.max(vehicle.length * 0.4, driver - 0.4);
  const frame = rectShape(
    'solid',
    x(COUPLER),
    y(floor),
    x(vehicle.length - 2 * COUPLER),
    Math.max(3, 0.035 * scale),
  );
  const seats = vehicle.seats.map((s) =>
    rectShape('body', x(s.at - 0.2), y(s.height), x(0.4), Math.max(2, (s.height - floor) * scale)),
  );
  const [from, wide] = [COUPLER * 2, end - COUPLER * 2];
  const tank =
    vehicle.length - end > 0.6 && driver > end + 0.3
      ? []
      : [rectShape('engine', x(end), y(floor + (high - floor) * 0.5), x(0.3), (high - floor) * 0.5 * scale)];
  if (vehicle.traction?.kind !== 'steam') {
    const nose = `M${px(x(from))},${px(y(floor))}L${px(x(from + 0.12))},${px(y(high))}H${px(x(from + wide))}V${px(y(floor))}Z`;
    return [frame, pathShape('engine', nose), ...seats];
  }
  const boiler = floor + (high - floor) * 0.2;
  return [
    frame,
    rectShape('engine', x(from), y(high * 0.86), x(wide), (high * 0.86 - boiler) * scale),
    rectShape('engine', x(from + 0.1), y(high + 0.1), x(0.09), (0.1 + high * 0.14) * scale + 1),
    rectShape('engine', x(from + wide * 0.55), y(high * 0.86 + 0.06), x(0.14), 0.06 * scale + 1),
    rectShape('engine', x(from), y(boiler), x(wide * 0.2), (boiler - floor) * scale),
    rectShape('engine', x(from + wide * 0.72), y(boiler), x(wide * 0.28), (boiler - floor) * scale),
    ...tank,
    ...seats,
  ];
}

const emptySeat = (at: number, height: number, { x, y }: Place): Shape =>
  pathShape(
    'seat',
    `M${px(x(at - 0.13))},${px(y(height))}V${px(y(height + 0.26))}H${px(x(at + 0.13))}V${px(y(height))}`,
  );

/** A likeness of a seated person: trunk, head, and a leg down the side or, sitting in, ahead. Smaller for the young. */
function person({ rider, seat }: SeatedRider, floor: number, { x, y, scale }: Place): Shape {
  const size = buildOf(rider);
  const ahead = seat.facing === 'backward' ? 1 : -1;
  const ink = rider.duty === 'rider' ? 'rider' : 'driver';
  const point = (dx: number, height: number): string =>
    `${px(x(seat.at + ahead * dx * size))},${px(y(height))}`;
  const at = (dx: number, dh: number): string => point(dx, seat.height + dh * size);
  const foot = Math.max(floor + 0.02, seat.height - 0.36 * size);
  const leg =
    (seat.posture ?? 'astride') === 'astride'
      ? `L${at(0.24, 0.1)}L${point(0.27, foot + 0.05)}L${point(0.33, foot)}L${point(0.17, foot)}L${at(0.1, -0.03)}`
      : `L${at(0.42, 0.1)}L${at(0.44, -0.08)}L${at(0.36, -0.08)}L${at(0.34, 0)}`;
  const trunk = `M${at(-0.13, 0)}L${at(-0.13, 0.5)}Q${at(-0.02, 0.68)} ${at(0.1, 0.5)}L${at(0.13, 0.14)}${leg}Z`;
  return group({}, [
    pathShape(ink, trunk),
    shape('circle', {
      class: ink,
      cx: px(x(seat.at)),
      cy: px(y(seat.height + (CROWN - HEAD) * size)),
      r: px(HEAD * size * scale),
    }),
  ]);
}

/** Weights over the heads, the higher row where two would touch. */
function weights(
  riders: readonly SeatedRider[],
  { x, y }: Place,
  weigh: (kilograms: number) => string,
): Shape[] {
  return riders.map(({ rider, seat }) =>
    textShape(
      'small',
      x(seat.at),
      y(seat.height + CROWN * buildOf(rider)) - 3,
      weigh(rider.mass.value),
      13,
      'middle',
    ),
  );
}

/** Width shown from above, m. */
export function widthOf(vehicle: Vehicle): number {
  const seats = vehicle.seats.map((s) => Math.abs(s.across) * 2 + 0.32);
  return Math.max(bodyWidth(vehicle), vehicle.gauge * 1.25, ...seats);
}

/** Where a place on the vehicle lies in the plan, px. */
export function planSpot(
  vehicle: Vehicle,
  place: { readonly at: number; readonly across: number },
  scale: number,
  wide = widthOf(vehicle),
): { readonly x: number; readonly y: number } {
  return { x: place.at * scale, y: (wide / 2 - place.across) * scale };
}

/** The vehicle from above: rails, trucks, body, couplers, and a mark at the centre of all masses. Seats lie over it. */
export function carPlan(loaded: LoadedVehicle, scale: number): Scene {
  const { vehicle, centreAt } = loaded;
  const wide = widthOf(vehicle);
  const [width, height] = [vehicle.length * scale, wide * scale];
  const middle = height / 2;
  const rail = (vehicle.gauge / 2) * scale;
  return drawing(width, height + 12, `${vehicle.name} from above`, [
    ...[-rail, rail].map((d) => lineShape('earthline', 0, middle + d, width, middle + d)),
    rectShape('body', COUPLER * scale, 1, (vehicle.length - 2 * COUPLER) * scale, height - 2),
    lineShape('bold', 0, middle, COUPLER * scale, middle),
    lineShape('bold', width - COUPLER * scale, middle, width, middle),
    ...vehicle.groups.flatMap((g) => truckPlan(g, scale, middle, rail)),
    lineShape('axis', COUPLER * scale, middle, width - COUPLER * scale, middle),
    pathShape('pencilsolid', `M${px(centreAt * scale)},${px(height)}l6,11h-12z`),
  ]);
}

function truckPlan(g: AxleGroup, scale: number, middle: number, rail: number): Shape[] {
  const r = wheelOf(g) * scale;
  const axles = axlesOf(g);
  const [first, last] = [axles[0] * scale, axles[axles.length - 1] * scale];
  return [
    rectShape('seat', first - r, middle - rail - 3, last - first + 2 * r, 2 * rail + 6),
    ...axles.flatMap((a) =>
      [-rail, rail].map((d) => rectShape('solid', a * scale - r * 0.7, middle + d - 1.5, r * 1.4, 3)),
    ),
    lineShape('fine', g.at * scale, middle - 4, g.at * scale, middle + 4),
  ];
}
