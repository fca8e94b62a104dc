/**
 * A surveyed line from GPX 1.1: distances by geodesic, heights smoothed and marked poor, waypoints as places.
 * Curves are not taken from it: a satellite track is too rough for a radius. Measure them with a string.
 */
import geodesic from 'geographiclib-geodesic';
import { FARTHEST } from '../describe.ts';
import { MOST_TOLD } from '../json.ts';
import { type FileProblem, fileProblem } from '../problem.ts';
import { decodeText, LARGEST_SURVEY } from '../text.ts';
import { type Fix, gpxPoints, type Waypoint } from './gpx-points.ts';
import type { Advice, Imported, ImportOptions } from './types.ts';

/** Fixes nearer than this to the one before are passed over, m. */
const NEAREST = 0.5;
/** Heights are smoothed by straight lines fitted over this distance either side, m. */
const WINDOW = 25;
/** A track whose ends are this near is a loop, m. */
const CLOSES = 15;
/** Heights of a line from a track: smoothed over `WINDOW`, more of them say nothing more. */
const MOST_HEIGHTS = 10_000;
/** Places of a line. */
const MOST_PLACES = 2000;
/** Share of the work that is reading; the rest is measuring and smoothing. */
const READING = 0.6;

export function importGpx(content: Uint8Array | string, file: string, options: ImportOptions): Imported {
  const decoded = decodeText(content, LARGEST_SURVEY);
  if (!decoded.ok) return { notes: [], advice: [], problems: [fileProblem(file, decoded.trouble)] };
  const problems: FileProblem[] = [];
  const { share = () => {} } = options;
  const points = gpxPoints(
    decoded.text,
    (row, column, path, found, expected) => {
      problems.push(fileProblem(file, { path: path === '' ? [] : [path], found, expected }, { row, column }));
      return problems.length < MOST_TOLD;
    },
    (done) => share(READING * done),
  );
  if (problems.length > 0) return { notes: [], advice: [], problems };
  const { fixes, places, segments, routeLeft } = points;
  const fail = (found: string, expected: string): Imported => ({
    notes: [],
    advice: [],
    problems: [fileProblem(file, { path: [], found, expected })],
  });
  if (fixes.length < 2)
    return fail(
      fixes.length === 1 ? 'one point' : 'no track or route',
      'a track or route of at least two points',
    );
  if (places.length > MOST_PLACES) return fail(`${places.length} waypoints`, `at most ${MOST_PLACES}`);
  const notes: string[] = [];
  if (segments > 1) notes.push(`${segments} track segments were joined in the order of the file.`);
  if (routeLeft) notes.push('The file has a route beside the track: the track was taken.');
  const high = fixes.filter((f) => f.height !== undefined);
  if (high.length === 0)
    return fail('a track without heights', '<ele> at the points; level the line and import it as CSV');
  if (high.length < fixes.length)
    notes.push(`${fixes.length - high.length} points without height were passed over.`);
  const chain = chained(high, notes);
  const end = chain[chain.length - 1].at;
  if (chain.length < 2) return fail('points that all lie together', 'a track that leads somewhere');
  if (end > FARTHEST)
    return fail(`a track of ${(end / 1000).toFixed(0)} km`, `at most ${FARTHEST / 1000} km`);
  if (options.shape === 'loop' && !closes(chain))
    return fail(
      `ends ${endsApart(chain).toFixed(0)} m apart`,
      `those of a loop, within ${CLOSES} m: walk on to where it began`,
    );
  return build(chain, places, options, notes);
}

export const metresBetween = (a: Pick<Fix, 'lat' | 'lon'>, b: Pick<Fix, 'lat' | 'lon'>): number =>
  geodesic.Geodesic.WGS84.Inverse(a.lat, a.lon, b.lat, b.lon).s12 as number;

interface Point {
  readonly at: number;
  readonly height: number;
  readonly fix: Fix;
}

const endsApart = (points: readonly Point[]): number =>
  metresBetween(points[0].fix, points[points.length - 1].fix);

const closes = (points: readonly Point[]): boolean => points.length > 3 && endsApart(points) < CLOSES;

function build(
  points: readonly Point[],
  places: readonly Waypoint[],
  options: ImportOptions,
  notes: string[],
): Imported {
  const mayClose = closes(points);
  const loop = mayClose && options.shape !== 'point-to-point';
  const raw = smooth(points, notes, (done) => options.share?.(READING + (1 - READING) * done));
  const end = points[points.length - 1].at;
  const misclosure = raw[raw.length - 1] - raw[0];
  notes.push(
    loop
      ? `The ends are within ${CLOSES} m: taken as a loop; ${Math.abs(misclosure).toFixed(2)} m of height misclosure spread over it.`
      : 'Taken as point-to-point.',
  );
  const heights = raw.map((h, i) => (loop ? h - (misclosure * points[i].at) / end : h));
  notes.push('Satellite heights are poor, off by metres. Curves are not in a satellite track.');
  const base = heights[0];
  const kept = spaced(points, end / MOST_HEIGHTS);
  if (kept.length < points.length)
    notes.push(
      `Of ${points.length} smoothed heights every one ${(end / MOST_HEIGHTS).toFixed(1)} m from the last was kept.`,
    );
  const line = {
    heedway: 'line',
    version: 1,
    name: options.name,
    gauge: options.gauge,
    shape: loop ? 'loop' : 'point-to-point',
    survey: 'gps',
    profile: kept.map((i) => ({ at: metres(points[i].at), height: metres(heights[i] - base) })),
    places: places.map((w) => ({ name: w.name, kind: 'board', at: metres(nearest(points, kept, w).at) })),
  };
  const shape: Advice[] = loop ? ['end to end'] : mayClose ? ['loop'] : [];
  return { line, notes, advice: [...shape, 'level', 'curves'], problems: [] };
}

function chained(fixes: readonly Fix[], notes: string[]): Point[] {
  const points: Point[] = [];
  for (const fix of fixes) {
    const last = points[points.length - 1];
    const step = last ? metresBetween(last.fix, fix) : 0;
    if (last && step < NEAREST) continue;
    points.push({ at: last ? last.at + step : 0, height: fix.height as number, fix });
  }
  if (points.length < fixes.length)
    notes.push(
      `${fixes.length - points.length} points nearer than ${NEAREST} m to the one before were passed over.`,
    );
  return points;
}

/** Indices of points at least so far apart, m; the last is among them. */
function spaced(points: readonly Point[], apart: number): number[] {
  const kept: number[] = [];
  let next = 0;
  points.forEach(({ at }, i) => {
    const last = i === points.length - 1;
    if (at < next && !last) return;
    // The end counts more than one that stands close before it.
    if (last && at < next && kept.length > 1) kept.pop();
    kept.push(i);
    next = at + apart;
  });
  return kept;
}

/** Each height from the straight line that fits the points within the window best (least squares). */
function smooth(points: readonly Point[], notes: string[], share: (done: number) => void): number[] {
  let [first, behind] = [0, 0];
  let most = 0;
  const heights = points.map((p, i) => {
    while (p.at - points[first].at > WINDOW) first++;
    while (behind < points.length && points[behind].at - p.at <= WINDOW) behind++;
    if (i % 4096 === 0) share(i / points.length);
    const height = behind - first < 3 ? p.height : fitted(points, first, behind, p.at);
    most = Math.max(most, Math.abs(height - p.height));
    return height;
  });
  notes.push(
    `Heights smoothed by straight lines over ${WINDOW} m either side; the greatest change was ${most.toFixed(2)} m.`,
  );
  return heights;
}

/** Height at a place on the line through the points from `first` to before `behind`. */
function fitted(points: readonly Point[], first: number, behind: number, at: number): number {
  const n = behind - first;
  let [x, y] = [0, 0];
  for (let i = first; i < behind; i++) {
    x += points[i].at / n;
    y += points[i].height / n;
  }
  let [up, along] = [0, 0];
  for (let i = first; i < behind; i++) {
    const from = points[i].at - x;
    up += from * (points[i].height - y);
    along += from * from;
  }
  return y + (up / along) * (at - x);
}

const metres = (m: number): string => `${Number(m.toFixed(3))} m`;

/** The kept point that lies nearest to a place. */
const nearest = (points: readonly Point[], kept: readonly number[], place: Fix): Point => {
  // As the crow flies on a map of the neighbourhood: near enough to choose by.
  const narrow = Math.cos((place.lat * Math.PI) / 180);
  let [best, least] = [points[0], Number.POSITIVE_INFINITY];
  for (const i of kept) {
    const { fix } = points[i];
    const away = Math.hypot(fix.lat - place.lat, (fix.lon - place.lon) * narrow);
    if (away < least) [best, least] = [points[i], away];
  }
  return best;
};
