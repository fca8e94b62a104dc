/**
 * Remedies: the smallest changes that clear a finding, found by search and verified by running the whole
 * check again on the changed outing. Nothing is proposed that was not tried.
 */
import { applyChange, type Change } from '../outing/change.ts';
import type { Outing } from '../outing/types.ts';
import { balanceFamilies } from '../questions/balance/remedies.ts';
import type { Finding, Remedy } from '../questions/finding.ts';
import { practiceFamilies } from '../questions/practice/remedies.ts';
import { fartherForward } from '../questions/sight/remedies.ts';
import { swingFamilies } from '../questions/swing/remedies.ts';
import { isThrough } from '../things/brake/kinds/index.ts';
import { chainCatalogue, chainGrades } from '../things/chain/formulas.ts';
import { turnedStretch } from '../things/line/geometry.ts';
import { isCar } from '../things/train/cars.ts';
import { driverPlaces, placesOf } from '../things/train/crew.ts';
import { firstAnswer } from './answer.ts';
import { inquire, type OpenInquiry } from './inquiry.ts';
import { questions } from './questions.ts';
import type { Answer } from './types.ts';

/** Speeds of remedies are whole quarters of a mile per hour, rounded down, m/s. */
const SPEED_GRAIN = 0.25 * 0.44704;
/** At most this many remedies are kept for a finding. */
const MOST_REMEDIES = 4;

/** A family of changes of growing size; the first that clears is the smallest. */
interface Family {
  readonly size: number;
  readonly changes: readonly Change[];
}

/** What a change leads to, asked as far as it is needed. */
type Run = (change: Change) => OpenInquiry;

/** The answer with remedies on every finding that holds or limits. */
export function withRemedies(
  inquiry: OpenInquiry,
  answer: Answer,
  onTried: (changes: number) => void = () => {},
): Answer {
  const { written } = inquiry.context;
  const tried = new Map<string, OpenInquiry>();
  const run: Run = (change) => {
    const key = JSON.stringify(change);
    const known = tried.get(key) ?? inquire(applyChange(written, change), inquiry.care, inquiry);
    if (!tried.has(key)) onTried(tried.size + 1);
    tried.set(key, known);
    return known;
  };
  const findings = answer.findings.map((finding) =>
    finding.severity === 'forbids' || finding.severity === 'limits'
      ? { ...finding, remedies: remediesFor(finding, familiesFor(written, finding), run) }
      : finding,
  );
  return { ...answer, findings };
}

function remediesFor(finding: Finding, families: readonly Family[], run: Run): Remedy[] {
  const remedies: Remedy[] = [];
  for (const family of families) {
    const found = smallestThatClears(finding, family, run);
    if (found) remedies.push(found);
  }
  if (remedies.length === 0 && finding.severity === 'forbids') {
    for (const family of inPairs(families)) {
      const found = smallestThatClears(finding, family, run);
      if (found) remedies.push(found);
    }
  }
  return remedies.sort((a, b) => a.size - b.size).slice(0, MOST_REMEDIES);
}

/** Where no single change clears: the mildest of one family (a better rail, another order) with each change of another. */
function inPairs(families: readonly Family[]): Family[] {
  const [first, ...others] = families.filter((f) => f.changes.length > 0);
  if (!first || first.changes.length > 1) return [];
  return others
    .filter((f) => f.changes.length > 1)
    .map((f) => ({
      size: first.size + f.size,
      changes: f.changes.map((c): Change => ({ kind: 'together', changes: [first.changes[0], c] })),
    }));
}

/** First change of the family that clears: by halving, since a larger change of a family clears no less. */
function smallestThatClears(finding: Finding, family: Family, run: Run): Remedy | undefined {
  const { changes } = family;
  if (changes.length === 0) return undefined;
  const clears = (i: number): boolean => isCleared(finding, run(changes[i]));
  if (!clears(changes.length - 1)) return undefined;
  let [low, high] = [-1, changes.length - 1];
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (clears(middle)) high = middle;
    else low = middle;
  }
  const { verdict } = firstAnswer(run(changes[high]));
  return { change: changes[high], size: family.size + high, clears: true, verdict };
}

const weight = { forbids: 3, unknown: 2, limits: 1, notes: 0, assumed: 0 } as const;

/**
 * Gone, or said less strongly, at the same place and vehicle. Only the questions that can say it are asked; what
 * else the change does, the verdict after it tells.
 */
export function isCleared(finding: Finding, after: OpenInquiry): boolean {
  return !questions
    .filter(({ findings }) => finding.code in findings)
    .flatMap((question) => after.of(question).findings)
    .some(
      (f) =>
        weight[f.severity] > 0 &&
        f.code === finding.code &&
        weight[f.severity] >= weight[finding.severity] &&
        (f.where.vehicle === undefined ||
          f.where.vehicle === finding.where.vehicle ||
          toldForSeveral(finding.facts)) &&
        overlaps(f, finding),
    );
}

/** Said once, of the worst of several. */
const toldForSeveral = (facts: Finding['facts']): boolean => 'others' in facts && facts.others > 0;

function overlaps(a: Finding, b: Finding): boolean {
  const [af, at] = [a.where.from, a.where.to];
  const [bf, bt] = [b.where.from, b.where.to];
  if (af === undefined || at === undefined || bf === undefined || bt === undefined) return true;
  // The hardest place moves a little when the train changes: the same finding elsewhere still counts.
  if (af === at || bf === bt) return true;
  return af <= bt && bf <= at;
}

/** Changes worth trying for a finding, by its code. */
export function familiesFor(outing: Outing, finding: Finding): Family[] {
  switch (finding.code) {
    case 'cannot-start':
    case 'slow-on-grade':
      return [betterRail(outing), fewerRiders(outing, 3), fewerCars(outing, 6)];
    case 'cannot-stop':
      return [
        betterRail(outing),
        order(outing),
        slowerEverywhere(outing),
        fewerRiders(outing, 4),
        fewerCars(outing, 6),
        ...brakeCars(outing, 12),
      ];
    case 'brake-does-not-hold-fall':
      return [
        betterRail(outing),
        order(outing),
        fewerRiders(outing, 4),
        fewerCars(outing, 6),
        ...brakeCars(outing, 12),
      ];
    case 'speed-limited':
      return [slowerHere(outing, finding), order(outing), fewerCars(outing, 8), ...brakeCars(outing, 12)];
    case 'gap-needed':
      return [slowerEverywhere(outing), order(outing), fewerCars(outing, 8), ...brakeCars(outing, 12)];
    case 'does-not-hold':
    case 'holds-only-while-brake-is-tight':
      return [fewerRiders(outing, 3), fewerCars(outing, 6), ...parking(outing, finding)];
    case 'no-parking-brake':
      return parking(outing, finding);
    case 'wheels-slide':
      return [betterRail(outing)];
    case 'brake-pipe-broken':
      return [order(outing), fewerCars(outing, 5)];
    case 'brake-kinds-do-not-work-together':
      return [order(outing), leaveOfKind(outing, finding, 5)];
    case 'train-longer-than-line':
      return [fewerCars(outing, 4)];
    case 'too-many-cars':
    case 'too-few-cars-braked':
      return [fewerCars(outing, 4), leaveUnbraked(outing), ...brakeCars(outing, 10)];
    case 'too-many-riders':
    case 'guard-missing':
      return [{ size: 1, changes: [{ kind: 'guard' }] }, fewerRiders(outing, 2), fewerCars(outing, 6)];
    case 'too-many-riders-on-car':
    case 'too-many-riders-per-axle':
    case 'more-people-than-seats':
    case 'car-overloaded':
    case 'axle-overloaded':
    case 'seat-overloaded':
      return [
        ...swaps(outing, finding),
        fewerRidersOn(outing, finding.where.vehicle, 3),
        leaveOne(finding, 6),
      ];
    case 'chain-too-weak':
      return chainFamilies(finding);
    case 'coupler-overloaded':
      return [fewerRiders(outing, 3), fewerCars(outing, 6)];
    case 'coupler-swing-short':
      return swingFamilies(outing, finding);
    case 'held-train-runs-away':
    case 'held-train-rolls-back':
    case 'failure-runs-away':
    case 'failure-rolls-back':
    case 'tail-runs-away':
    case 'tail-rolls-back':
      return partingFamilies(outing, finding);
    case 'chains-missing':
    case 'no-chain-on-grade':
      return [{ size: 1, changes: [{ kind: 'chains' }] }];
    case 'curve-too-tight':
    case 'gauge-differs':
    case 'seat-too-high':
      return [leaveOne(finding, 4)];
    case 'curve-speed-limited-by-balance':
      return [slowerHere(outing, finding), ...balanceFamilies(outing, finding)];
    case 'tips-at-rest':
    case 'stands-light-on-one-side':
    case 'lean-small':
    case 'truck-lifts':
    case 'flange-may-climb':
    case 'coupler-jerk-tips':
      return [...balanceFamilies(outing, finding), fewerRidersOn(outing, finding.where.vehicle, 4)];
    case 'propelled-without-lookout':
      return [order(outing), ...fartherForward(outing)];
    case 'all-lean-goes-over':
      return balanceFamilies(outing, finding);
    case 'rider-too-young':
      return [fewerRidersOn(outing, finding.where.vehicle, 2)];
    default:
      return practiceFamilies(outing, finding);
  }
}

/** The next chain that does, grade by grade, growing sizes; the same on every gap where several are too weak. */
function chainFamilies({ where, facts }: Finding): Family[] {
  if (where.gap === undefined) return [];
  const gap = toldForSeveral(facts) ? {} : { gap: where.gap };
  return chainGrades.map((grade, i) => ({
    size: 1 + i,
    changes: chainCatalogue
      .filter((row) => row.grade === grade)
      .map(({ size }): Change => ({ kind: 'chain-size', ...gap, grade, size })),
  }));
}

/** Chains on every gap; the brake made automatic, which comes on when the hose tears; a guard; fewer cars. */
function partingFamilies(outing: Outing, finding: Finding): Family[] {
  const kinds = new Set(outing.train.vehicles.flatMap((v) => v.brakes.map((b) => b.kind)));
  const automatic: Change[] = [
    ...(kinds.has('straight-air') ? [{ kind: 'brake-kind' as const, brake: 'automatic-air' as const }] : []),
    ...(kinds.has('simple-vacuum')
      ? [{ kind: 'brake-kind' as const, brake: 'automatic-vacuum' as const }]
      : []),
  ];
  const chained = outing.train.chainsFastened && finding.where.gap !== undefined;
  return [
    { size: 1, changes: [{ kind: 'chains' }] },
    ...(chained ? chainFamilies(finding) : []),
    { size: 2, changes: [{ kind: 'guard' }] },
    ...automatic.map((change) => ({ size: 7, changes: [change] })),
    fewerCars(outing, 6),
    ...brakeCars(outing, 12),
  ];
}

const none: Family = { size: 0, changes: [] };

/** Sand lies under the engine's driving wheels alone: on a dry rail it helps there; a wet rail dries for the whole train. */
function betterRail(outing: Outing): Family {
  const state = outing.conditions.railState;
  return state === 'sanded'
    ? none
    : {
        size: state === 'dry' ? 1 : 3,
        changes: [{ kind: 'rail-state', state: state === 'dry' ? 'sanded' : 'dry' }],
      };
}

/** Leave one, two, … cars behind, from the rear. */
function fewerCars(outing: Outing, size: number): Family {
  const cars = outing.train.vehicles.filter(isCar).map((v) => v.id);
  return {
    size,
    changes: cars
      .slice(1)
      .map((_, i): Change => ({ kind: 'fewer-cars', leave: cars.slice(cars.length - 1 - i) })),
  };
}

/** Leave one, two, … riders behind, the heaviest first. */
function fewerRiders(outing: Outing, size: number): Family {
  const ids = outing.riders
    .filter((r) => r.duty === 'rider')
    .sort((a, b) => b.mass.value - a.mass.value)
    .map((r) => r.id);
  return { size, changes: ids.map((_, i): Change => ({ kind: 'fewer-riders', leave: ids.slice(0, i + 1) })) };
}

function fewerRidersOn(outing: Outing, vehicle: string | undefined, size: number): Family {
  const ids = outing.riders
    .filter((r) => r.duty === 'rider' && r.vehicle === vehicle)
    .sort((a, b) => b.mass.value - a.mass.value)
    .map((r) => r.id);
  return { size, changes: ids.map((_, i): Change => ({ kind: 'fewer-riders', leave: ids.slice(0, i + 1) })) };
}

function leaveOne(finding: Finding, size: number): Family {
  const { vehicle } = finding.where;
  return vehicle === undefined ? none : { size, changes: [{ kind: 'fewer-cars', leave: [vehicle] }] };
}

/** All cars with a brake of the kind that does not work with the engine's. */
function leaveOfKind(outing: Outing, { facts }: Finding, size: number): Family {
  const leave = outing.train.vehicles
    .filter((v) => isCar(v) && v.brakes.some((b) => 'kind' in facts && b.kind === facts.kind))
    .map((v) => v.id);
  return leave.length === 0 ? none : { size, changes: [{ kind: 'fewer-cars', leave }] };
}

function leaveUnbraked(outing: Outing): Family {
  const ids = outing.train.vehicles.filter((v) => isCar(v) && v.brakes.length === 0).map((v) => v.id);
  return {
    size: 5,
    changes: ids.map((_, i): Change => ({ kind: 'fewer-cars', leave: ids.slice(0, i + 1) })),
  };
}

/** Brake named cars like the best braked car of the train: one, or all that have no brake. */
function brakeCars(outing: Outing, size: number): Family[] {
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
function order(outing: Outing): Family {
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
function slowerHere({ direction, line }: Outing, { found, where }: Finding): Family {
  const speed = grain(found?.si ?? 0);
  if (speed <= 0 || where.from === undefined || where.to === undefined) return none;
  // Agreed limits are written in the line's own chainage, findings in the running direction's.
  const stretch = { from: where.from, to: where.to };
  const { from, to } = direction === 'forward' ? stretch : turnedStretch(line, stretch);
  return { size: 1, changes: [{ kind: 'slower', from, to, speed }] };
}

/** Run slower on the whole line, by quarters of a mile per hour. */
function slowerEverywhere(outing: Outing): Family {
  const from = Math.min(outing.plannedSpeed ?? Infinity, outing.host.speed?.value ?? Infinity, 15 * 0.44704);
  const changes: Change[] = [];
  for (let v = grain(from * (1 - 1e-9)); v >= 4 * SPEED_GRAIN; v -= SPEED_GRAIN) {
    changes.push({ kind: 'slower-everywhere', speed: v });
  }
  return { size: 1.5, changes };
}

/** A parking brake where the driver rides, or else the guard, as strong as is needed: nobody relies on riders. */
function parking(outing: Outing, { found, required }: Finding): Family[] {
  const missing = required && found ? required.si - found.si : 100;
  return [...driverPlaces(outing).slice(0, 1), ...placesOf(outing, 'guard').slice(0, 1)].map((at, i) => ({
    size: 9 + i,
    changes: [1.1, 1.5, 2, 3].map(
      (factor): Change => ({
        kind: 'parking-brake',
        vehicle: outing.train.vehicles[at].id,
        force: Math.ceil(missing * factor),
      }),
    ),
  }));
}

/** Move the heaviest rider of an overloaded car to a free seat elsewhere. */
function swaps(outing: Outing, { where }: Finding): Family[] {
  const heaviest = outing.riders
    .filter((r) => r.vehicle === where.vehicle && r.duty === 'rider')
    .sort((a, b) => b.mass.value - a.mass.value)[0];
  if (!heaviest) return [];
  const free = outing.train.vehicles.flatMap((v) =>
    v.id === where.vehicle || !isCar(v)
      ? []
      : v.seats
          .filter((s) => !s.driver && !outing.riders.some((r) => r.vehicle === v.id && r.seat === s.id))
          .map((s) => ({ rider: heaviest.id, vehicle: v.id, seat: s.id })),
  );
  return free.slice(0, 6).map((move) => ({ size: 1, changes: [{ kind: 'seat', moves: [move] }] }));
}
