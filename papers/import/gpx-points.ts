/** The points and waypoints of a GPX 1.1 file, read in one pass; every fault with its row. */
import sax from 'sax';
import { show } from '../problem.ts';

export interface Fix {
  readonly lat: number;
  readonly lon: number;
  readonly height: number | undefined;
  /** s of the day's clock; absent: the file says none, or none that can be read. */
  readonly time?: number;
}

export interface Waypoint extends Fix {
  readonly name: string;
}

export interface GpxPoints {
  readonly fixes: readonly Fix[];
  readonly places: readonly Waypoint[];
  /** Track segments, or routes where there is no track. */
  readonly segments: number;
  /** There is a route beside the track. */
  readonly routeLeft: boolean;
}

/** Reports a fault at the row and column that are being read; false: enough of them, stop. */
export type ReportAt = (
  row: number,
  column: number,
  path: string,
  found: string,
  expected: string,
) => boolean;

/** Nothing on earth is higher or deeper, m. */
const HIGHEST = 10_000;
const CHUNK = 1 << 16;
const DEEPEST = 64;
const MOST_ATTRIBUTES = 64;
/** A day of riding at a point a second has a third of it. */
const MOST_POINTS = 250_000;

class Enough extends Error {}

const figure = (text: string | undefined, most: number): number | undefined => {
  const value = /^\s*[+-]?(\d+\.?\d*|\.\d+)\s*$/.test(text ?? '') ? Number(text) : Number.NaN;
  return Math.abs(value) <= most ? value : undefined;
};

/** @param share hears how much of the text is read, 0 to 1 */
export function gpxPoints(text: string, report: ReportAt, share: (done: number) => void): GpxPoints {
  const parser = sax.parser(true, { position: true });
  const path: string[] = [];
  const tracks: Fix[] = [];
  const routes: Fix[] = [];
  const places: Waypoint[] = [];
  let [segments, routeCount] = [0, 0];
  let point:
    | { lat: number; lon: number; height?: number | undefined; time?: number; name: string }
    | undefined;
  let words = '';
  let attributeCount = 0;

  const fault = (field: string, found: string, expected: string): void => {
    const more = report(parser.line + 1, parser.column + 1, field, found, expected);
    // Of what is no GPX at all, or too much of it, one fault says enough.
    if (!more || field === '') throw new Enough();
  };
  const degrees = (name: 'lat' | 'lon', most: number, given: string | undefined): number => {
    const value = figure(given, most);
    if (value === undefined) fault(name, show(given), `degrees from -${most} to ${most}`);
    return value ?? 0;
  };
  parser.onopentag = ({ name, attributes }) => {
    if (path.length === 0 && name !== 'gpx') fault('', `<${name}>`, '<gpx> as the outermost element');
    path.push(name);
    if (path.length > DEEPEST) fault('', 'elements nested too deeply', `at most ${DEEPEST} levels`);
    words = '';
    attributeCount = 0;
    if (name === 'trkseg') segments++;
    if (name === 'rte') routeCount++;
    if (!['trkpt', 'rtept', 'wpt'].includes(name)) return;
    const { lat, lon } = attributes as Readonly<Record<string, string | undefined>>;
    point = { lat: degrees('lat', 90, lat), lon: degrees('lon', 180, lon), name: 'place' };
  };
  parser.onattribute = () => {
    if (++attributeCount > MOST_ATTRIBUTES)
      fault('', `more than ${MOST_ATTRIBUTES} attributes`, 'those of GPX 1.1');
  };
  parser.ontext = (more) => {
    words += more;
  };
  parser.oncdata = parser.ontext;
  parser.onclosetag = (name) => {
    path.pop();
    const of = path[path.length - 1];
    if (point && ['trkpt', 'rtept', 'wpt'].includes(of)) {
      if (name === 'ele') {
        point.height = figure(words, HIGHEST);
        if (point.height === undefined) fault('ele', show(words), `metres from -${HIGHEST} to ${HIGHEST}`);
      }
      if (name === 'time') {
        const time = Date.parse(words.trim());
        if (Number.isFinite(time)) point.time = time / 1000;
      }
      if (name === 'name') point.name = words.replace(/\s+/g, ' ').trim().slice(0, 200) || 'place';
    }
    if (!point || !['trkpt', 'rtept', 'wpt'].includes(name)) return;
    const { lat, lon, height, time } = point;
    if (name === 'wpt') places.push({ lat, lon, height, name: point.name });
    else
      (name === 'trkpt' ? tracks : routes).push({
        lat,
        lon,
        height,
        ...(time === undefined ? {} : { time }),
      });
    point = undefined;
    if (tracks.length + routes.length + places.length > MOST_POINTS)
      fault('', `more than ${MOST_POINTS} points`, 'fewer: record less often, or ride one round');
  };
  parser.ondoctype = () => fault('', 'a document type', 'GPX 1.1, which has none');
  parser.onerror = (error) => {
    fault('', error.message.split('\n')[0], 'well-formed XML of GPX 1.1');
  };
  try {
    for (let at = 0; at < text.length; at += CHUNK) {
      parser.write(text.slice(at, at + CHUNK));
      share(at / text.length);
    }
    parser.close();
  } catch (error) {
    if (!(error instanceof Enough)) throw error;
  }
  const track = tracks.length > 0;
  return {
    fixes: track ? tracks : routes,
    places,
    segments: track ? segments : routeCount,
    routeLeft: track && routes.length > 0,
  };
}
