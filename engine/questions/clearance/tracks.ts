/** The tracks of a line: what stands clear on each while another train passes, and what is to be known before that can be told. */
import { amount } from '../../base/quantity.ts';
import type { OutingContext } from '../../outing/open.ts';
import { type Joint, type Line, MAIN, type Track } from '../../things/line/types.ts';
import type { Finding } from '../finding.ts';
import { makeFinding, marginOf } from '../make.ts';
import type { Least } from './beside.ts';
import { type Body, bodiesOf } from './bodies.ts';
import { type RoadLaid, roadsOf, type Untold } from './roads.ts';
import { betweenTrains } from './sidings.ts';

/** A road as one train finds it. */
export interface Road extends Omit<RoadLaid, 'leastOf'> {
  /** Least room to what passes where it stands farthest from its marks; null: it does not fit. */
  readonly least: Least | null;
}

export interface TracksLook {
  readonly roads: readonly Road[];
  readonly untold: readonly Untold[];
  /** Vehicles of either train that were not measured: without them nothing is told. */
  readonly without: readonly string[];
  /** Wanted between two trains, m, and who says so. */
  readonly margin: { readonly value: number; readonly source: string };
}

const SOURCE = 'both trains as measured, placed on the two tracks as laid out: common engineering geometry';

/** The line whose tracks these are: as written, whichever way and over whatever route it is run. */
export const wholeLine = ({ outing }: OutingContext): Line => outing.whole ?? outing.line;

const unmeasuredOf = ({ loaded }: OutingContext): string[] =>
  loaded.vehicles.filter((v) => !v.vehicle.envelope).map((v) => v.vehicle.name);

/** @param passing the train that passes meanwhile; another of this kind, if nothing is said */
export function lookAtTracks(context: OutingContext, passing: OutingContext = context): TracksLook {
  const margin = betweenTrains(context.outing);
  const line = wholeLine(context);
  const without = [...new Set([...unmeasuredOf(context), ...unmeasuredOf(passing)])];
  const { tracks = [] } = line;
  const [standing, moving] = [bodiesOf(context), bodiesOf(passing)];
  if (tracks.length === 0 || without.length > 0) return { roads: [], untold: [], without, margin };
  const found = tracks.map((track) => kept({ line, standing, passing: moving, margin: margin.value }, track));
  return {
    roads: found
      .flatMap((f) => (isTold(f) ? f : []))
      .map(({ leastOf, ...road }) => ({ ...road, least: leastOf(context.loaded.length) })),
    untold: found.flatMap((f) => (isTold(f) ? [] : [f])),
    without,
    margin,
  };
}

type Found = readonly RoadLaid[] | Untold;
const isTold = (found: Found): found is readonly RoadLaid[] => Array.isArray(found);

/** Of one line the same trains are asked again and again. */
const memory = new WeakMap<Line, Map<string, Found>>();

function kept(asked: Parameters<typeof roadsOf>[0], track: Track): Found {
  const known = memory.get(asked.line) ?? new Map<string, Found>();
  memory.set(asked.line, known);
  const key = JSON.stringify([track.id, asked.margin, kindsIn(asked.standing), kindsIn(asked.passing)]);
  const found = known.get(key) ?? roadsOf(asked, track);
  known.set(key, found);
  return found;
}

/** Cars alike, however many, make the same of it. */
const kindsIn = (bodies: readonly Body[]): unknown[] => {
  const kinds = new Map(
    [...bodies]
      .reverse()
      .map(({ shape, play, underside, top, of, roll, fastest }) => [
        JSON.stringify([shape, play.high, underside, top, ...(roll ? [roll.kind, fastest] : [])]),
        of.vehicle.name,
      ]),
  );
  return [...kinds].sort(([a], [b]) => (a < b ? -1 : 1));
};

/**
 * What of this train and another of its kind: where it does not stand clear, where two do not pass, where people touch. Notes,
 * that no word of an answer hangs on: found where somebody looks at tracks, so that no answer waits for them.
 */
export function trackFindings(context: OutingContext): Finding[] {
  const { tracks = [] } = wholeLine(context);
  if (tracks.length === 0) return [];
  const look = lookAtTracks(context);
  const where = (track: Track) => ({ place: track.name, ...chainagesOf(context, track) });
  const none = { vehicles: '' };
  if (look.without.length > 0)
    return [
      makeFinding('track-not-measured', 'notes', 'fit', {
        where: where(tracks[0]),
        facts: { track: tracks[0].name, lacks: 'width', vehicles: look.without.join(', ') },
        measure: 'vehicle.envelope',
        source: SOURCE,
      }),
    ];
  return [
    ...look.untold.map(({ track, lacks }) =>
      makeFinding('track-not-measured', 'notes', 'fit', {
        where: where(track),
        facts: { track: track.name, lacks: lacks ?? 'curve', ...none },
        ...(lacks === undefined ? {} : { measure: measureOf(track, lacks) }),
        source: SOURCE,
      }),
    ),
    ...look.roads.flatMap((road) => ofRoad(context, road, look, where(road.track))),
  ];
}

function measureOf({ start }: Track, lacks: NonNullable<Joint['lacks']>): string {
  if (start.lacks === undefined)
    return lacks === 'lead' ? 'line.tracks.end.lead' : 'line.tracks.end.frogNumber';
  return lacks === 'lead' ? 'line.tracks.start.lead' : 'line.tracks.start.frogNumber';
}

function ofRoad(
  { loaded, outing }: OutingContext,
  { track, stands, clear, least, pinch }: Road,
  { margin }: TracksLook,
  where: Finding['where'],
): Finding[] {
  const usable = clear ? clear.to - clear.from : 0;
  const short =
    stands === 'in' && usable < loaded.length
      ? [
          makeFinding('siding-too-short', 'notes', 'fit', {
            where,
            found: amount(loaded.length, 'length'),
            required: amount(usable, 'length'),
            margin: marginOf(loaded.length, usable),
            facts: { siding: track.name, length: amount(usable, 'length') },
            source: SOURCE,
          }),
        ]
      : [];
  const tight =
    pinch && stands === 'in'
      ? [
          makeFinding('trains-do-not-pass', 'notes', 'fit', {
            where,
            found: amount(pinch.room, 'length'),
            required: amount(margin.value, 'length'),
            facts: {
              track: track.name,
              along: amount(pinch.at, 'length'),
              stands: pinch.stands,
              passes: pinch.passes,
            },
            source: margin.source,
          }),
        ]
      : [];
  const ridden = loaded.vehicles.some((v) => v.riders.length > 0);
  const near =
    least && stands === 'in' && ridden && least.room < outing.assumed.person.arm.high
      ? [
          makeFinding('reach-between-trains', 'notes', 'fit', {
            where,
            found: amount(least.room, 'length'),
            facts: { track: track.name },
            source: 'common practice, no source',
          }),
        ]
      : [];
  return [...short, ...tight, ...near];
}

/** In the running direction, where its points lie on the line itself. */
function chainagesOf({ outing, line }: OutingContext, { start, end }: Track): { from?: number; to?: number } {
  // Along a route the line's own distances say nothing.
  if (start.track !== MAIN || outing.whole) return {};
  const turn = (s: number): number => (outing.direction === 'reverse' ? line.length - s : s);
  const ends = [start, ...(end?.track === MAIN ? [end] : [])].map(({ at }) => turn(at));
  return { from: Math.min(...ends), to: Math.max(...ends) };
}
