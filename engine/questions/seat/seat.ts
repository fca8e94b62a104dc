/**
 * Seat them: the greatest worst margin, proven by a mixed-integer solver, and then the fewest moves.
 *
 * Each car filled in one way is a pattern with a known margin. The greatest threshold at which patterns can
 * still be chosen that seat everybody is the optimum of the worst margin: between the threshold found and the
 * next higher one the solver has shown that nothing fits. With that threshold kept, a second program seats
 * with the fewest people changing seats, and among those with the best margins in sum.
 */
import { arrange } from './arrange.ts';
import { boundOfAll } from './bound.ts';
import { type Car, carMargin, carOf } from './car.ts';
import { awayFromPractice } from './custom.ts';
import { exchanged } from './exchange.ts';
import { reasonsFor } from './explain.ts';
import { buildPatterns, type PatternTable, slotsOf, slotsOfUnits, unitCounts } from './patterns.ts';
import { type Column, choose, kindColumns, type Rows } from './program.ts';
import { bestThreshold, ROUNDED_AWAY } from './threshold.ts';
import type { NoSeating, Place, Seating, SeatingProblem, Solve } from './types.ts';
import { type Unit, unitsOf } from './units.ts';

/** Less than any difference of margins that counts: practice chooses only among equals. */
const PRACTICE_WEIGHT = 1e-11;
/** More patterns than this are too many for a second of solving: masses are then rounded more coarsely. */
const MOST_PATTERNS = 3000;
/** Grains of mass, kg, tried in turn. */
const GRAINS = [0, 2, 5, 10, 20, 40];

export function seatPeople(problem: SeatingProblem, solve: Solve): Seating | NoSeating {
  const cars = problem.cars.flatMap((c) => carOf(c, problem) ?? []);
  const seats = cars.reduce((sum, c) => sum + c.seats.length, 0);
  if (seats < problem.people.length || cars.length === 0) return { ok: false, why: 'too-few-seats' };
  const table = tableOf(problem, cars);
  if (!table) return { ok: false, why: 'solver' };
  const threshold = bestThreshold(table.patterns, boundOfAll(problem, cars), solve);
  if (threshold === 'failed') return { ok: false, why: 'solver' };
  if (threshold === undefined) return { ok: false, why: 'rules' };
  const filled = problem.people.some((r) => r.seat !== undefined)
    ? fewestMoves(problem, cars, table.patterns, threshold, solve)
    : bestInSum(table.patterns, threshold, solve);
  if (!filled) return { ok: false, why: 'solver' };
  return answer(problem, cars, table, threshold, filled);
}

interface Table {
  readonly patterns: PatternTable;
  readonly split: readonly string[];
}

function tableOf(problem: SeatingProblem, cars: readonly Car[]): Table | undefined {
  const largest = Math.max(...cars.map((c) => c.seats.length));
  for (const grain of GRAINS) {
    const { units, split } = unitsOf(problem.people, largest, grain);
    const patterns = buildPatterns(problem, cars, units, grain, MOST_PATTERNS);
    if (patterns) return { patterns, split };
  }
  return undefined;
}

/** Pattern of each car. */
type Filling = readonly { readonly car: number; readonly counts: readonly number[] }[];

/** People moved weigh whole numbers; margins together weigh less than one move. */
const MARGIN_WEIGHT = 0.01;
const KEPT_PER_CAR = 120;

function fewestMoves(
  problem: SeatingProblem,
  cars: readonly Car[],
  table: PatternTable,
  threshold: number,
  solve: Solve,
): Filling | undefined {
  // What rounded masses cannot tell apart is not worth a move.
  const least = table.grain > 0 ? threshold - ROUNDED_AWAY : threshold;
  const columns: (Column & { car: number })[] = table.carKinds.flatMap((kind, i) =>
    kind.cars.flatMap((car) =>
      kind.patterns.flatMap((p, k) => {
        if (p.margin < least) return [];
        const stays = staying(problem, cars[car], table, p.counts, least);
        const cost = -stays - MARGIN_WEIGHT * (p.margin / cars.length);
        return [{ name: `y${i}_${k}_${car}`, carRow: car, counts: p.counts, cost, car }];
      }),
    ),
  );
  const rows: Rows = { cars: cars.map(() => 1), units: unitCounts(table) };
  const likely = table.grain > 0 ? cheapest(columns, cars.length) : columns;
  const quick = choose(likely, rows, solve);
  const chosen = quick ?? (likely === columns ? undefined : choose(columns, rows, solve));
  if (!chosen || chosen === 'failed') return undefined;
  return columns.filter((c) => chosen.has(c.name)).map(({ car, counts }) => ({ car, counts }));
}

/** With rounded masses nothing is proven anyway: the patterns of each car that move fewest will do. */
const cheapest = <C extends Column>(columns: readonly C[], cars: number): C[] =>
  Array.from({ length: cars }, (_, car) =>
    columns
      .filter((c) => c.carRow === car)
      .sort((a, b) => a.cost - b.cost)
      .slice(0, KEPT_PER_CAR),
  ).flat();

/** Nobody sits yet: the best margins in sum, cars of a kind being alike. */
function bestInSum(table: PatternTable, threshold: number, solve: Solve): Filling | undefined {
  const rows: Rows = { cars: table.carKinds.map((k) => k.cars.length), units: unitCounts(table) };
  const columns = kindColumns(table, threshold, (p) => -p.margin);
  const chosen = choose(columns, rows, solve);
  if (!chosen || chosen === 'failed') return undefined;
  const free = table.carKinds.map((k) => [...k.cars]);
  return columns.flatMap((c) =>
    Array.from({ length: chosen.get(c.name) ?? 0 }, () => ({
      car: free[c.carRow].shift() as number,
      counts: c.counts,
    })),
  );
}

/** Most people of a pattern who can keep their seat on this car at the threshold. */
function staying(
  problem: SeatingProblem,
  car: Car,
  table: PatternTable,
  counts: readonly number[],
  threshold: number,
): number {
  const here = unitsHere(table, counts, car);
  if (here.length === 0) return 0;
  const slots = slotsOf(table.units, counts, table.grain);
  const seated = new Map(here.flatMap((u) => u.riders).map((r) => [r.seat ?? '', r]));
  const keeps = (arrangement: readonly number[]): number =>
    arrangement.filter((slot, i) => {
      const now = slot < 0 ? undefined : seated.get(car.seats[i].id);
      return now !== undefined && sameClass(now, slots[slot], table.grain);
    }).length;
  const best = arrange(car, slots, problem.rules, (a, margin) =>
    margin >= threshold - 1e-12 ? keeps(a) : -1,
  );
  return best.best ? Math.max(0, keeps(best.best)) : 0;
}

const sameClass = (rider: Unit['riders'][number], slot: { readonly class: string }, grain: number): boolean =>
  slotsOfUnits([{ riders: [rider], kind: '' }], grain)[0].class === slot.class;

/** Units of the pattern's kinds that sit on this car now, as many as the pattern takes. */
function unitsHere(table: PatternTable, counts: readonly number[], car: Car): Unit[] {
  const id = car.of.vehicle.id;
  return counts.flatMap((n, k) =>
    table.units[k].filter((u) => u.riders.every((r) => r.vehicle === id)).slice(0, n),
  );
}

function answer(
  problem: SeatingProblem,
  cars: readonly Car[],
  { patterns, split }: Table,
  threshold: number,
  filling: Filling,
): Seating {
  const chosen = giveUnits(patterns, cars, filling);
  const given =
    patterns.grain === 0 || problem.people.some((r) => r.seat !== undefined)
      ? chosen
      : exchanged(
          problem,
          filling.map((f) => cars[f.car]),
          chosen,
        );
  const seated = filling.map(({ car }, i) =>
    seatCar(problem, cars[car], given[i], patterns.grain, threshold),
  );
  const ordered = cars.map((_, c) => seated[filling.findIndex((f) => f.car === c)]);
  const places = ordered.flatMap((s) => s.places);
  const worst = Math.min(...ordered.map((s) => s.car.margin.wheel));
  const exact = patterns.grain === 0 && patterns.complete;
  const bound = Math.max(worst, exact ? threshold : boundOfAll(problem, cars));
  return {
    ok: true,
    places,
    cars: ordered.map((s) => s.car),
    worst,
    bound,
    proven: bound - worst < 1e-9,
    moved: problem.people
      .filter((r) => r.vehicle !== undefined && r.seat !== undefined)
      .filter((r) => !places.some((p) => p.rider === r.id && p.vehicle === r.vehicle && p.seat === r.seat))
      .map((r) => r.id),
    split,
  };
}

/** Real units for each car: first those that sit there now, then the rest in order. */
function giveUnits(table: PatternTable, cars: readonly Car[], filling: Filling): Unit[][] {
  const taken = new Set<Unit>();
  const given = filling.map(({ car, counts }) => {
    const here = unitsHere(table, counts, cars[car]);
    for (const u of here) taken.add(u);
    return here;
  });
  filling.forEach(({ counts }, i) => {
    counts.forEach((n, k) => {
      let missing = n - given[i].filter((u) => u.kind === table.kinds[k]).length;
      for (const unit of table.units[k]) {
        if (missing === 0) break;
        if (taken.has(unit)) continue;
        taken.add(unit);
        given[i].push(unit);
        missing--;
      }
    });
  });
  return given;
}

function seatCar(
  problem: SeatingProblem,
  car: Car,
  units: readonly Unit[],
  grain: number,
  threshold: number,
): { car: Seating['cars'][number]; places: Place[] } {
  const { vehicle } = car.of;
  // Real masses decide the seats: with rounded ones the classes were only used to share people out.
  const slots = slotsOfUnits(units, 0);
  const goal = grain === 0 ? threshold - 1e-12 : Infinity;
  const keeps = (a: readonly number[]): number =>
    a.filter((slot, i) => {
      const rider = slot < 0 ? undefined : slots[slot].rider;
      return rider?.vehicle === vehicle.id && rider.seat === car.seats[i].id;
    }).length;
  const named = slots.map((s, i) => ({ ...s, class: `${s.class}#${i}` }));
  const away = (a: readonly number[]): number => {
    const on = a.flatMap((i, seat) => (i < 0 ? [] : [{ rider: slots[i].rider, seat: car.seats[seat] }]));
    return PRACTICE_WEIGHT * awayFromPractice(vehicle, [...on, ...car.of.fixed], problem.rules);
  };
  const { best } = arrange(
    car,
    named,
    problem.rules,
    (a, m) => (m >= goal ? 10 + keeps(a) + m / 2 : m) - away(a),
  );
  const arrangement = best ?? car.seats.map(() => -1);
  const sitters = arrangement.map((i) => (i < 0 ? undefined : slots[i].sitter));
  const margin = carMargin(car, sitters);
  const people = arrangement.map((i) => (i < 0 ? undefined : slots[i].rider));
  return {
    car: { vehicle: vehicle.id, margin, reasons: reasonsFor(car, people, margin) },
    places: people.flatMap((rider, i) =>
      rider ? [{ rider: rider.id, vehicle: vehicle.id, seat: car.seats[i].id }] : [],
    ),
  };
}
