/** Findings about tipping: standing, in curves, and with people who lean. */

import { amount } from '../../base/quantity.ts';
import type { SumRef } from '../../base/sum.ts';
import type { OutingContext } from '../../outing/open.ts';
import type { Finding } from '../finding.ts';
import { makeFinding } from '../make.ts';
import type { BalanceData } from './ask.ts';
import { type Body, bodyOf, centreHeight } from './body.ts';
import { peopleTold, restTold, type Together } from './lean.ts';
import { MOST_UNLOADING, USUAL_LEAN } from './limits.ts';
import type { VehicleBalance } from './look.ts';
import type { Rolling } from './margins.ts';
import type { Under } from './tipping.ts';

const sure = (v: VehicleBalance): 'stated' | 'assumed' => (v.centreKnown ? 'stated' : 'assumed');

/** Standing upright, on the level and on every cant of the line: does a wheel lift, is one nearly off? */
export function standingFindings(context: OutingContext, data: BalanceData): Finding[] {
  return data.vehicles.flatMap((v): Finding[] => {
    const { at, share } = v.standing;
    const where = { vehicle: v.vehicle, from: at, to: at };
    const level = v.evenAcross <= 0;
    const flat = level || underAt(data, v, at).cant === 0;
    if (level || share <= 0) {
      // With a centre of gravity that is only bounded from above the car may well stand: not known.
      if (!level && !v.centreKnown) return [];
      return [
        makeFinding('tips-at-rest', 'forbids', 'balance', {
          where: flat ? { vehicle: v.vehicle } : where,
          found: amount(level ? v.evenAcross : share, 'ratio'),
          required: amount(0, 'ratio'),
          margin: Math.min(level ? v.evenAcross : share, -1e-9),
          facts: { where: flat ? 'level' : 'cant', height: amount(v.highest, 'length') },
          sum: shiftSum(context, data, v, level),
          source: 'moments about the rail',
          sure: sure(v),
        }),
      ];
    }
    const least = 1 - MOST_UNLOADING.value;
    const found = Math.min(v.evenAcross, share);
    if (found >= least) return [];
    return [
      makeFinding('stands-light-on-one-side', 'limits', 'balance', {
        where: v.evenAcross < share ? { vehicle: v.vehicle } : where,
        found: amount(found, 'ratio'),
        required: amount(least, 'ratio'),
        margin: found / least - 1,
        facts: { by: v.evenAcross < share ? 'seating' : 'cant', ...heavySide(data, v) },
        sum: shiftSum(context, data, v, v.evenAcross < share),
        source: MOST_UNLOADING.source,
        sure: sure(v),
      }),
    ];
  });
}

/** Vehicles that are looked at, their bodies and the ground under them stand in one order. */
const rollingOf = (data: BalanceData, v: VehicleBalance): Rolling => data.rolling[data.vehicles.indexOf(v)];

/** Track under a vehicle with the train's head at a place of the grid. */
function underAt(data: BalanceData, v: VehicleBalance, at: number): Under {
  const { curvature, cant } = data.grounds[data.vehicles.indexOf(v)];
  const j = data.grid.indexOf(at);
  return { curvature: curvature[j], cant: cant[j] };
}

/** How far some of a body's mass may shift before a wheel lifts. */
function leanSum(
  body: Body,
  people: number,
  { curvature, cant }: Under,
  speed: number,
  wind: number,
): SumRef {
  const inward = curvature < 0 ? -1 : 1;
  const { mass, base } = body;
  return {
    id: 'lean-to-lift',
    inputs: {
      mass,
      people,
      height: centreHeight(body),
      base,
      offset: (inward * body.Y) / mass,
      cant: inward * Math.sin(cant) * base,
      sideways: speed * speed * Math.abs(curvature),
      wind,
      evenness: Math.min(...body.groupMass.map((m, i) => m / mass / body.rollShare[i])),
      roll: body.amplification,
    },
  };
}

/** How far the centre of all that stands on the wheels may shift: level with likely masses, or on the worst cant. */
function shiftSum(context: OutingContext, data: BalanceData, v: VehicleBalance, level: boolean): SumRef {
  const { drawn } = rollingOf(data, v);
  const under = underAt(data, v, v.standing.at);
  const { body, wind } = restTold(drawn, under);
  const likely = bodyOf(context.loaded.vehicles[v.index], body.base, context.outing.assumed.riderCentre, 0);
  const sum =
    level && likely
      ? leanSum(likely, likely.mass, { curvature: 0, cant: 0 }, 0, 0)
      : leanSum(body, body.mass, under, 0, wind);
  return { ...sum, differs: 'part' };
}

function heavySide(data: BalanceData, v: VehicleBalance): { side: 'left' | 'right' } {
  const body = rollingOf(data, v).body;
  return { side: body.Y < 0 ? 'right' : 'left' };
}

/** Stretches where a vehicle's balance allows less than would be run. */
export function curveFindings(context: OutingContext, data: BalanceData): Finding[] {
  const { grid, wanted, ceiling, required } = data;
  const findings: Finding[] = [];
  for (let j = 0; j < grid.length; j++) {
    if (ceiling.speed[j] >= wanted[j] - 1e-9) continue;
    const first = j;
    let low = j;
    while (j + 1 < grid.length && ceiling.speed[j + 1] < wanted[j + 1] - 1e-9) {
      j++;
      if (ceiling.speed[j] < ceiling.speed[low]) low = j;
    }
    findings.push(limited(context, data, first, j, low, required.source));
  }
  return findings;
}

function limited(
  { loaded }: OutingContext,
  data: BalanceData,
  first: number,
  last: number,
  low: number,
  source: string,
): Finding {
  const { grid, wanted, ceiling } = data;
  const index = ceiling.by[low];
  const v = data.vehicles.find((x) => x.index === index) as VehicleBalance;
  const curve = data.curves.find((c) => Math.abs(c.at - grid[low]) < loaded.length + (c.to - c.from));
  const { body } = rollingOf(data, v);
  const under = underAt(data, v, grid[low]);
  const inward = under.curvature < 0 ? -1 : 1;
  const speed = ceiling.speed[low];
  return makeFinding('curve-speed-limited-by-balance', speed > 0 ? 'limits' : 'forbids', 'balance', {
    where: { vehicle: loaded.vehicles[index].vehicle.id, from: grid[first], to: grid[last] },
    found: amount(speed, 'speed'),
    required: amount(wanted[low], 'speed'),
    margin: speed / wanted[low] - 1,
    facts: {
      radius: amount(1 / Math.abs(under.curvature), 'length'),
      height: amount(v.highest, 'length'),
      share: amount(data.required.value, 'ratio'),
      ...(curve ? { lift: amount(curve.lift, 'speed'), leaning: amount(curve.liftLeaning, 'speed') } : {}),
    },
    sum: {
      id: 'overturning-speed',
      inputs: {
        radius: 1 / Math.abs(under.curvature),
        base: body.base,
        height: centreHeight(body),
        cant: inward * Math.sin(under.cant) * body.base,
        lean: (-inward * body.Y) / body.mass,
      },
      differs: 'edge',
    },
    source,
    sure: sure(v),
  });
}

/** People who lean: all of a car, and one alone. */
export const leanFindings = (context: OutingContext, data: BalanceData): Finding[] => [
  ...allLean(data),
  ...oneLeans(context, data),
];

/** The car that goes over first when all its people lean together. One that lies over already is said elsewhere. */
function allLean(data: BalanceData): Finding[] {
  const small = data.vehicles.flatMap((v) =>
    v.together && v.together.lean > 0 && v.together.lean < USUAL_LEAN.value ? [{ v, ...v.together }] : [],
  );
  if (small.length === 0) return [];
  const worst = small.reduce((a, b) => (b.lean < a.lean ? b : a));
  const { v, at, speed, lean } = worst;
  const under = underAt(data, v, at);
  const people = peopleTold(rollingOf(data, v).drawn, under, speed, 'all');
  const total = people.masses.reduce((sum, m) => sum + m, 0);
  const sum = leanSum(people.body, total, under, speed, people.wind);
  return [
    makeFinding('all-lean-goes-over', 'limits', 'balance', {
      where: { vehicle: v.vehicle, from: at, to: at },
      found: amount(lean, 'length'),
      required: amount(USUAL_LEAN.value, 'length'),
      margin: lean / USUAL_LEAN.value - 1,
      facts: {
        place: placeOf(worst, under),
        riders: people.masses.length,
        speed: amount(speed, 'speed'),
        cant: amount(Math.abs(Math.sin(under.cant)) * people.body.base, 'length'),
        vehicles: small.length,
      },
      // The vehicle as a whole: how its trucks share it does not matter.
      sum: { ...sum, inputs: { ...sum.inputs, evenness: 1 } },
      source: USUAL_LEAN.source,
      sure: 'assumed',
    }),
  ];
}

function placeOf({ speed }: Together, { curvature, cant }: Under): 'anywhere' | 'running' | 'standing' {
  if (curvature === 0 && cant === 0) return 'anywhere';
  return speed > 0 ? 'running' : 'standing';
}

/** The smallest lean of one rider that lifts a wheel, of all vehicles, where they stand and where they run. */
function oneLeans(context: OutingContext, data: BalanceData): Finding[] {
  const places = data.vehicles.flatMap((v) =>
    [v.running, v.standing].map((place) => ({ v, place, one: place.lift.one ?? Infinity })),
  );
  const worst = places
    .filter((p) => p.place.share > 0)
    .reduce<(typeof places)[number] | undefined>((a, b) => (a && a.one <= b.one ? a : b), undefined);
  if (!worst || worst.one >= USUAL_LEAN.value) return [];
  const { v, place, one } = worst;
  const under = underAt(data, v, place.at);
  const { body, masses, wind } = peopleTold(rollingOf(data, v).drawn, under, place.speed, 'one');
  const heaviest = Math.max(...masses);
  const { rider } = context.loaded.vehicles[v.index].riders[masses.indexOf(heaviest)];
  return [
    makeFinding('lean-small', 'notes', 'balance', {
      where: { vehicle: v.vehicle, from: place.at, to: place.at },
      found: amount(one, 'length'),
      required: amount(USUAL_LEAN.value, 'length'),
      margin: one / USUAL_LEAN.value - 1,
      facts: {
        rider: rider.name,
        speed: amount(place.speed, 'speed'),
        vehicles: new Set(places.filter((p) => p.one < USUAL_LEAN.value).map((p) => p.v.index)).size,
        ...(place.lift.two === undefined ? {} : { two: amount(place.lift.two, 'length') }),
        ...(place.lift.all === undefined ? {} : { all: amount(place.lift.all, 'length') }),
      },
      sum: leanSum(body, heaviest, under, place.speed, wind),
      source: USUAL_LEAN.source,
      sure: 'assumed',
    }),
  ];
}
