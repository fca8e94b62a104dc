/**
 * How far the end of a vehicle sinks on its springs: as people sit, without riders, with every seat taken.
 *
 * Each guide sinks by s = ΔF/(2·n·k), the frame is a straight line over both, its end sinks by s₁ + (s₁ − s₂)·o/A. ΔF load beyond
 * the tare, N; n axles of the guide; k stiffness of the spring over one wheel, N/m; o overhang, A between the guides, m. Heights are
 * measured empty. Source: common engineering geometry.
 */
import { guidesOf } from '../../things/coupler/bend.ts';
import { groupLoads, type LoadedVehicle } from '../../things/train/loaded.ts';
import { tareAlong } from '../../things/vehicle/tare.ts';

/** On stiff and on soft springs, m; nothing sinks without known springs, and `unknown` says so of what carries riders. */
export interface Sinks {
  readonly seated: readonly number[];
  readonly empty: readonly number[];
  readonly full: readonly number[];
  readonly unknown: boolean;
}

interface At {
  readonly mass: number;
  readonly at: number;
}

/** @param heaviest whoever may sit on a seat of which nothing is stated, kg */
export const sinksOf = (loaded: LoadedVehicle, end: 'front' | 'rear', heaviest: number): Sinks =>
  sinksAt(loaded, end === 'front' ? 0 : loaded.vehicle.length, heaviest);

/** The same of any point of the frame. @param along from its front end, m */
export function sinksAt({ vehicle, riders }: LoadedVehicle, along: number, heaviest: number): Sinks {
  const stiffness = vehicle.suspension?.wheelStiffness;
  if (!stiffness)
    return {
      seated: [0],
      empty: [0],
      full: [0],
      unknown: riders.some((r) => r.rider.duty === 'rider'),
    };
  const things: At[] = vehicle.loads.map((l) => ({ mass: l.mass.value, at: l.at }));
  const people = (duty: boolean): At[] =>
    riders
      .filter((r) => !duty || r.rider.duty !== 'rider')
      .map(({ rider, seat }) => ({ mass: rider.mass.value, at: seat.at }));
  const under = (aboard: readonly At[]): number[] => {
    const force = forceAt(vehicle, along, [...things, ...aboard]);
    return [force / stiffness.low, force / stiffness.high];
  };
  return {
    seated: under(people(false)),
    empty: under(people(true)),
    full: under(vehicle.seats.map((s) => ({ mass: s.most ?? heaviest, at: s.at }))),
    unknown: false,
  };
}

/** On stiff and on soft springs, at a point of the frame, as people sit, m; nothing sinks without known springs. */
export function frameSinks({ vehicle, riders }: LoadedVehicle, along: number): number[] {
  const stiffness = vehicle.suspension?.wheelStiffness;
  if (!stiffness) return [];
  const force = forceAt(vehicle, along, [
    ...vehicle.loads.map((l) => ({ mass: l.mass.value, at: l.at })),
    ...riders.map(({ rider, seat }) => ({ mass: rider.mass.value, at: seat.at })),
  ]);
  return [force / stiffness.low, force / stiffness.high];
}

/** Load per wheel beyond the tare that would sink the frame there as far as it sinks, N. */
function forceAt(vehicle: LoadedVehicle['vehicle'], along: number, points: readonly At[]): number {
  const tare = groupLoads(vehicle, vehicle.tare.value, tareAlong(vehicle), []);
  const loads = groupLoads(vehicle, vehicle.tare.value, tareAlong(vehicle), points);
  const under = (at: number): number => {
    // Of a single group both guides are its own outer axles.
    const k = Math.max(
      0,
      vehicle.groups.findIndex((g) => g.at === at),
    );
    return (loads[k] - tare[k]) / (2 * vehicle.groups[k].axles);
  };
  const [front, rear] = guidesOf(vehicle);
  return under(front) + (under(rear) - under(front)) * ((along - front) / (rear - front));
}
