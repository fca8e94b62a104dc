/**
 * A surveyed line from GPX 1.1: distances by geodesic, heights smoothed and marked poor, waypoints as places.
 * Curves are not taken from it: a satellite track is too rough for a radius. Measure them with a string.
 */
import { gpx } from '@tmcw/togeojson';
import geodesic from 'geographiclib-geodesic';
import { linearRegression, linearRegressionLine } from 'simple-statistics';
import { type FileProblem, fileProblem } from '../problem.ts';
import { decodeText } from '../text.ts';
import type { Imported, ImportOptions } from './types.ts';

/** Text of XML to a document; undefined with a reason where it is not well formed. */
export type ParseXml = (text: string) => { readonly document?: Document; readonly fault?: string };

interface Fix {
  readonly lat: number;
  readonly lon: number;
  readonly height: number | undefined;
}

/** Fixes nearer than this to the one before are passed over, m. */
const NEAREST = 0.5;
/** Heights are smoothed by straight lines fitted over this distance either side, m. */
const WINDOW = 25;
/** A track whose ends are this near is a loop, m. */
const CLOSES = 15;

export function importGpx(
  content: Uint8Array | string,
  file: string,
  options: ImportOptions,
  parseXml: ParseXml,
): Imported {
  const decoded = decodeText(content);
  if (!decoded.ok) return { notes: [], problems: [fileProblem(file, decoded.trouble)] };
  const fail = (found: string, expected: string): Imported => ({
    notes: [],
    problems: [fileProblem(file, { path: [], found, expected })],
  });
  const { document, fault } = parseXml(decoded.text);
  if (!document || fault) return fail(fault ?? 'no XML', 'well-formed XML of GPX 1.1');
  if (document.documentElement?.nodeName !== 'gpx')
    return fail(`<${document.documentElement?.nodeName}>`, '<gpx> as the outermost element');
  const notes: string[] = [];
  const { fixes, places } = fixesOf(document, notes);
  if (fixes.length < 2)
    return fail(
      fixes.length === 1 ? 'one point' : 'no track or route',
      'a track or route of at least two points',
    );
  const missing = fixes.filter((f) => f.height === undefined).length;
  if (missing === fixes.length)
    return fail('a track without heights', '<ele> at the points; level the line and import it as CSV');
  if (missing > 0) notes.push(`${missing} points without height were passed over.`);
  return build(
    fixes.filter((f) => f.height !== undefined),
    places,
    options,
    notes,
  );
}

interface Waypoint extends Fix {
  readonly name: string;
}

function fixesOf(document: Document, notes: string[]): { fixes: Fix[]; places: Waypoint[] } {
  const fixes: Fix[] = [];
  const places: Waypoint[] = [];
  let segments = 0;
  const fixOf = ([lon, lat, height]: number[]): Fix => ({ lat, lon, height });
  for (const feature of gpx(document).features) {
    const { geometry, properties } = feature;
    if (geometry?.type === 'LineString') {
      segments++;
      fixes.push(...geometry.coordinates.map(fixOf));
    } else if (geometry?.type === 'MultiLineString') {
      segments += geometry.coordinates.length;
      fixes.push(...geometry.coordinates.flat().map(fixOf));
    } else if (geometry?.type === 'Point')
      places.push({ ...fixOf(geometry.coordinates), name: String(properties?.['name'] ?? 'place') });
  }
  if (segments > 1) notes.push(`${segments} track segments were joined in the order of the file.`);
  return { fixes, places };
}

const metresBetween = (a: Fix, b: Fix): number =>
  geodesic.Geodesic.WGS84.Inverse(a.lat, a.lon, b.lat, b.lon).s12 as number;

interface Point {
  readonly at: number;
  readonly height: number;
  readonly fix: Fix;
}

function build(
  fixes: readonly Fix[],
  places: readonly Waypoint[],
  options: ImportOptions,
  notes: string[],
): Imported {
  const points = chained(fixes, notes);
  const problems: FileProblem[] = [];
  const loop = points.length > 3 && metresBetween(points[0].fix, points[points.length - 1].fix) < CLOSES;
  const raw = smooth(points, notes);
  const end = points[points.length - 1].at;
  const misclosure = raw[raw.length - 1] - raw[0];
  if (loop)
    notes.push(
      `The ends are within ${CLOSES} m: taken as a loop; ${Math.abs(misclosure).toFixed(2)} m of height misclosure spread over it.`,
    );
  const heights = raw.map((h, i) => (loop ? h - (misclosure * points[i].at) / end : h));
  notes.push(
    'Satellite heights are poor, off by metres: level at least the steepest place before relying on any stop.',
  );
  notes.push('Curves are not in a satellite track: measure chord and mid-ordinate, and add them.');
  const base = heights[0];
  const line = {
    heedway: 'line',
    version: 1,
    name: options.name,
    gauge: options.gauge,
    shape: loop ? 'loop' : 'point-to-point',
    survey: 'gps',
    profile: points.map((p, i) => ({ at: metres(p.at), height: metres(heights[i] - base) })),
    places: places.map((w) => ({ name: w.name, kind: 'board', at: metres(nearest(points, w).at) })),
  };
  return { line, notes, problems };
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

/** Each height from a straight line fitted to the points within the window. */
function smooth(points: readonly Point[], notes: string[]): number[] {
  const heights = points.map((p) => {
    const near = points.filter((q) => Math.abs(q.at - p.at) <= WINDOW).map((q) => [q.at, q.height]);
    return near.length < 3 ? p.height : linearRegressionLine(linearRegression(near))(p.at);
  });
  const most = heights.reduce((worst, h, i) => Math.max(worst, Math.abs(h - points[i].height)), 0);
  notes.push(
    `Heights smoothed by straight lines over ${WINDOW} m either side; the greatest change was ${most.toFixed(2)} m.`,
  );
  return heights;
}

const metres = (m: number): string => `${Number(m.toFixed(3))} m`;

const nearest = (points: readonly Point[], place: Fix): Point =>
  points.reduce((best, p) => (metresBetween(p.fix, place) < metresBetween(best.fix, place) ? p : best));
