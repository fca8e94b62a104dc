/** A vehicle file made into the engine's vehicle. What is missing and may be assumed is noted. */

import { assumed } from '../../data/index.ts';
import { dropAbsent } from '../../engine/base/absent.ts';
import { exact, type Quantity } from '../../engine/base/quantity.ts';
import { isVacuumKind } from '../../engine/things/brake/kinds/index.ts';
import type {
  BrakeGear,
  BrakeRigging,
  HandRigging,
  SurgeRigging,
  Traction,
  Vehicle,
} from '../../engine/things/vehicle/types.ts';
import { usualWorker } from '../../engine/things/vehicle/worked-by.ts';
import type { VehicleFile } from '../schema/index.ts';
import { slug } from './line.ts';
import { bySmallRule, type Notes, note, orAssumed, plainAssumed, trouble } from './notes.ts';
import { outlineOf } from './outline.ts';
import { wheelsetsOf } from './wheels.ts';

type Brake = NonNullable<VehicleFile['brakes']>[number];

export function compileVehicle(file: VehicleFile, id: string, name: string, notes: Notes): Vehicle {
  const where = file.name;
  const groups = file.axleGroups.map((g) => ({
    ...g,
    id: slug(g.name),
    axles: g.axles ?? plainAssumed('axles', 'axles of an axle group', where, notes),
    wheelBase: g.wheelBase ?? 0,
    driven: g.driven ?? false,
  }));
  checkPositions(file, notes);
  checkCouplers(file, notes);
  checkStep(file, notes);
  // What stands on one group alone is carried by its axles: no distance between them would mean no twist and no pitching.
  if (groups.length === 1 && groups[0].axles > 1 && !groups[0].wheelBase)
    trouble(
      notes,
      ['axleGroups', 0, 'wheelBase'],
      'nothing',
      'the distance between its outer axles: they alone carry the vehicle',
    );
  const engine = file.role === 'engine';
  return {
    ...kept(file),
    id,
    name,
    groups,
    bearing: file.bearing ?? 'plain',
    rotatingShare: orAssumed(
      file.rotatingShare,
      `rotating-share/${engine ? 'engine' : 'car'}`,
      'inertia of the wheels',
      where,
      notes,
    ),
    resistance: {
      rolling: orAssumed(
        file.resistance?.rolling,
        `rolling/${file.bearing ?? 'plain'}`,
        'rolling resistance',
        where,
        notes,
      ),
      ...(file.resistance?.starting ? { starting: file.resistance.starting } : {}),
      perSpeed: file.resistance?.perSpeed ?? exact(0),
      perSpeedSquared: file.resistance?.perSpeedSquared ?? 0,
    },
    ...(file.wheelsets ? { wheelsets: wheelsetsOf(file, notes) } : {}),
    ...(file.section ? { section: outlineOf(file.section, ['section'], notes) } : {}),
    brakes: (file.brakes ?? []).map((b, i) =>
      brakeOf(
        b,
        i,
        groups.map((g) => g.id),
        usualWorker(b.kind, file.role, file.seats?.some((s) => s.driver) ?? false),
        where,
        notes,
      ),
    ),
    ...(file.traction ? { traction: tractionOf(file.traction, where, notes) } : {}),
    ...powerOf(file),
    front: couplingOf(file.front, where, notes),
    rear: couplingOf(file.rear, where, notes),
    seats: (file.seats ?? []).map((s) => seatOf(s, where, notes)),
    loads: (file.loads ?? []).map((l) => ({ ...l, across: l.across ?? 0 })),
    ratings: file.ratings ?? {},
    ...(file.suspension
      ? {
          suspension: {
            ...file.suspension,
            equalised:
              file.suspension.equalised ??
              plainAssumed('equalised', 'trucks that do not follow twisted track', where, notes) !== 0,
          },
        }
      : {}),
    ...(file.brakeSupply ? { brakeSupply: supplyOf(file.brakeSupply) } : {}),
  };
}

type SeatFile = NonNullable<VehicleFile['seats']>[number];

/** How high people's weight lies above a seat goes by how they sit on it; not stated, anything plausible counts. */
function seatOf(seat: SeatFile, where: string, notes: Notes): Vehicle['seats'][number] {
  const { posture } = seat;
  const known = posture !== undefined && posture !== 'sit-in';
  if (!known) note(notes, 'rider-centre', 'posture of seated people, and how high their weight lies', where);
  return {
    ...seat,
    id: seat.name,
    across: seat.across ?? 0,
    facing: seat.facing ?? 'forward',
    driver: seat.driver ?? false,
    ...(known ? { adultCentre: assumed(`rider-centre/${posture}`) } : {}),
  };
}

/** Fields that pass through unchanged. */
function kept(file: VehicleFile) {
  const {
    role,
    gauge,
    length,
    tare,
    centreHeight,
    centreAt,
    supplies,
    throughPipe,
    flange,
    envelope,
    step,
    lowParts,
    headlight,
    taillight,
    sander,
    worked,
  } = file;
  return dropAbsent({
    role,
    gauge,
    length,
    tare,
    centreHeight,
    centreAt,
    supplies,
    throughPipe,
    flange,
    envelope,
    step,
    lowParts,
    headlight,
    taillight,
    sander,
    worked,
  });
}

function supplyOf({
  vacuum,
  pressure,
  ...rest
}: NonNullable<VehicleFile['brakeSupply']>): NonNullable<Vehicle['brakeSupply']> {
  const level = pressure ?? vacuum;
  return { ...rest, ...(level === undefined ? {} : { pressure: level }) };
}

/** Of the brake in this place of the list. */
export const gearId = (name: string, i: number): string => `${slug(name)}-${i + 1}`;

function brakeOf(
  brake: Brake,
  i: number,
  groups: readonly string[],
  worker: BrakeGear['workedBy'],
  where: string,
  notes: Notes,
): BrakeGear {
  const on = (brake.on ?? []).map(slug);
  on.forEach((id, k) => {
    if (!groups.includes(id))
      trouble(notes, ['brakes', i, 'on', k], `"${brake.on?.[k]}"`, `an axle group: ${groups.join(', ')}`);
  });
  return dropAbsent({
    id: gearId(brake.name ?? brake.kind, i),
    name: brake.name ?? brake.kind,
    kind: brake.kind,
    on: on.length > 0 ? on : groups,
    force: brake.force && withSpread(brake.force),
    block: brake.block,
    rigging: brake.rigging && riggingOf(brake.rigging, brake.kind, i, where, notes),
    hand: brake.hand && leversOf(brake.hand, where, notes),
    surge: brake.surge && leversOf(brake.surge, where, notes),
    lag: brake.lag,
    deadTime: brake.deadTime,
    buildUp: brake.buildUp,
    workedBy: brake.workedBy ?? worker,
    parking: brake.parking ?? false,
    stops: brake.stops,
    onSupplyLoss: brake.onSupplyLoss,
  }) as BrakeGear;
}

/** A force stated without bounds is taken to vary: 20 % less, 15 % more. */
function withSpread(force: Quantity): Quantity {
  if (force.how === 'measured' || force.low !== force.high) return force;
  const { low, high } = assumed('brake-force-spread');
  return { ...force, low: force.value * low, high: force.value * high };
}

function leversOf<T extends { efficiency?: Quantity | undefined }>(
  levers: T,
  where: string,
  notes: Notes,
): HandRigging & SurgeRigging {
  const efficiency = orAssumed(
    levers.efficiency,
    'rigging-efficiency',
    'efficiency of brake rigging',
    where,
    notes,
  );
  return dropAbsent({ ...levers, efficiency }) as unknown as HandRigging & SurgeRigging;
}

function riggingOf(
  rigging: NonNullable<Brake['rigging']>,
  kind: Brake['kind'],
  i: number,
  where: string,
  notes: Notes,
): BrakeRigging | undefined {
  const vacuum = isVacuumKind(kind);
  const { workingPressure, workingVacuum, leakRate, cylinders, ...rest } = rigging;
  const working = vacuum ? workingVacuum : workingPressure;
  if (!working) {
    const field = vacuum ? 'workingVacuum' : 'workingPressure';
    trouble(
      notes,
      ['brakes', i, 'rigging', field],
      'nothing',
      `the ${vacuum ? 'vacuum' : 'pressure'} that the brake works with`,
    );
    return undefined;
  }
  return dropAbsent({
    ...rest,
    cylinders: cylinders ?? 1,
    efficiency: orAssumed(
      rigging.efficiency,
      'rigging-efficiency',
      'efficiency of brake rigging',
      where,
      notes,
    ),
    workingPressure: working,
    leakRate: leakRate && leakRate.fall / leakRate.in,
  }) as BrakeRigging;
}

const powerOf = ({ power, traction }: VehicleFile): Pick<Vehicle, 'power'> =>
  power !== undefined ? { power } : traction?.kind === 'steam' ? { power: 'steam' } : {};

function tractionOf(traction: NonNullable<VehicleFile['traction']>, where: string, notes: Notes): Traction {
  if (traction.kind === 'drawbar') {
    const curve = [...traction.curve].sort((a, b) => a.speed - b.speed);
    return { ...traction, curve, how: traction.how ?? 'stated' };
  }
  const meanPressureFactor = orAssumed(
    traction.meanPressureFactor,
    'mean-pressure-factor',
    'mean ÷ boiler pressure',
    where,
    notes,
  );
  return dropAbsent({ ...traction, meanPressureFactor }) as Traction;
}

function couplingOf(coupling: VehicleFile['front'], where: string, notes: Notes): Vehicle['front'] {
  if (!coupling) return { type: 'coupler' };
  const { chain, type, ...rest } = coupling;
  const fastened =
    chain &&
    dropAbsent({
      ...chain,
      count: chain.count ?? 1,
      slack: chain.slack ?? plainAssumed('chain-slack', 'slack of the safety chain', where, notes),
    });
  return dropAbsent({ ...rest, type: type ?? 'coupler', chain: fastened }) as Vehicle['front'];
}

/** What riders step on is part of the vehicle, and nothing hangs above its top. */
function checkStep({ step, envelope }: VehicleFile, notes: Notes): void {
  if (envelope?.underside !== undefined && envelope.underside >= envelope.height)
    trouble(
      notes,
      ['envelope', 'underside'],
      bySmallRule(envelope.underside),
      `less than ${bySmallRule(envelope.height)}, the height of the vehicle`,
    );
  if (!step || !envelope) return;
  for (const key of ['width', 'height'] as const)
    if (step[key] > envelope[key])
      trouble(
        notes,
        ['step', key],
        bySmallRule(step[key]),
        `at most ${bySmallRule(envelope[key])}, the ${key} of the vehicle: its envelope holds the step too`,
      );
}

/** A coupler on the vehicle, not above it, and clear of the rail. */
function checkCouplers({ front, rear, envelope }: VehicleFile, notes: Notes): void {
  const ends = { front, rear };
  for (const end of ['front', 'rear'] as const) {
    const { height, face = 0 } = ends[end] ?? {};
    if (height === undefined) continue;
    if (envelope && height > envelope.height)
      trouble(
        notes,
        [end, 'height'],
        bySmallRule(height),
        `at most ${bySmallRule(envelope.height)}, the height of the vehicle: the middle of the coupler above the rail`,
      );
    if (face / 2 >= height)
      trouble(
        notes,
        [end, 'face'],
        bySmallRule(face),
        `less than ${bySmallRule(2 * height)}: half of it lies below the middle, ${bySmallRule(height)} above the rail`,
      );
  }
}

/** Seats, loads and axle groups must lie on the vehicle; axle groups from front to rear. */
function checkPositions(file: VehicleFile, notes: Notes): void {
  const check = (list: string, at: number, i: number): void => {
    if (at > file.length + 1e-9)
      trouble(
        notes,
        [list, i, 'at'],
        `${at.toFixed(3)} m`,
        `at most ${file.length.toFixed(3)} m, the vehicle's length`,
      );
  };
  file.seats?.forEach((s, i) => check('seats', s.at, i));
  file.loads?.forEach((l, i) => check('loads', l.at, i));
  file.lowParts?.forEach((p, i) => check('lowParts', p.at, i));
  file.axleGroups.forEach((g, i) => {
    check('axleGroups', g.at, i);
    if (i > 0 && g.at <= file.axleGroups[i - 1].at) {
      trouble(notes, ['axleGroups', i, 'at'], `${g.at.toFixed(3)} m`, 'axle groups in order from the front');
    }
  });
  const names = (file.seats ?? []).map((s) => s.name);
  names.forEach((n, i) => {
    if (names.indexOf(n) !== i)
      trouble(notes, ['seats', i, 'name'], `"${n}" a second time`, 'a name of its own for each seat');
  });
}
