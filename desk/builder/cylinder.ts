/** Which cylinder and lever? Fields that stand filled in so that they work, stock bores, one proposal in a sentence. */

import { FOOT, INCH, MPH } from '../../engine/base/constants.ts';
import { speedMeant, speedNamed } from '../../engine/motion/prepare.ts';
import { type OutingContext, openOuting } from '../../engine/outing/open.ts';
import type { Outing } from '../../engine/outing/types.ts';
import {
  type BrakeDesign,
  type DesignRequest,
  type DesignResult,
  designBrakes,
  leastStop,
  usualBores,
} from '../../engine/questions/brakes/design.ts';
import { leastRoom } from '../../engine/questions/speed/available.ts';
import { heightAt, onLine } from '../../engine/things/line/geometry.ts';
import { sightIsStated } from '../../engine/things/line/sights.ts';
import { isCar } from '../../engine/things/train/cars.ts';
import { printQuantity, type System } from '../../units/index.ts';
import { distance, say, type Voice } from '../../words/voice.ts';
import { designTables, type WrittenDesign } from '../brake-design.ts';
import { drivenSpeed } from '../driven.ts';
import { type Task, unstatedSpeed } from './task.ts';

/** Bores that shops keep, m: eighths of an inch, or millimetres (ISO 6432 and ISO 15552 series); from memory. */
const stock: Readonly<Record<System, readonly number[]>> = {
  imperial: Array.from({ length: 17 }, (_, i) => (4 + i) * (INCH / 8)),
  metric: [12, 16, 20, 25, 32, 40, 50, 63].map((mm) => mm / 1000),
};
/** Vacuum pushes with an atmosphere at the most: its cylinders are made larger. */
const made: Readonly<Record<System, readonly number[]>> = {
  imperial: [3, 3.5, 4, 5, 6].map((inches) => inches * INCH),
  metric: [80, 100, 125, 160].map((mm) => mm / 1000),
};

const boresFor = (system: System, vacuum: boolean): readonly number[] =>
  vacuum ? [...stock[system], ...made[system]] : stock[system];

const usual: Readonly<
  Record<System, { readonly pressure: string; readonly vacuum: string; readonly spring: string }>
> = {
  imperial: { pressure: '45 psi', vacuum: '18 inHg', spring: '6 lbf' },
  metric: { pressure: '3 bar', vacuum: '60 kPa', spring: '25 N' },
};

type Work = Pick<WrittenDesign, 'pressure' | 'vacuum'>;

export const usualWork = (system: System, vacuum: boolean): Work =>
  vacuum
    ? { vacuum: usual[system].vacuum, pressure: undefined }
    : { pressure: usual[system].pressure, vacuum: undefined };

/**
 * What stands in the fields at first: this train on its steepest fall at its speed, in what is left to stop in where
 * least of the line is seen, stated or assumed as in the answer.
 */
export function usualDesign(
  outing: Outing,
  system: System,
  written: Partial<WrittenDesign> = {},
): WrittenDesign {
  const context = openOuting(outing);
  const { spring } = usual[system];
  const stated = written.pressure !== undefined || written.vacuum !== undefined;
  const work = stated ? {} : usualWork(system, byVacuum(outing));
  return {
    distance: seenDistance(context, system),
    speed: printQuantity(speedMeant(outing), 'speed', { system, toward: 'up' }),
    grade: printQuantity(steepestFall(context), 'grade', { system, digits: 1, toward: 'down' }),
    spring,
    block: 'cast-iron',
    efficiency: '0.8',
    cylinders: '1',
    deadTime: '0.5 s',
    buildUp: '1.5 s',
    engine: true,
    ...work,
    ...defined(written),
  };
}

/** In fives of feet or whole metres, down; one of them at the least, so that there is something to ask. */
function seenDistance(context: OutingContext, system: System): string {
  const [unit, step, by] = system === 'imperial' ? ['ft', 5 * FOOT, 5] : ['m', 1, 1];
  return `${Math.max(1, Math.floor(leastRoom(context) / step + 1e-9)) * by} ${unit}`;
}

const defined = (written: Partial<WrittenDesign>): Partial<WrittenDesign> =>
  Object.fromEntries(Object.entries(written).filter(([, value]) => value !== undefined));

const byVacuum = ({ train }: Outing): boolean =>
  train.vehicles.some((v) => v.brakes.some((b) => b.kind.endsWith('vacuum')));

/** Along the running direction over the length of the train, negative; level where nothing falls. */
function steepestFall({ line, loaded }: OutingContext): number {
  const { length } = loaded;
  let worst = 0;
  for (let s = line.loop ? 0 : Math.min(length, line.length); s <= line.length; s += 1) {
    const back = line.loop ? onLine(line, s - length) : Math.max(0, s - length);
    worst = Math.min(worst, (heightAt(line, s) - heightAt(line, back)) / length);
  }
  return worst;
}

/** Room beyond the hardest stop that the rail bears, until a cylinder does it. */
const ROOM = 1.25;
const TRIES = 5;
/** m */
const FARTHEST = 400;

/** The shortest distance, nearly, in which some cylinder does it, m; undefined: none. */
function ableDistance(context: OutingContext, request: DesignRequest, system: System): number | undefined {
  const step = system === 'imperial' ? 5 * FOOT : 1;
  let able = leastStop(context, request) * ROOM;
  for (let n = 0; n < TRIES && able < FARTHEST; n++, able *= 1.2) {
    const distance = Math.ceil(able / step) * step;
    if (doesIt(context, { ...request, distance })) return distance;
  }
  return undefined;
}

/** The highest speed below the asked one, in halves of a mile or whole kilometers an hour, from which some cylinder does it, m/s. */
function ableSpeed(context: OutingContext, request: DesignRequest, system: System): number | undefined {
  const step = system === 'imperial' ? MPH / 2 : 1 / 3.6;
  for (let n = Math.ceil(request.speed / step - 1e-9) - 1; n > 0; n--) {
    const slower = { ...request, speed: n * step };
    if (leastStop(context, slower) <= request.distance && doesIt(context, slower)) return n * step;
  }
  return undefined;
}

/** Whether some cylinder on every car does it. */
const doesIt = (context: OutingContext, request: DesignRequest): boolean =>
  designBrakes(context, { ...request, everyCar: true, bores: some(request.bores) }).designs.some(
    (d) => d.feasible,
  );

/** Enough to tell whether any does. */
const some = (bores: readonly number[] = usualBores): readonly number[] =>
  bores.filter((_, i, all) => i === all.length - 1 || i === all.length >> 1);

export interface CylinderAnswer extends Task {
  readonly result: DesignResult;
  readonly request: DesignRequest;
  readonly best?: BrakeDesign;
}

export interface CylinderChoice {
  readonly vacuum: boolean;
  /** Look at brakes on fewer cars too. */
  readonly fewer?: boolean;
  /** List those too that do not do. */
  readonly all?: boolean;
}

export function askCylinder(
  outing: Outing,
  read: DesignRequest,
  voice: Voice,
  { vacuum, fewer = false, all = false }: CylinderChoice,
): CylinderAnswer {
  const request = { ...read, everyCar: !fewer, bores: boresFor(voice.system, vacuum) };
  const context = openOuting(outing);
  const result = designBrakes(context, request);
  const best = proposed(result.designs);
  const cars = outing.train.vehicles.filter(isCar).length;
  const able = best || cars === 0 ? undefined : ableDistance(context, request, voice.system);
  // What the rail bears is proposed for as far as it reaches: who has none to build from would ask for that next.
  const farther = able === undefined ? undefined : { ...request, everyCar: true, distance: able };
  const reached = farther && designBrakes(context, farther);
  const fits = reached && proposed(reached.designs);
  return {
    result,
    request,
    ...(best ? { best } : {}),
    said: [
      ...(best
        ? [...bestWords(best, request, cars, voice), ...sightWords(context, best, voice)]
        : [
            ...noneWords(result, request, cars, voice),
            ...(cars === 0 ? [] : ableWords(request, able, ableSpeed(context, request, voice.system), voice)),
            ...(farther && fits ? bestWords(fits, farther, cars, voice) : []),
          ]),
      ...(cars === 0 ? [] : [takenWords(request, vacuum, voice), ...speedWords(outing, request, voice)]),
    ],
    tables:
      farther && fits && !all
        ? designTables(reached, farther, false, voice)
        : designTables(result, request, all, voice),
  };
}

/** A lever that a frame has room for and that is no long one (common practice, no source). */
const HANDY = 4;

/** All cars braked, none that slides when empty if it can be, the handiest lever, the smaller bore. */
function proposed(designs: readonly BrakeDesign[]): BrakeDesign | undefined {
  const good = designs.filter((d) => d.feasible);
  const most = Math.max(...good.map((d) => d.brakedCars));
  const rank = (d: BrakeDesign): number =>
    (d.limits.length > 0 ? 100 : 0) + Math.abs(Math.log(d.leverRatio / HANDY));
  return good
    .filter((d) => d.brakedCars === most)
    .reduce<BrakeDesign | undefined>((a, b) => (a && rank(a) <= rank(b) ? a : b), undefined);
}

function bestWords(best: BrakeDesign, request: DesignRequest, cars: number, voice: Voice): string[] {
  const { cylindersPerCar: n } = request;
  const bore = say(voice, { si: best.bore, kind: 'length' });
  const which =
    best.brakedCars === cars
      ? cars === 1
        ? 'the car'
        : `each of the ${cars} cars`
      : `${best.brakedCars} of the ${cars} cars`;
  return [
    `Fit ${which} with ${n === 1 ? 'one cylinder' : `${n} cylinders`} of ${bore} bore and a lever of ${best.leverRatio} : 1.`,
    `Proved by stopping again: ${distance(voice, best.cautiousStop, 'up')} cautious, ${distance(voice, best.likelyStop, 'up')} likely, of the ${distance(voice, request.distance, 'down')} to stop in; the driver's reaction of ${say(voice, { si: request.reaction.value, kind: 'time' })} is counted in it.`,
    ...(best.limits.includes('slides-empty')
      ? ['Empty, its wheels slide today: work it with less pressure then, or fit an empty-load lever.']
      : []),
  ];
}

/** A stop may be shorter than what was written, and longer than what is seen. */
function sightWords(context: OutingContext, best: BrakeDesign, voice: Voice): string[] {
  const room = leastRoom(context);
  if (best.cautiousStop <= room) return [];
  const left = `${distance(voice, room, 'down')} is left to stop in, ahead of the train and with its margin kept`;
  const worst = sightIsStated(context.line)
    ? `where least is seen on this line ${left}`
    : `nobody has said how far the driver sees on this line; of the ${distance(voice, context.outing.assumed.sight, 'down')} that is assumed ${left}`;
  return [`That is not short enough for every place: ${worst}. Ask for a stop in less, or from less speed.`];
}

/** All that the stop was reckoned with, so that nobody takes what was filled in for measured. */
function takenWords(request: DesignRequest, vacuum: boolean, voice: Voice): string {
  const { pressure, springForce, block, efficiency, deadTime, buildUp, cylindersPerCar: n } = request;
  const work = say(voice, { si: pressure.value, kind: vacuum ? 'vacuum' : 'gaugePressure' });
  const time = (si: number): string => say(voice, { si, kind: 'time' });
  const alone = request.withEngine ? '' : ', engine and tender unbraked';
  return `Reckoned with ${work} of ${vacuum ? 'vacuum' : 'air'} in ${n === 1 ? 'one cylinder' : `${n} cylinders`} to a car, return springs of ${say(voice, { si: springForce, kind: 'force' })}, blocks of ${block}, efficiency of the rigging ${efficiency.value}, ${time(deadTime.value)} until the blocks touch and ${time(buildUp.value)} from there to full${alone}: write what is otherwise on your cars.`;
}

/** Of a speed that was filled in from what is looked at, and that nobody runs at. */
const speedWords = (outing: Outing, { speed }: DesignRequest, voice: Voice): string[] =>
  speedNamed(outing) === undefined && Math.abs(speed / speedMeant(outing) - 1) < 0.01
    ? [unstatedSpeed(say(voice, { si: speed, kind: 'speed' }))]
    : [];

function noneWords(
  { needed }: DesignResult,
  { distance: far, speed }: DesignRequest,
  cars: number,
  voice: Voice,
): string[] {
  if (cars === 0) return ['There is no car in this train to fit a brake to.'];
  const asked = `in ${distance(voice, far, 'down')} from ${say(voice, { si: speed, kind: 'speed' })}`;
  return [
    needed.every((n) => n.force === null)
      ? `No cylinder does it ${asked}: the rail gives no more today.`
      : `No stock cylinder does it ${asked}: fit two to a car, or raise the pressure.`,
  ];
}

/** In what distance, and from what speed, a cylinder would do it. */
function ableWords(
  request: DesignRequest,
  far: number | undefined,
  speed: number | undefined,
  voice: Voice,
): string[] {
  const slower =
    speed === undefined
      ? ''
      : `from ${drivenSpeed(voice, speed)} one would do in ${distance(voice, request.distance, 'down')}`;
  if (far === undefined)
    return [
      slower === '' ? 'Allow more distance or less speed, or leave cars behind.' : `Run slower: ${slower}.`,
    ];
  return [
    `In ${distance(voice, far, 'up')} one would do: see that far ahead, the margin besides, or run slower${slower === '' ? '' : `: ${slower}`}.`,
  ];
}
