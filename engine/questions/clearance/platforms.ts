/**
 * How riders step across at each platform: the widest gap and the highest step between its edge and what they step on, seat by
 * seat, wherever along it the train stands; springs as they may sink under people, play and cant at their worst.
 */
import { amount } from '../../base/quantity.ts';
import type { OutingContext } from '../../outing/open.ts';
import { pointBeside } from '../../things/clearance/swept.ts';
import { cantAt, onLine, wideningAt } from '../../things/line/geometry.ts';
import type { Structure } from '../../things/line/types.ts';
import type { LoadedVehicle } from '../../things/train/loaded.ts';
import { frameSinks } from '../crests/sinks.ts';
import type { Finding } from '../finding.ts';
import { makeFinding, marginOf } from '../make.ts';
import { type Body, bodiesOf, type Way, wayFor } from './bodies.ts';

/** Between the places where the train is stood along a platform, m. */
const STEP = 0.25;
/** Rounding of sums of lengths, m. */
const ROUNDING = 1e-6;

export interface Across {
  readonly platform: Structure;
  readonly side: 'left' | 'right';
  readonly vehicle: string;
  readonly name: string;
  /** Widest, m, and where. */
  readonly gap: { readonly value: number; readonly at: number };
  /** Up to the vehicle where positive, the greater of up and down, m. */
  readonly step: number;
}

export interface PlatformsLook {
  readonly across: readonly Across[];
  /** Ridden vehicles of which nobody measured what riders step on, or their width. */
  readonly without: readonly LoadedVehicle[];
}

const isRidden = ({ vehicle }: LoadedVehicle): boolean => vehicle.seats.some((s) => !s.driver);

export function lookAtPlatforms(context: OutingContext): PlatformsLook {
  const { line, loaded } = context;
  const platforms = (line.structures ?? []).filter((s) => s.platform);
  if (platforms.length === 0) return { across: [], without: [] };
  const ridden = loaded.vehicles.filter(isRidden);
  const without = ridden.filter(({ vehicle }) => !vehicle.step || !vehicle.envelope);
  const bodies = bodiesOf(context).filter(({ of }) => isRidden(of) && of.vehicle.step);
  const way = wayFor(line, bodies);
  // Cars alike stand alike.
  const known = new Map<string, readonly Across[]>();
  const across = bodies.flatMap((body) => {
    const { vehicle } = body.of;
    const sinks = vehicle.seats.map((seat) => frameSinks(body.of, seat.at));
    const { shape, play, roll } = body;
    const key = JSON.stringify([shape, play.high, vehicle.step, vehicle.seats, sinks, roll?.kind ?? '']);
    const found =
      known.get(key) ??
      platforms.flatMap((platform) => {
        const sides = platform.side === 'both' ? (['left', 'right'] as const) : [platform.side];
        return sides.flatMap((side) => acrossAt(way, body, platform, side) ?? []);
      });
    known.set(key, found);
    return found.map((at) => ({ ...at, vehicle: vehicle.id, name: vehicle.name }));
  });
  return { across, without };
}

function acrossAt(way: Way, body: Body, platform: Structure, side: 'left' | 'right'): Across | undefined {
  const { vehicle } = body.of;
  const { step, seats } = vehicle;
  const { distance, top, from } = platform;
  if (!step || distance === undefined || top === undefined) return undefined;
  const { line } = way;
  const to = platform.to < from ? platform.to + line.length : platform.to;
  const hand = side === 'left' ? 1 : -1;
  const { front } = body.shape.box;
  let gap = { value: -Infinity, at: from };
  let most = 0;
  const count = Math.max(1, Math.ceil((to - from) / STEP));
  for (const seat of seats) {
    if (seat.driver) continue;
    // Seats are told from the front end, points of the shape from the rear guide.
    const along = front - seat.at;
    const sinks = Math.max(0, ...frameSinks(body.of, seat.at));
    for (let i = 0; i <= count; i++) {
      const s = from + ((to - from) * i) / count;
      const off = (-hand * (body.play.high + wideningAt(line, onLine(line, s)))) / 2;
      const point = { along, across: (hand * step.width) / 2 };
      const here = pointBeside(way.plan, body.shape, s - along, point, { rear: off, front: off });
      if (!here) continue;
      const tilt = cantAt(line, onLine(line, s)) / line.contactWidth;
      // Lower rail toward the platform: the step comes nearer, and lower.
      // On springs it stands away from the platform by what people off the middle and cant roll it, and lifts that side.
      const away = rollHere(body, side === 'left' ? 'right' : 'left', -hand * tilt);
      const toward = rollHere(body, side, hand * tilt);
      const reach = hand * here.aside + hand * tilt * step.height - away * step.height;
      if (distance - reach > gap.value) gap = { value: distance - reach, at: onLine(line, s) };
      // Heights are told above the nearer rail.
      const beyond = (step.width - line.contactWidth) / 2;
      const edge = step.height - hand * tilt * beyond - top;
      const half = step.width / 2;
      for (const up of [edge + away * half, edge - sinks - toward * half])
        if (Math.abs(up) > Math.abs(most)) most = up;
    }
  }
  if (gap.value === -Infinity) return undefined;
  return { platform, side, vehicle: vehicle.id, name: vehicle.name, gap, step: most };
}

/** Standing, to a side, rad, ≥ 0. @param lean of the track to it, rad */
const rollHere = ({ roll }: Body, side: 'left' | 'right', lean: number): number =>
  Math.max(0, roll?.to(side, lean, 0, 'high') ?? 0);

const SOURCE =
  'vehicle and platform as measured, placed on the plan of the line: common engineering geometry';

/** What is wider or higher than the host allows limits where people get on; than is usual, a note. */
export function askPlatforms(context: OutingContext): Finding[] {
  const { host, assumed } = context.outing;
  const { across, without } = lookAtPlatforms(context);
  return [
    ...beyond(
      across,
      'platform-gap',
      ({ gap }) => gap.value,
      host.platformGap,
      assumed.practice['platform-gap'],
    ),
    ...beyond(
      across,
      'platform-step',
      (a) => Math.abs(a.step),
      host.platformStep,
      assumed.practice['platform-step'],
    ),
    ...(without.length === 0
      ? []
      : [
          makeFinding(
            'platform-not-measured',
            host.platformGap || host.platformStep ? 'unknown' : 'notes',
            'fit',
            {
              where: { vehicle: without[0].vehicle.id },
              facts: { vehicles: [...new Set(without.map((v) => v.vehicle.name))].join(', ') },
              measure: without.some((v) => v.vehicle.envelope) ? 'vehicle.step' : 'vehicle.envelope',
              source: SOURCE,
            },
          ),
        ]),
  ];
}

interface Limit {
  readonly value: number;
  readonly source: string;
}

/** The worst beyond a limit, and how many other platforms likewise. */
function beyond(
  across: readonly Across[],
  code: 'platform-gap' | 'platform-step',
  of: (across: Across) => number,
  rule: Limit | undefined,
  usual: Limit,
): Finding[] {
  const { value, source } = rule ?? usual;
  const these = across.filter((a) => of(a) > value + ROUNDING);
  if (these.length === 0) return [];
  const worst = these.reduce((a, b) => (of(b) > of(a) ? b : a));
  const details = {
    where: { vehicle: worst.vehicle, place: worst.platform.name, from: worst.gap.at, to: worst.gap.at },
    found: amount(of(worst), 'length'),
    required: amount(value, 'length'),
    margin: marginOf(of(worst), value),
    source,
  };
  const facts = {
    platform: worst.platform.name,
    others: new Set(these.map((a) => a.platform.id)).size - 1,
  };
  const severity = rule ? 'limits' : 'notes';
  return [
    code === 'platform-gap'
      ? makeFinding(code, severity, 'fit', { ...details, facts: { ...facts, side: worst.side } })
      : makeFinding(code, severity, 'fit', {
          ...details,
          facts: { ...facts, way: worst.step > 0 ? 'up' : 'down' },
        }),
  ];
}
