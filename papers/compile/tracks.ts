/** Tracks of a line file made into the engine's: their points found on one another, their turnouts laid out, their curves joined to them. */

import { dropAbsent } from '../../engine/base/absent.ts';
import { curvesInTurnout, fromOtherEnd, missedBy } from '../../engine/things/line/branch.ts';
import { heightAt } from '../../engine/things/line/geometry.ts';
import {
  angleOfFrog,
  type Turnout,
  toFrog,
  turnoutByLead,
  turnoutByRadius,
} from '../../engine/things/line/turnout.ts';
import { alongside, type Joint, type Line, MAIN, type Track } from '../../engine/things/line/types.ts';
import { printQuantity } from '../../units/index.ts';
import type { FieldPath } from '../problem.ts';
import type { LineFile } from '../schema/index.ts';
import { compileLine, slug } from './line.ts';
import { MISCLOSURE } from './misclosure.ts';
import { type Notes, trouble } from './notes.ts';

type TrackFile = NonNullable<LineFile['tracks']>[number];
type PointsFile = TrackFile['start'];
type End = 'start' | 'end';

/** A radius by versine and one by frog and lead that differ by more were not measured at one turnout. */
const AGREES = 0.25;
/** Number and angle of one frog, likewise. */
const SAME_FROG = 0.05;
/** A track that ends farther from its last points than this, or more askew, has a figure wrong. */
const MISSED = { share: 0.1, least: 1, askew: 0.15 } as const;

const metres = (m: number): string => printQuantity(m, 'length', { system: 'metric', digits: 2 });
export const trackId = (name: string | undefined): string => (name ?? MAIN).trim().toLowerCase();

/** @param main the line without them */
export function tracksOf(file: LineFile, main: Line, notes: Notes): Track[] {
  const files = file.tracks ?? [];
  if (!named(files, notes)) return [];
  const lines = new Map<string, Line>([[MAIN, main]]);
  const tracks = new Map<string, Track>();
  // Each when the track that it leaves is laid.
  for (let left = [...files.keys()]; left.length > 0; ) {
    const now = left.filter((i) => lines.has(trackId(files[i].start.track)));
    if (now.length === 0) {
      for (const i of left)
        trouble(
          notes,
          ['tracks', i, 'start', 'track'],
          `"${files[i].start.track}", which is reached from no track that leaves the line`,
          'a way back to the line from track to track',
        );
      break;
    }
    for (const i of now) {
      const track = begun(file, i, lines, notes);
      if (!track) continue;
      lines.set(trackId(files[i].name), track.line);
      tracks.set(trackId(files[i].name), track);
    }
    left = left.filter((i) => !now.includes(i));
  }
  return files.flatMap((of, i) => {
    const track = tracks.get(trackId(of.name));
    return track ? ended(of, i, track, lines, main.gauge, notes) : [];
  });
}

/** Names by which tracks are found, and what they join; false: one of them is at fault. */
function named(files: readonly TrackFile[], notes: Notes): boolean {
  const before = notes.troubles.length;
  const names = files.map(({ name }) => trackId(name));
  files.forEach(({ name, start, end }, i) => {
    const path = (...rest: string[]): FieldPath => ['tracks', i, ...rest];
    if (names[i] === MAIN || names.indexOf(names[i]) < i)
      trouble(
        notes,
        path('name'),
        `"${name}"`,
        'a name of its own, and not "main", which is the line itself',
      );
    for (const [key, points] of [
      ['start', start],
      ['end', end],
    ] as const) {
      if (points === undefined) continue;
      const joins = trackId(points.track);
      if (joins === names[i])
        trouble(notes, path(key, 'track'), `"${name}" itself`, 'another track: none joins itself');
      else if (joins !== MAIN && !names.includes(joins))
        trouble(
          notes,
          path(key, 'track'),
          `"${points.track}", which is no track here`,
          `nothing (the line itself) or one of: ${files.map((t) => t.name).join(', ')}`,
        );
    }
  });
  return notes.troubles.length === before;
}

/** Its own alignment, from its first points on. */
function begun(file: LineFile, i: number, lines: ReadonlyMap<string, Line>, notes: Notes): Track | undefined {
  const of = (file.tracks ?? [])[i];
  const { length, profile, curves = [], speedLimits = [], name } = of;
  const { places: _p, sights: _s, flangeways: _f, structures: _st, sidings: _si, tracks: _t, ...rest } = file;
  const { railStretches: _r, ...shared } = rest;
  const beside = dropAbsent(Object.fromEntries(alongside.map((key) => [key, of[key]])));
  const level = [
    { at: 0, height: 0 },
    { at: length, height: 0 },
  ];
  // What it assumes the line has told already.
  const own: Notes = { assumptions: [], troubles: [] };
  const line = compileLine(
    { ...shared, ...beside, shape: 'point-to-point', profile: profile ?? level, curves, speedLimits },
    own,
  );
  for (const { path, ...said } of own.troubles)
    notes.troubles.push({ path: ['tracks', i, ...path], ...said });
  if (own.troubles.length > 0) return undefined;
  if (Math.abs(line.length - length) > 0.01) {
    trouble(
      notes,
      ['tracks', i, 'profile'],
      `heights up to ${metres(line.length)}`,
      `up to its length, ${metres(length)}`,
    );
    return undefined;
  }
  const parent = lines.get(trackId(of.start.track)) as Line;
  const start = jointOf(of.start, ['tracks', i, 'start'], parent, file.gauge, notes);
  if (!start || !roomFor(start.turnout, 'start', of, i, notes)) return undefined;
  return {
    id: trackId(name),
    name,
    line: {
      ...withIdsOf(line, slug(name)),
      name,
      ...unstatedOf(of, file),
      curves: [...curvesInTurnout(parent, start), ...line.curves],
      heights: raised(line.heights, heightAt(parent, start.at) - line.heights[0].height),
    },
    levelled: profile !== undefined,
    start,
  };
}

/** What stands along one of several tracks is called by that track too. */
const withIdsOf = (line: Line, of: string): Line => {
  const called = <T extends { readonly id: string }>(list: readonly T[]): T[] =>
    list.map((item) => ({ ...item, id: `${of}-${item.id}` }));
  const { places, structures, flangeways } = line;
  return {
    ...line,
    places: called(places),
    ...(structures ? { structures: called(structures) } : {}),
    ...(flangeways ? { flangeways: called(flangeways) } : {}),
  };
};

/** What is told of the line and not of this track, nor that there is none of it. */
function unstatedOf(of: TrackFile, file: LineFile): Pick<Line, 'unstated'> {
  const lacking = alongside.filter((key) => of[key] === undefined && (file[key]?.length ?? 0) > 0);
  if (lacking.length === 0) return {};
  return { unstated: lacking.map((lacks) => ({ from: 0, to: of.length, track: of.name, lacks })) };
}

/** With its last points, if it has any. */
function ended(
  of: TrackFile,
  i: number,
  track: Track,
  lines: ReadonlyMap<string, Line>,
  gauge: number,
  notes: Notes,
): Track[] {
  if (!of.end) return [track];
  const parent = lines.get(trackId(of.end.track));
  const end = parent && jointOf(of.end, ['tracks', i, 'end'], parent, gauge, notes);
  if (!parent || !end || !roomFor(end.turnout, 'end', of, i, notes)) return [];
  const { length } = track.line;
  const last = fromOtherEnd(curvesInTurnout(parent, end), length);
  const heights = metAt(of.name, heightAt(parent, end.at), track, i, notes);
  const whole = { ...track, end, line: { ...track.line, curves: [...track.line.curves, ...last], heights } };
  const missed = track.start.turnout && end.turnout && missedBy(parent, whole);
  if (
    missed &&
    (missed.away > Math.max(MISSED.least, MISSED.share * length) || missed.askew > MISSED.askew)
  ) {
    trouble(
      notes,
      ['tracks', i, 'end'],
      `as written ${of.name} ends ${metres(missed.away)} from its last points, ${((missed.askew * 180) / Math.PI).toFixed(0)}° askew`,
      'hands of the points as seen from their tips, curves and length that lead there',
    );
    return [];
  }
  return [whole];
}

const raised = (heights: Line['heights'], by: number): Line['heights'] =>
  heights.map(({ at, height }) => ({ at, height: height + by }));

/** Heights that end at those of the track that it comes in to: a small misclosure is spread, a large one is a fault. */
function metAt(
  name: string,
  height: number,
  { line, levelled }: Track,
  i: number,
  notes: Notes,
): Line['heights'] {
  const gap = height - line.heights[line.heights.length - 1].height;
  if (levelled && Math.abs(gap) > MISCLOSURE * Math.sqrt(line.length))
    trouble(
      notes,
      ['tracks', i, 'profile'],
      `${name} ending ${metres(Math.abs(gap))} ${gap > 0 ? 'below' : 'above'} the track that it comes in to`,
      'the same height: level again',
    );
  return line.heights.map((k) => ({ at: k.at, height: k.height + (gap * k.at) / line.length }));
}

/** Two turnouts and the curves between have room on the track. */
function roomFor(turnout: Turnout | undefined, end: End, of: TrackFile, i: number, notes: Notes): boolean {
  if (!turnout) return true;
  const long = toFrog(turnout);
  if (long > of.length) {
    trouble(
      notes,
      ['tracks', i, 'length'],
      metres(of.length),
      `more than ${metres(long)}, where its frog is`,
    );
    return false;
  }
  const within = (of.curves ?? []).findIndex(({ from, to }) =>
    end === 'start' ? from < long - 1e-6 : to > of.length - long + 1e-6,
  );
  if (within < 0) return true;
  const curve = (of.curves ?? [])[within];
  const key = end === 'start' ? 'from' : 'to';
  trouble(
    notes,
    ['tracks', i, 'curves', within, key],
    metres(curve[key]),
    end === 'start'
      ? `at least ${metres(long)}, where its first frog is: the curve in the turnout follows from frog and lead`
      : `at most ${metres(of.length - long)}, where its last frog is: the curve in the turnout follows from frog and lead`,
  );
  return false;
}

function jointOf(
  { track, at, hand, points, frogNumber, frogAngle, lead, radius }: PointsFile,
  path: FieldPath,
  parent: Line,
  gauge: number,
  notes: Notes,
): Joint | undefined {
  const wrong = (key: string, found: string, expected: string): undefined => {
    trouble(notes, [...path, key], found, expected);
    return undefined;
  };
  if (at > parent.length + 1e-6)
    return wrong('at', metres(at), `at most ${metres(parent.length)}, where that track ends`);
  const joint = { track: trackId(track), at, hand, facing: points === 'facing' };
  const byNumber = frogNumber === undefined ? undefined : angleOfFrog(frogNumber);
  const angle = frogAngle ?? byNumber;
  if (angle === undefined) return { ...joint, lacks: 'frogNumber' };
  if (byNumber !== undefined && Math.abs(byNumber / angle - 1) > SAME_FROG)
    return wrong(
      'frogAngle',
      `${((angle * 180) / Math.PI).toFixed(1)}°`,
      `${((byNumber * 180) / Math.PI).toFixed(1)}°, as its number has it`,
    );
  const number = 0.5 / Math.tan(angle / 2);
  if (lead === undefined && radius === undefined) return { ...joint, lacks: 'lead' };
  if (lead === undefined) {
    const turnout = turnoutByRadius(gauge, angle, radius as number);
    return turnout
      ? { ...joint, turnout }
      : wrong(
          'radius',
          metres(radius as number),
          `at most ${metres(2 * gauge * number ** 2)}, which comes round to this frog`,
        );
  }
  const turnout = turnoutByLead(gauge, angle, lead);
  if (!turnout)
    return wrong('lead', metres(lead), `more than ${metres(gauge * number)}: gauge times number of the frog`);
  if (!parent.loop && (joint.facing ? at + lead > parent.length : at - lead < 0))
    return wrong('at', metres(at), 'points whose frog lies on that track too');
  if (radius !== undefined && Math.abs(radius / turnout.radius - 1) > AGREES)
    return wrong(
      'radius',
      metres(radius),
      `near ${metres(turnout.radius)}, as frog and lead have it: measure all three again`,
    );
  return { ...joint, turnout, ...(radius === undefined ? {} : { held: radius }) };
}
