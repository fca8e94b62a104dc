/** Train, host and outing files made into the engine's outing, from parts that are already read. */
import { assumed, assumedValues } from '../../data/index.ts';
import { dropAbsent } from '../../engine/base/absent.ts';
import type { Quantity } from '../../engine/base/quantity.ts';
import { seenToday } from '../../engine/outing/seen.ts';
import type { HostRules, Outing } from '../../engine/outing/types.ts';
import { windAcross } from '../../engine/outing/wind.ts';
import { pipeLength } from '../../engine/things/brake/times.ts';
import { reverseLine } from '../../engine/things/line/geometry.ts';
import { placesOfAssumedSight, sightIsStated } from '../../engine/things/line/sights.ts';
import type { Line } from '../../engine/things/line/types.ts';
import { brakedRail, isBare, railOnDay, railStates } from '../../engine/things/rail.ts';
import type { Train } from '../../engine/things/train/types.ts';
import { blockOf } from '../../engine/things/vehicle/blocks.ts';
import type { Vehicle } from '../../engine/things/vehicle/types.ts';
import { dayNumber } from '../due/day.ts';
import type { HostFile, OutingFile, TrainFile, VehicleFile } from '../schema/index.ts';
import { MOST_VEHICLES } from '../train/fields.ts';
import { crewOf } from './crew.ts';
import { withoutExpired } from './expired.ts';
import { checkRails, slug } from './line.ts';
import { type Notes, note, noteFirst, plainAssumed, trouble } from './notes.ts';
import { outlineOf } from './outline.ts';
import { ridersOf } from './riders.ts';
import { checkSheet } from './sheet.ts';
import { shownOn } from './shown.ts';
import { compileVehicle } from './vehicle.ts';

/** @param files the vehicle file of each member of the train file, in the same order */
export function compileTrain(file: TrainFile, files: readonly VehicleFile[], notes: Notes): Train {
  const vehicles: Vehicle[] = [];
  const total = file.vehicles.reduce((sum, { count }) => sum + (count ?? 1), 0);
  if (total > MOST_VEHICLES) {
    trouble(
      notes,
      ['vehicles'],
      `${total} vehicles`,
      `at most ${MOST_VEHICLES} in all, each "count" counted`,
    );
    return { name: file.name, vehicles, pipeBrokenAfter: [] };
  }
  file.vehicles.forEach((member, i) => {
    const vehicle = files[i];
    const count = member.count ?? 1;
    const base = member.id ?? slug(member.name ?? vehicle.name);
    for (let n = 1; n <= count; n++) {
      const id = count > 1 ? `${base}-${n}` : base;
      if (vehicles.some((v) => v.id === id)) {
        trouble(notes, ['vehicles', i, 'id'], `"${id}" a second time`, 'an "id" of its own for each vehicle');
        return;
      }
      const label = member.name ?? vehicle.name;
      const made = compileVehicle(vehicle, id, count > 1 ? `${label} ${n}` : label, notes);
      vehicles.push(member.borrowed === undefined ? made : { ...made, borrowed: member.borrowed });
    }
  });
  checkGauges(vehicles, notes);
  return {
    name: file.name,
    vehicles,
    pipeBrokenAfter: brokenAfter(file, vehicles, notes),
    ...fastened(file, vehicles, notes),
  };
}

/** Chains that hang on the vehicles and of which nobody said that they are fastened count as loose. */
function fastened(
  file: TrainFile,
  vehicles: readonly Vehicle[],
  notes: Notes,
): Pick<Train, 'chainsFastened'> {
  if (file.chainsFastened !== undefined) return { chainsFastened: file.chainsFastened };
  if (vehicles.some((v) => v.front.chain || v.rear.chain))
    note(notes, 'chains-fastened', 'chains hung but not said to be fastened: counted as loose', file.name);
  return {};
}

function checkGauges(vehicles: readonly Vehicle[], notes: Notes): void {
  const odd = vehicles.find((v) => Math.abs(v.gauge - vehicles[0].gauge) > 0.001);
  if (!odd) return;
  const mm = (v: Vehicle): string => `${(v.gauge * 1000).toFixed(1)} mm`;
  trouble(
    notes,
    ['vehicles'],
    `${vehicles[0].name} of ${mm(vehicles[0])} and ${odd.name} of ${mm(odd)}`,
    'one gauge in a train',
  );
}

function brokenAfter(file: TrainFile, vehicles: readonly Vehicle[], notes: Notes): number[] {
  return (file.pipeBrokenAfter ?? []).flatMap((id, i) => {
    const index = vehicles.findIndex((v) => v.id === id);
    if (index >= 0) return [index];
    trouble(
      notes,
      ['pipeBrokenAfter', i],
      `"${id}"`,
      `a vehicle of the train: ${vehicles.map((v) => v.id).join(', ')}`,
    );
    return [];
  });
}

export function compileHost(file: HostFile, notes: Notes): HostRules {
  // What riders are told, and what is for records alone, no answer is reckoned from.
  const {
    heedway: _kind,
    version: _version,
    note: _note,
    invented: _invented,
    briefing: _briefing,
    leastBreak: _break,
    freeDays: _free,
    profiles,
    ...rules
  } = file;
  if (rules.standards) checkSheet(rules.standards, notes);
  if (!profiles) return rules;
  return {
    ...rules,
    profiles: profiles.map((p, i) => ({
      ...p,
      points: outlineOf(p.points, ['profiles', i, 'points'], notes),
    })),
  };
}

export function compileOuting(
  file: OutingFile,
  line: Line,
  train: Train,
  host: HostRules,
  notes: Notes,
): Outing {
  const { conditions } = file;
  const adhesion = adhesionOn(file);
  if (!conditions.reaction) note(notes, 'reaction', "driver's reaction", file.name);
  if (adhesion[conditions.railState].how === 'assumed')
    note(notes, `adhesion/${conditions.railState}`, `adhesion on ${conditions.railState} rail`, line.name);
  checkRails(['conditions', 'railStretches'], conditions.railStretches, line, notes);
  noteRails(file, adhesion, line, notes);
  noteUsed(line, train, notes);
  if (!isBare(conditions.railState)) noteSand(train, notes);
  if (windAcross(conditions) > 0) noteWind(line, train, notes);
  noteUnstated(file, line, host, notes);
  if (!line.loop && file.wayBack === undefined)
    note(notes, 'way-back', 'that the engine leads on the way back', file.name);
  if (file.otherTrains === 'none' && file.following)
    trouble(
      notes,
      ['otherTrains'],
      '"none", and a train that follows this one',
      '"same-way" or "either-way", or no train that follows',
    );
  const outing: Outing = {
    name: file.name,
    line,
    train,
    host,
    riders: ridersOf(file, train, notes),
    conditions: {
      ...conditions,
      night: conditions.night ?? byNight(file, notes),
      reaction: conditions.reaction ?? assumed('reaction'),
    },
    direction: file.direction ?? 'forward',
    extraLimits: file.agreedLimits ?? [],
    assumptions: notes.assumptions,
    assumed: {
      ...assumedValues,
      adhesion,
      ...(line.curveConstant ? { curveConstant: line.curveConstant } : {}),
    },
    ...(file.date === undefined ? {} : { date: file.date, ...dropAbsent({ day: dayNumber(file.date) }) }),
    ...(file.wayBack === undefined ? {} : { wayBack: file.wayBack }),
    ...(file.plannedSpeed === undefined ? {} : { plannedSpeed: file.plannedSpeed }),
    ...(file.otherTrains === undefined ? {} : { otherTrains: file.otherTrains }),
    ...(file.following === undefined ? {} : { following: file.following }),
    ...(file.shown === undefined ? {} : { shown: shownOn(file, train, acceptedBy(host)) }),
    ...(file.crew === undefined ? {} : { crew: crewOf(file, notes) }),
    ...(file.signals === undefined ? {} : { signals: file.signals }),
  };
  if (seenToday(outing)?.stated === false)
    noteFirst(notes, 'sight/night', 'clear track seen after dark', outing.name);
  return withoutExpired(outing, notes);
}

/** Whose certificates the host accepts for anything. */
const acceptedBy = ({ inDate = [] }: HostRules): string[] => inDate.flatMap(({ by = [] }) => by);

/** Nobody has said: by daylight, and that is told. */
function byNight({ name }: OutingFile, notes: Notes): boolean {
  return plainAssumed('night', 'that it runs by daylight', name, notes) > 0;
}

/** Sight and speed that neither line, host nor plan states: first among the assumptions, the sight before all. */
function noteUnstated(file: OutingFile, line: Line, host: HostRules, notes: Notes): void {
  if (!host.speed && file.plannedSpeed === undefined)
    noteFirst(notes, 'speed/unstated', 'highest speed looked at', line.name);
  const run = file.direction === 'reverse' ? reverseLine(line) : line;
  for (const place of placesOfAssumedSight(run))
    noteFirst(notes, 'sight', 'clear track seen ahead', place.name);
  if (!sightIsStated(run)) noteFirst(notes, 'sight', 'clear track seen ahead', line.name);
}

type Adhesions = Outing['assumed']['adhesion'];

/** Assumed by rail, as measured on that rail of this line, and as measured on today's. */
function adhesionOn({ conditions, measuredAdhesion = {}, date }: OutingFile): Adhesions {
  const { railState, adhesion: today } = conditions;
  const known: { -readonly [S in keyof Adhesions]: Adhesions[S] } = { ...assumedValues.adhesion };
  for (const state of railStates) {
    const found = measuredAdhesion[state];
    if (found)
      known[state] = date !== undefined && found.date === date ? found : worseOf(found, known[state]);
  }
  return today ? { ...known, [brakedRail(railState)]: today } : known;
}

/** Of another day: no rail is relied on for holding more than is assumed, and none that held less for holding that. */
function worseOf(found: Quantity, usual: Quantity): Quantity {
  if (found.low >= usual.low && found.value >= usual.value) return usual;
  const value = Math.min(found.value, usual.value);
  return {
    ...found,
    low: Math.min(found.low, usual.low),
    value,
    high: Math.max(value, Math.min(found.high, usual.high)),
  };
}

/** Adhesion on stretches that are not like the rest, and what a driver feels of them. */
function noteRails({ conditions }: OutingFile, adhesion: Adhesions, line: Line, notes: Notes): void {
  const day = conditions.railState;
  const usual = (line.railStretches ?? []).map(({ state }) => railOnDay(adhesion, state, day));
  const others = [...(conditions.railStretches ?? []).map((s) => s.state), ...usual].filter((s) => s !== day);
  for (const state of others.filter((s) => adhesion[s].how === 'assumed'))
    note(notes, `adhesion/${state}`, `adhesion on ${state} rail`, line.name);
  if (others.length > 0)
    note(notes, 'easing/felt', 'share of sliding wheels that a driver feels as all', line.name);
}

/** Of an engine of which nobody says whether it has a sander, on a day on which sand is thrown. */
function noteSand({ vehicles }: Train, notes: Notes): void {
  for (const { name, role, sander } of vehicles)
    if (role === 'engine' && sander === undefined)
      note(notes, 'sander/engine', 'sand: thrown under its driven wheels', name);
}

/** What a cross wind takes hold of. */
function noteWind(line: Line, { vehicles }: Train, notes: Notes): void {
  note(notes, 'wind/drag', 'drag of the train in the cross wind', line.name);
  if (vehicles.some((v) => v.seats.length > 0))
    note(notes, 'wind/person-area', 'side view of seated people', line.name);
}

/** Assumed values that the engine will use for this line and train. */
function noteUsed(line: Line, train: Train, notes: Notes): void {
  if (line.curves.length > 0 && !line.curveConstant)
    note(notes, 'curve-constant', 'curve resistance', line.name);
  for (const { brakes, name } of train.vehicles) {
    for (const brake of brakes) {
      if (!brake.deadTime) note(notes, `dead-time/${brake.kind}`, 'dead time of the brake', name);
      if (brake.rigging && !brake.force && brake.rigging.springForce === undefined)
        note(notes, 'spring-force', 'return springs of brake cylinders: none', name);
      if (!brake.buildUp) note(notes, `build-up/${brake.kind}`, 'build-up of the brake', name);
      if (
        !(brake.deadTime && brake.buildUp) &&
        pipeLength(brake.kind, train.vehicles, assumedValues.pipe.vehicles) > 1
      )
        note(notes, 'brake-times/vehicles', 'assumed times of a long brake pipe: by its vehicles', name);
      if (brake.force && blockOf(brake) === undefined && brake.kind !== 'electric')
        note(
          notes,
          'block-wet/composition',
          'blocks beside the measured force, not named: weaker in the wet as composition, at speed as cast iron',
          name,
        );
      if (brake.rigging && !brake.rigging.blockFriction && !brake.force) {
        note(
          notes,
          `block-friction/${brake.rigging.block}/0 mph`,
          `friction of ${brake.rigging.block} blocks`,
          name,
        );
      }
    }
  }
}
