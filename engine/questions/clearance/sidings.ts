/**
 * Where a train in a siding stands clear of the line: where the two tracks lie as far apart as a vehicle reaches on the one
 * and on the other, and the room that is wanted between them. On the line by its swept path; in the siding, of which
 * no more than its sharpest radius is known, as far as it reaches in that curve to either side, wherever it stands.
 */
import type { OutingContext } from '../../outing/open.ts';
import { onLine } from '../../things/line/geometry.ts';
import type { Siding } from '../../things/line/types.ts';
import { type Body, bodiesOf, fullWidthTo, leanToward, reachedAlong, wayFor } from './bodies.ts';

export interface SidingRoom {
  readonly siding: Siding;
  /** Longest stretch of the line beside which a train stands clear, m; null: nowhere; undefined: cannot tell. */
  readonly clear: { readonly from: number; readonly to: number } | null | undefined;
  /** Least room to what passes where the train stands midway in it, m; absent: it does not fit, or cannot tell. */
  readonly least?: number;
  /** Names of vehicles that were not measured. */
  readonly without: string;
}

/**
 * Farthest to either side in a circular curve, m: W = max(R − c + w, √((c + w)² + l²) − R) with c = √(R² − a²/4), w half the width, l half a
 * plus the longer overhang. The play of the flanges is not in it. undefined: the frame is longer than the curve lets stand.
 */
export function reachInCurve(
  { shape, half }: Pick<Body, 'shape' | 'half'>,
  radius: number,
): number | undefined {
  const { guides, box } = shape;
  if (guides >= 2 * radius) return undefined;
  const axis = Math.sqrt(radius ** 2 - (guides / 2) ** 2);
  const end = guides / 2 + Math.max(-box.rear, box.front - guides);
  return Math.max(radius - axis + half, Math.hypot(axis + half, end) - radius);
}

/** Wanted between two trains, m, and who says so. */
export const betweenTrains = ({
  host,
  assumed,
}: OutingContext['outing']): { readonly value: number; readonly source: string } =>
  host.roomBetweenTrains ?? assumed.practice['clear-beside'];

export function lookAtSidings(context: OutingContext): SidingRoom[] {
  const { line, loaded, outing } = context;
  const { sidings = [] } = line;
  if (sidings.length === 0) return [];
  const bodies = bodiesOf(context);
  const without = [
    ...new Set(loaded.vehicles.filter((v) => !v.vehicle.envelope).map((v) => v.vehicle.name)),
  ].join(', ');
  const way = wayFor(line, bodies);
  const margin = betweenTrains(outing).value;
  return sidings.map((siding): SidingRoom => {
    const cannotTell: SidingRoom = { siding, clear: undefined, without };
    const { radius, side, spacings } = siding;
    if (without !== '' || radius === undefined || bodies.length === 0) return cannotTell;
    const inSiding = bodies.map((body) => reachInCurve(body, radius));
    const own = inSiding.every((r) => r !== undefined)
      ? Math.max(...inSiding.map((r, i) => (r as number) + bodies[i].play.high / 2 + standingSway(bodies[i])))
      : undefined;
    if (own === undefined) return cannotTell;
    const [first, last] = [spacings[0].at, spacings[spacings.length - 1].at];
    const reached = bodies.map((body) => reachedAlong(way, body, first, last, side, body.play.high));
    if (reached.some((r) => typeof r === 'number')) return cannotTell;
    const along = reached as Exclude<(typeof reached)[number], number>[];
    const leanBeside = (body: Body, at: number): number => {
      const s = onLine(line, at);
      const heights = { low: body.underside, high: fullWidthTo(body) };
      return leanToward(line, side, s, heights, body.sway?.(side, s, 'high'));
    };
    const free = along[0].map(({ at }, i) => ({
      at,
      free:
        spacingAt(siding, at) -
        own -
        margin -
        Math.max(...along.map((r, k) => r[i].reach + leanBeside(bodies[k], at))),
    }));
    const clear = longest(free);
    const least = clear && midway(free, clear, loaded.length);
    return { siding, clear, ...(typeof least === 'number' ? { least: least + margin } : {}), without };
  });
}

/** Of one that stands in a siding, to either side, m: of its cant nobody tells, it is taken as level. */
const standingSway = (body: Body): number =>
  Math.max(0, ...(['left', 'right'] as const).map((to) => body.roll?.to(to, 0, 0, 'high') ?? 0)) *
  fullWidthTo(body);

/** Least along a train that stands as far from both ends as it can; null: it does not fit. */
function midway(
  of: readonly { readonly at: number; readonly free: number }[],
  { from, to }: { readonly from: number; readonly to: number },
  train: number,
): number | null {
  const off = (to - from - train) / 2;
  if (off < 0) return null;
  // Those just outside count too: between two places it is no less than at one of them.
  const step = of.length > 1 ? of[1].at - of[0].at : 0;
  const beside = of.filter(({ at }) => at > from + off - step && at < to - off + step);
  return beside.length === 0 ? null : Math.min(...beside.map(({ free }) => free));
}

/** Linear between the taped ones. */
function spacingAt({ spacings }: Siding, at: number): number {
  const next = spacings.findIndex((s) => s.at >= at);
  if (next <= 0) return spacings[Math.max(0, next)].spacing;
  const [a, b] = [spacings[next - 1], spacings[next]];
  return a.spacing + ((at - a.at) / (b.at - a.at)) * (b.spacing - a.spacing);
}

/** The longest stretch with room, its ends where the room begins between two places. */
function longest(of: readonly { readonly at: number; readonly free: number }[]): SidingRoom['clear'] {
  let best: { from: number; to: number } | null = null;
  let from: number | undefined;
  of.forEach(({ at, free }, i) => {
    const before = of[i - 1];
    if (free >= 0 && from === undefined)
      from = before && before.free < 0 ? crossed(before, { at, free }) : at;
    if (from === undefined) return;
    const ends = free < 0 ? crossed(before, { at, free }) : i === of.length - 1 ? at : undefined;
    if (ends === undefined) return;
    if (best === null || ends - from > best.to - best.from) best = { from, to: ends };
    from = undefined;
  });
  return best;
}

const crossed = (
  a: { readonly at: number; readonly free: number },
  b: { readonly at: number; readonly free: number },
): number => a.at + ((b.at - a.at) * a.free) / (a.free - b.free);
