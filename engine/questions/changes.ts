/** Families of changes that several questions know: cars, riders, order, speed, rail, brakes. */
import { MPH } from '../base/constants.ts';
import type { Change } from '../outing/change.ts';
import type { Outing } from '../outing/types.ts';
import { brakeKinds, brakeOf, isThrough } from '../things/brake/kinds/index.ts';
import { chainCatalogue, chainGrades } from '../things/chain/formulas.ts';
import { turnedStretch } from '../things/line/geometry.ts';
import { type BareRail, isBare, sandedOn } from '../things/rail.ts';
import { isCar } from '../things/train/cars.ts';
import type { Rider } from '../things/train/types.ts';
import { type Family, none } from './family.ts';
import type { Finding } from './finding.ts';
import { slowestDriven } from './speed/slowest.ts';

/** Speeds of remedies are whole halves of a mile per hour, as they are driven, rounded down, m/s. */
const SPEED_GRAIN = 0.5 * MPH;

/** What a brake finds better: a wet rail dries for the whole train, and on a dry one sand helps under the engine's driving wheels. */
export function betterRail({ conditions }: Outing): Family {
  const { railState } = conditions;
  if (railState === 'sanded') return none;
  return railState === 'dry' ? sand('dry') : { size: 3, changes: [{ kind: 'rail-state', state: 'dry' }] };
}

const sand = (rail: BareRail): Family => ({
  size: 1,
  changes: [{ kind: 'rail-state', state: sandedOn(rail) }],
});

/** What an engine that slips finds better: sand, whatever lies beneath; or that the rail dries. */
export const betterToPull = (outing: Outing): Family[] => {
  const { railState } = outing.conditions;
  return [...(isBare(railState) && railState !== 'dry' ? [sand(railState)] : []), betterRail(outing)];
};

/** Leave one, two, … cars behind, from the rear. */
export function fewerCars(outing: Outing, size: number): Family {
  const cars = outing.train.vehicles.filter(isCar).map((v) => v.id);
  return {
    size,
    changes: cars
      .slice(1)
      .map((_, i): Change => ({ kind: 'fewer-cars', leave: cars.slice(cars.length - 1 - i) })),
  };
}

/** Leave one, two, … riders behind, the heaviest first. */
export const fewerRiders = (outing: Outing, size: number): Family => fewerOf(outing.riders, size);

export const fewerRidersOn = (outing: Outing, vehicle: string | undefined, size: number): Family =>
  fewerOf(
    outing.riders.filter((r) => r.vehicle === vehicle),
    size,
  );

function fewerOf(riders: readonly Rider[], size: number): Family {
  const ids = riders
    .filter((r) => r.duty === 'rider')
    .sort((a, b) => b.mass.value - a.mass.value)
    .map((r) => r.id);
  return { size, changes: ids.map((_, i): Change => ({ kind: 'fewer-riders', leave: ids.slice(0, i + 1) })) };
}

/** So many whole steps, the first that makes up what is lacking and on; of the figure's unit. */
export function stepsFrom({ found, required }: Finding, step: number, count: number): number[] {
  const lacks = Math.abs((found?.si ?? 0) - (required?.si ?? 0));
  const first = Math.max(1, Math.ceil(lacks / step - 1e-6));
  return Array.from({ length: count }, (_, i) => (first + i) * step);
}

/** The vehicle that it is found of, if it is a car and an engine stays: without one nothing leaves. */
export function leaveOne({ train }: Outing, { where }: Finding, size: number): Family {
  const car = train.vehicles.find((v) => v.id === where.vehicle && isCar(v));
  return car === undefined || train.vehicles.every(isCar)
    ? none
    : { size, changes: [{ kind: 'fewer-cars', leave: [car.id] }] };
}

/** Brake named cars like the best braked car of the train: one, or all that have no brake. */
export function brakeCars(outing: Outing, size: number): Family[] {
  const cars = outing.train.vehicles.filter(isCar);
  const pattern = cars.find((v) =>
    v.brakes.some((b) => b.workedBy === 'driver' && (isThrough(b.kind) || b.kind === 'surge')),
  );
  if (!pattern) return [];
  return cars
    .filter((v) => v.brakes.length === 0)
    .map((v) => ({ size, changes: [{ kind: 'brake-car', vehicle: v.id, like: pattern.id }] }));
}

/** Engines first, then cars that carry the train brake on, then the others. */
export function order(outing: Outing): Family {
  const rank = (i: number): number => {
    const v = outing.train.vehicles[i];
    if (!isCar(v)) return 0;
    return v.brakes.length > 0 ? 1 : (v.throughPipe?.length ?? 0) > 0 ? 2 : 3;
  };
  const now = outing.train.vehicles.map((_, i) => i);
  const better = [...now].sort((a, b) => rank(a) - rank(b) || a - b);
  if (better.every((v, i) => v === now[i])) return none;
  return { size: 2, changes: [{ kind: 'order', order: better.map((i) => outing.train.vehicles[i].id) }] };
}

const grain = (speed: number): number => Math.floor(speed / SPEED_GRAIN + 1e-9) * SPEED_GRAIN;

/** Run at the permitted speed over the stretch, rounded down. */
export function slowerHere({ direction, line, moves }: Outing, { found, where }: Finding): Family {
  // Where the route sets back, of which move an agreed limit is nobody could tell.
  if (moves) return none;
  const speed = grain(found?.si ?? 0);
  if (speed <= 0 || where.from === undefined || where.to === undefined) return none;
  // Agreed limits are written in the line's own chainage, findings in the running direction's.
  const stretch = { from: where.from, to: where.to };
  const { from, to } = direction === 'forward' ? stretch : turnedStretch(line, stretch);
  return { size: 1, changes: [{ kind: 'slower', from, to, speed }] };
}

/** Below what is run, by halves of a mile per hour down to the slowest that anybody drives. */
export function speedsBelow(outing: Outing): number[] {
  const { plannedSpeed = Infinity, host } = outing;
  const from = Math.min(plannedSpeed, host.speed?.value ?? Infinity, 15 * MPH);
  // What nobody drives is proposed to nobody.
  const least = Math.ceil(slowestDriven(outing) / SPEED_GRAIN - 1e-9);
  const speeds: number[] = [];
  // By whole halves: a speed from which one is taken again and again misses the last by a rounding error.
  for (let n = Math.round(grain(from * (1 - 1e-9)) / SPEED_GRAIN); n >= least; n--)
    speeds.push(n * SPEED_GRAIN);
  return speeds;
}

/** Run slower on the whole line. */
export const slowerEverywhere = (outing: Outing): Family => ({
  size: 1.5,
  changes: speedsBelow(outing).map((speed) => ({ kind: 'slower-everywhere', speed })),
});

/**
 * What fails on the way to a dead end and runs off it: slower there, what is left stops it. Over twice its way before the
 * worst place, so that it has slowed where the failure comes.
 */
function slowerToTheEnd(outing: Outing, { where, facts }: Finding): Family {
  const { direction, line, moves } = outing;
  const leaves = 'outcome' in facts && facts.outcome === 'leaves-line' && facts.side === 'on';
  if (!leaves || moves || where.from === undefined) return none;
  const stretch = { from: Math.max(0, where.from - 2 * facts.way.si), to: line.length };
  const { from, to } = direction === 'forward' ? stretch : turnedStretch(line, stretch);
  return {
    size: 1.25,
    changes: speedsBelow(outing).map((speed): Change => ({ kind: 'slower', from, to, speed })),
  };
}

/** Said once, of the worst of several. */
export const toldForSeveral = (facts: Finding['facts']): boolean => 'others' in facts && facts.others > 0;

/** The next chain that does, grade by grade, growing sizes; the same on every gap where several are too weak. */
export function strongerChain({ where, facts }: Finding): Family[] {
  if (where.gap === undefined) return [];
  const gap = toldForSeveral(facts) ? {} : { gap: where.gap };
  return chainGrades.map((grade, i) => ({
    size: 1 + i,
    changes: chainCatalogue
      .filter((row) => row.grade === grade)
      .map(({ size }): Change => ({ kind: 'chain-size', ...gap, grade, size })),
  }));
}

/** Chains on every gap; slower towards a dead end; the brake made automatic, which comes on when the hose tears; a guard; fewer cars. */
export function keepTogether(outing: Outing, finding: Finding): Family[] {
  const kinds = new Set(outing.train.vehicles.flatMap((v) => v.brakes.map((b) => b.kind)));
  const automatic = brakeKinds.flatMap((kind): Change[] => {
    const { madeAutomatic: brake } = brakeOf(kind);
    return brake && kinds.has(kind) ? [{ kind: 'brake-kind', brake }] : [];
  });
  const chained = outing.train.chainsFastened && finding.where.gap !== undefined;
  return [
    { size: 1, changes: [{ kind: 'chains' }] },
    slowerToTheEnd(outing, finding),
    ...(chained ? strongerChain(finding) : []),
    { size: 2, changes: [{ kind: 'guard' }] },
    ...automatic.map((change) => ({ size: 7, changes: [change] })),
    fewerCars(outing, 6),
    ...brakeCars(outing, 12),
  ];
}
