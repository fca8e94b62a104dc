/** Findings about centres of gravity that nobody measured, loads on trucks, and twist. */

import { GRAVITY } from '../../base/constants.ts';
import { amount } from '../../base/quantity.ts';
import type { OutingContext } from '../../outing/open.ts';
import { bestRail } from '../../outing/rails.ts';
import { trainBrakes } from '../../things/brake/force.ts';
import type { Finding } from '../finding.ts';
import { makeFinding, marginOf } from '../make.ts';
import type { BalanceData } from './ask.ts';
import { bodyOf } from './body.ts';
import { MOST_UNLOADING, POOREST_TWIST, UNEVEN_TRUCKS } from './limits.ts';
import type { VehicleBalance } from './look.ts';
import { groupLoadsMoving } from './moved.ts';
import { brakeForces, brakingPulls } from './pull.ts';
import { checkTwist, twistFreedom } from './twist.ts';

/**
 * A centre of gravity that is not known: cannot tell where nothing bounds it or the bound would tip; limits
 * where the bound sets a speed; else even the highest plausible centre is safe, and that is said.
 */
export function centreFindings({ loaded }: OutingContext, data: BalanceData): Finding[] {
  const measure = 'vehicle.centreHeight';
  const unknown = data.unbounded.map((i) =>
    makeFinding('centre-of-gravity-unknown', 'unknown', 'balance', {
      where: { vehicle: loaded.vehicles[i].vehicle.id },
      facts: { bounded: 'no' },
      measure,
      source: 'vehicle',
      sure: 'assumed',
    }),
  );
  const bounded = data.vehicles.filter((v) => !v.centreKnown);
  return [
    ...unknown,
    ...bounded.map((v) => {
      const tips = v.standing.share <= 0;
      const limits = data.ceiling.by.some((i, j) => i === v.index && data.ceiling.speed[j] < data.wanted[j]);
      return makeFinding(
        'centre-of-gravity-unknown',
        tips ? 'unknown' : limits ? 'limits' : 'notes',
        'balance',
        {
          where: { vehicle: v.vehicle },
          found: amount(v.highest, 'length'),
          facts: { bounded: tips ? 'tips' : limits ? 'limits' : 'safe' },
          measure,
          source: 'top of the vehicle',
          sure: 'assumed',
        },
      );
    }),
  ];
}

/** Trucks that lift, are unevenly loaded, or go beyond their rating when weight moves under the brake. */
export function loadFindings(context: OutingContext, data: BalanceData): Finding[] {
  return [...data.vehicles.flatMap(uneven), ...overloadedMoving(context, data)];
}

function uneven(v: VehicleBalance): Finding[] {
  if (v.evenAlong >= UNEVEN_TRUCKS.value) return [];
  const lifts = v.evenAlong <= 0;
  return [
    makeFinding(lifts ? 'truck-lifts' : 'trucks-uneven', lifts ? 'forbids' : 'notes', 'balance', {
      where: { vehicle: v.vehicle },
      found: amount(v.evenAlong, 'ratio'),
      required: amount(lifts ? 0 : UNEVEN_TRUCKS.value, 'ratio'),
      margin: lifts ? Math.min(v.evenAlong, -1e-9) : v.evenAlong / UNEVEN_TRUCKS.value - 1,
      source: lifts ? 'lever rule' : UNEVEN_TRUCKS.source,
    }),
  ];
}

function overloadedMoving(context: OutingContext, data: BalanceData): Finding[] {
  const { loaded, outing } = context;
  const { air } = context;
  const { groups } = trainBrakes(loaded, outing.assumed, air.pressure, air.seaLevel);
  const adhesion = outing.assumed.adhesion[bestRail(context, outing.conditions.railState)].high;
  const masses = loaded.vehicles.map((v) => v.mass);
  const brakes = brakeForces(masses.length, groups, adhesion, 1, () => true);
  const deceleration = brakes.reduce((a, b) => a + b, 0) / masses.reduce((a, b) => a + b, 0);
  const pulls = brakingPulls(masses, brakes);
  return data.rolling.flatMap(({ body: { base }, index }) => {
    const { vehicle } = loaded.vehicles[index];
    const rating = vehicle.ratings.axleLoad;
    const body = bodyOf(loaded.vehicles[index], base, outing.assumed.riderCentre, 0);
    if (rating === undefined || !body) return [];
    const height = (h: number | undefined): number => h ?? vehicle.gauge;
    const moving = groupLoadsMoving(body, deceleration, 0, [
      { at: 0, height: height(vehicle.front.height), left: 0, rear: -(pulls[index - 1] ?? 0) },
      { at: vehicle.length, height: height(vehicle.rear.height), left: 0, rear: pulls[index] ?? 0 },
    ]);
    return vehicle.groups.flatMap((group, i) => {
      const perAxle = moving[i] / GRAVITY / group.axles;
      const still = loaded.vehicles[index].groupLoads[i] / GRAVITY / group.axles;
      if (perAxle <= rating || still > rating) return [];
      return [
        makeFinding('truck-overloaded', 'notes', 'balance', {
          where: { vehicle: vehicle.id },
          found: amount(perAxle, 'mass'),
          required: amount(rating, 'mass'),
          margin: marginOf(perAxle, rating),
          facts: {
            group: group.name,
            still: amount(still, 'mass'),
            deceleration: amount(deceleration, 'acceleration'),
          },
          source: 'rating of the vehicle',
        }),
      ];
    });
  });
}

/** Unloading by twist: of the worst vehicle, or what is missing to tell. */
export function twistFindings(context: OutingContext, data: BalanceData): Finding[] {
  const { line } = context;
  const checked = data.vehicles.filter((v) => v.twist);
  const worst = checked.reduce<VehicleBalance | undefined>(
    (a, b) => (a?.twist && b.twist && a.twist.unloading >= b.twist.unloading ? a : b),
    undefined,
  );
  const findings: Finding[] = [];
  if (worst?.twist && worst.twist.unloading > MOST_UNLOADING.value) {
    const { unloading, lift, freedom, over, margin } = worst.twist;
    findings.push(
      makeFinding('wheel-unloads-on-twist', unloading >= 1 ? 'forbids' : 'limits', 'balance', {
        where: { vehicle: worst.vehicle },
        found: amount(unloading, 'ratio'),
        required: amount(MOST_UNLOADING.value, 'ratio'),
        margin,
        facts: {
          lift: amount(lift, 'length'),
          freedom: amount(freedom, 'length'),
          over: amount(over, 'length'),
          twist: amount(data.trackTwist ?? 0, 'twist'),
        },
        sum: {
          id: 'track-warp',
          inputs: { difference: (data.trackTwist ?? 0) * over, along: over, 'wheel-base': over },
        },
        source: MOST_UNLOADING.source,
      }),
    );
  }
  const missing = data.vehicles.filter((v) => twistFreedom(vehicleOf(context, v), 1) === undefined);
  if (missing.length > 0) findings.push(twistUnknown(missing[0].vehicle, missing.length, 'vehicle'));
  if (line.twist === undefined && !data.vehicles.every((v) => bearsPoorest(context, v))) {
    findings.push(twistUnknown(undefined, 0, 'line'));
  }
  return findings;
}

const vehicleOf = ({ loaded }: OutingContext, v: VehicleBalance) => loaded.vehicles[v.index].vehicle;

/** Bears the twist of the poorest published track class: then the line's own need not be known. */
function bearsPoorest(context: OutingContext, v: VehicleBalance): boolean {
  const lightest = Math.min(...v.axles.flatMap((a) => [a.left, a.right]));
  const check = checkTwist(vehicleOf(context, v), POOREST_TWIST.value, lightest);
  return check !== undefined && check.unloading <= MOST_UNLOADING.value;
}

const twistUnknown = (vehicle: string | undefined, vehicles: number, of: 'vehicle' | 'line'): Finding =>
  makeFinding('twist-unknown', 'notes', 'balance', {
    where: vehicle === undefined ? {} : { vehicle },
    facts: { of, vehicles },
    measure: of === 'vehicle' ? 'vehicle.suspension.twistFreedom' : 'line.twist',
    source: of,
    sure: 'assumed',
  });
