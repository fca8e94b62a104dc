/**
 * How fast a wheel wears, and when it will have worn to a limit.
 *
 *   rate r = (x₂ − x₁)/(t₂ − t₁)      left n = (L − x)/r days
 *
 * x a figure of the wheel, m, as read on day t; L its limit. Of more than two readings the line of least squares counts, or the last two
 * where they say more. Range: two days at least, the later one more worn: a wheel that has grown back was turned, or misread, and says
 * nothing. Source: common practice, no source: wear in proportion to days.
 */
import type { Wheelset } from './types.ts';

/** What wears, and which way: a flange grows thinner and, as the tread goes, higher; a tread grows hollow. */
export const wearing = { flangeThickness: -1, flangeHeight: 1, hollow: 1 } as const;
export type Wearing = keyof typeof wearing;
export const wearingKeys = Object.keys(wearing) as Wearing[];

export interface WearPoint {
  /** Days from any one day. */
  readonly day: number;
  readonly value: number;
}

/** Those of one figure, oldest first. */
export const wearPoints = ({ wear = [] }: Wheelset, of: Wearing): WearPoint[] =>
  wear
    .flatMap(({ day, [of]: value }) => (value === undefined ? [] : [{ day, value }]))
    .sort((a, b) => a.day - b.day);

/** m a day, above nothing as it wears; undefined: fewer than two days, or it has grown back. @param way −1 where it wears by growing less */
export function wearRate(points: readonly WearPoint[], way: 1 | -1): number | undefined {
  const last = points.at(-1);
  const before = last && points.findLast((p) => p.day < last.day);
  if (!last || !before) return undefined;
  const latest = (way * (last.value - before.value)) / (last.day - before.day);
  const rate = Math.max(latest, way * slopeOf(points));
  return rate > 0 && latest >= 0 ? rate : undefined;
}

/** Of the line of least squares. */
function slopeOf(points: readonly WearPoint[]): number {
  const mean = (of: readonly number[]): number => of.reduce((sum, v) => sum + v, 0) / of.length;
  const [day, value] = [mean(points.map((p) => p.day)), mean(points.map((p) => p.value))];
  const [above, below] = points.reduce(
    ([a, b], p) => [a + (p.day - day) * (p.value - value), b + (p.day - day) ** 2],
    [0, 0],
  );
  return above / below;
}

/** Days from the last reading, rounded down; nothing where it is beyond already. */
export const daysLeft = (value: number, limit: number, rate: number, way: 1 | -1): number =>
  Math.max(0, Math.floor((way * (limit - value)) / rate + 1e-9));
