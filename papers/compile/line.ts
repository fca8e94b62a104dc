/** A line file made into the engine's line: heights by chainage, curves with transitions, cant ramps. */

import { defaultRow } from '../../data/index.ts';
import type { CantKnot, CurveElement, HeightKnot, Line, Place } from '../../engine/things/line/types.ts';
import { printQuantity } from '../../units/index.ts';
import type { FieldPath } from '../problem.ts';
import type { LineFile } from '../schema/index.ts';
import { type Banked, layCants } from './cants.ts';
import { MISCLOSURE } from './misclosure.ts';
import { bySmallRule, type Notes, note, trouble } from './notes.ts';

/** Steeper than this is taken for an error of the file. */
const STEEPEST = 0.4;

const metres = (m: number): string => printQuantity(m, 'length', { system: 'metric', digits: 2 });

/** Without its tracks: compile/tracks.ts joins them to it. */
export function compileLine(file: LineFile, notes: Notes): Line {
  const heights = heightsOf(file, notes);
  const length = heights[heights.length - 1]?.at ?? 0;
  const curves = curvesOf(file, length, notes);
  checkWithin(file, length, notes);
  return {
    name: file.name,
    gauge: file.gauge,
    contactWidth: file.contactWidth ?? assumedContact(file, notes),
    loop: file.shape === 'loop',
    length,
    heights: file.shape === 'loop' ? closed(heights, length, file, notes) : heights,
    heightQuality: file.survey ?? 'stated',
    curves: curves.elements,
    cants: curves.cants,
    places: (file.places ?? []).map(placeOf).sort((a, b) => a.at - b.at),
    speedLimits: file.speedLimits ?? [],
    sights: (file.sights ?? []).map((s) => ({ ...s, direction: s.direction ?? 'both' })),
    ...(file.flangeways ? { flangeways: flangewaysOf(file, length, notes) } : {}),
    ...(file.structures ? { structures: structuresOf(file, length, notes) } : {}),
    ...(file.sidings ? { sidings: sidingsOf(file, length, notes) } : {}),
    ...(file.twist === undefined ? {} : { twist: file.twist }),
    ...(file.curveConstant ? { curveConstant: file.curveConstant } : {}),
    ...(file.railStretches ? { railStretches: file.railStretches } : {}),
  };
}

function assumedContact(file: LineFile, notes: Notes): number {
  note(notes, 'contact-width/extra', 'distance between wheel contact points', file.name);
  return file.gauge + defaultRow('contact-width/extra').value;
}

/** Points by chainage or by lengths; heights given or built up from grades. */
function heightsOf(file: LineFile, notes: Notes): HeightKnot[] {
  const knots: HeightKnot[] = [];
  file.profile.forEach((point, i) => {
    const previous = knots[knots.length - 1];
    const at =
      point.at ??
      (i === 0 ? 0 : point.length === undefined || !previous ? undefined : previous.at + point.length);
    if (at === undefined)
      return trouble(notes, ['profile', i], 'no chainage', '"at", or "length" from the point before');
    if (i === 0 && at !== 0) return trouble(notes, ['profile', 0, 'at'], metres(at), 'the first point at 0');
    if (previous && at <= previous.at) {
      return trouble(
        notes,
        ['profile', i, 'at'],
        metres(at),
        `more than ${metres(previous.at)}, the point before`,
      );
    }
    const height = point.height ?? (i === 0 ? 0 : byGrade(previous, at, point.grade));
    if (height === undefined)
      return trouble(
        notes,
        ['profile', i],
        'neither height nor grade',
        '"height", or "grade" from the point before',
      );
    const grade = previous ? (height - previous.height) / (at - previous.at) : 0;
    if (Math.abs(grade) >= STEEPEST) {
      trouble(
        notes,
        ['profile', i],
        `a grade of ${(grade * 100).toFixed(0)} %`,
        `less than ${STEEPEST * 100} %: check heights and units`,
      );
    }
    knots.push({ at, height });
  });
  if (knots.length < 2 && notes.troubles.length === 0)
    trouble(notes, ['profile'], 'one point', 'at least two points');
  return knots;
}

const byGrade = (
  previous: HeightKnot | undefined,
  at: number,
  grade: number | undefined,
): number | undefined =>
  previous && grade !== undefined ? previous.height + grade * (at - previous.at) : undefined;

/** A small misclosure is spread evenly over the loop; a large one is a fault of the survey. */
function closed(heights: readonly HeightKnot[], length: number, file: LineFile, notes: Notes): HeightKnot[] {
  if (heights.length < 2) return [...heights];
  const gap = heights[heights.length - 1].height - heights[0].height;
  if (Math.abs(gap) > MISCLOSURE * Math.sqrt(length)) {
    trouble(
      notes,
      ['profile'],
      `a loop whose end is ${metres(Math.abs(gap))} ${gap > 0 ? 'above' : 'below'} its start`,
      'the same height: survey again',
    );
    return [...heights];
  }
  if (Math.abs(gap) > 1e-9) {
    notes.assumptions.push({
      of: `misclosure of ${metres(Math.abs(gap))} spread over the loop`,
      where: file.name,
      key: 'profile',
      source: 'survey practice, no source',
    });
  }
  return heights.map((k) => ({ at: k.at, height: k.height - (gap * k.at) / length }));
}

function curvesOf(
  file: LineFile,
  length: number,
  notes: Notes,
): { elements: CurveElement[]; cants: CantKnot[] } {
  const elements: CurveElement[] = [];
  const banked: Banked[] = [];
  const sorted = (file.curves ?? [])
    .map((curve, i) => ({ curve, i }))
    .sort((a, b) => a.curve.from - b.curve.from);
  let end = 0;
  for (const { curve, i } of sorted) {
    const run = curve.to - curve.from;
    const [into, out] = [curve.transitionIn ?? 0, curve.transitionOut ?? 0];
    if (run <= 0)
      trouble(
        notes,
        ['curves', i, 'to'],
        metres(curve.to),
        `more than ${metres(curve.from)} (cut a curve that crosses the loop's origin in two)`,
      );
    else if (into + out > run + 1e-9)
      trouble(notes, ['curves', i], 'transitions longer than the curve', `together at most ${metres(run)}`);
    else if (curve.from < end - 1e-9)
      trouble(
        notes,
        ['curves', i, 'from'],
        metres(curve.from),
        `at least ${metres(end)}, where the curve before ends`,
      );
    else {
      elements.push(...elementsOf(curve, into, out));
      // The outer rail is raised: the right one in a left curve.
      if (curve.cant) {
        const cant = (curve.hand === 'left' ? 1 : -1) * curve.cant;
        banked.push({ from: curve.from, to: curve.to, into, out, cant });
      }
    }
    end = Math.max(end, curve.to);
  }
  return { elements, cants: layCants(banked, length, file.shape === 'loop') };
}

type Curve = NonNullable<LineFile['curves']>[number];

function elementsOf(curve: Curve, into: number, out: number): CurveElement[] {
  const k = (curve.hand === 'left' ? 1 : -1) / curve.radius;
  const gaugeWidening = curve.gaugeWidening ?? 0;
  const parts: [number, number, number, number][] = [
    [curve.from, curve.from + into, 0, k],
    [curve.from + into, curve.to - out, k, k],
    [curve.to - out, curve.to, k, 0],
  ];
  return parts
    .filter(([from, to]) => to - from > 1e-9)
    .map(([from, to, startCurvature, endCurvature]) => ({
      from,
      to,
      startCurvature,
      endCurvature,
      gaugeWidening,
    }));
}

function placeOf(place: NonNullable<LineFile['places']>[number]): Place {
  const { note: _note, stop, ...rest } = place;
  return { ...rest, id: slug(place.name), stop: stop ?? false };
}

/** The guarding faces lie nearer together than check and gauge, or one of them was read elsewhere. */
function flangewaysOf(file: LineFile, length: number, notes: Notes): NonNullable<Line['flangeways']> {
  const small = (m: number): string => `${(m * 1000).toFixed(2)} mm`;
  return (file.flangeways ?? [])
    .map(({ frogFlangeway, guardFlangeway, ...rest }, i) => {
      const { at, gauge = file.gauge, guardCheck, guardFace } = rest;
      const wrong = (field: string, found: number, most: number, of: string): void =>
        trouble(notes, ['flangeways', i, field], small(found), `less than ${of}, ${small(most)}`);
      if (at > length + 1e-6)
        trouble(
          notes,
          ['flangeways', i, 'at'],
          metres(at),
          `at most ${metres(length)}, where the profile ends`,
        );
      if (guardCheck !== undefined && guardCheck >= gauge)
        wrong('guardCheck', guardCheck, gauge, 'the gauge there');
      if (guardFace !== undefined && guardFace >= (guardCheck ?? gauge))
        wrong(
          'guardFace',
          guardFace,
          guardCheck ?? gauge,
          guardCheck === undefined ? 'the gauge there' : 'the guard check',
        );
      return {
        ...rest,
        id: `${slug(rest.name)}-${i + 1}`,
        ...(frogFlangeway === undefined ? {} : { frog: frogFlangeway }),
        ...(guardFlangeway === undefined ? {} : { guard: guardFlangeway }),
      };
    })
    .sort((a, b) => a.at - b.at);
}

/** Spacings in their order along the line; of a siding over a loop's origin nothing can be said, it is two. */
function sidingsOf(file: LineFile, length: number, notes: Notes): NonNullable<Line['sidings']> {
  return (file.sidings ?? []).map((siding, i) => {
    siding.spacings.forEach(({ at }, k) => {
      const before = siding.spacings[k - 1];
      const path = ['sidings', i, 'spacings', k, 'at'];
      if (at > length + 1e-6)
        trouble(notes, path, metres(at), `at most ${metres(length)}, where the profile ends`);
      if (before && at <= before.at)
        trouble(notes, path, metres(at), `more than ${metres(before.at)}, the spacing before`);
    });
    return { ...siding, id: `${slug(siding.name)}-${i + 1}` };
  });
}

/** Nothing solid stands between the rails, or nowhere. */
function structuresOf(file: LineFile, length: number, notes: Notes): NonNullable<Line['structures']> {
  const wrong = (i: number, field: string, found: string, expected: string): void =>
    trouble(notes, ['structures', i, field], found, expected);
  return (file.structures ?? [])
    .map(({ note: _note, at, to = at, side = 'both', bottom = 0, ...rest }, i) => {
      const { distance, top, headroom, name } = rest;
      const end = `at most ${metres(length)}, where the profile ends`;
      if (at > length + 1e-6) wrong(i, 'at', metres(at), end);
      if (to > length + 1e-6) wrong(i, 'to', metres(to), end);
      if (file.shape !== 'loop' && to < at)
        wrong(i, 'to', metres(to), `at least ${metres(at)}, where it begins`);
      if (distance === undefined && headroom === undefined)
        wrong(i, 'distance', 'neither distance nor headroom', 'one of the two, measured');
      if (distance !== undefined && distance <= file.gauge / 2)
        wrong(
          i,
          'distance',
          bySmallRule(distance),
          `more than ${bySmallRule(file.gauge / 2)}, half the gauge: measured from the middle of the track`,
        );
      if (rest.platform && (top === undefined || distance === undefined))
        wrong(
          i,
          top === undefined ? 'top' : 'distance',
          'a platform without it',
          'how high it stands above the rail, and how far its edge from the middle of the track',
        );
      if (top !== undefined && top <= bottom)
        wrong(i, 'top', bySmallRule(top), `more than ${bySmallRule(bottom)}, its bottom`);
      return { ...rest, id: structureId(name, i), from: at, to, side, bottom };
    })
    .sort((a, b) => a.from - b.from);
}

/** Of what stands beside the line, in this place of the list. */
export const structureId = (name: string, i: number): string => `${slug(name)}-${i + 1}`;

export const slug = (text: string): string =>
  text
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-|-$/g, '') || 'x';

/** Everything that hangs on chainage must lie on the line. */
function checkWithin(file: LineFile, length: number, notes: Notes): void {
  const check = (list: string, i: number, field: string, at: number | undefined): void => {
    if (at !== undefined && at > length + 1e-6) {
      trouble(notes, [list, i, field], metres(at), `at most ${metres(length)}, where the profile ends`);
    }
  };
  file.curves?.forEach((c, i) => check('curves', i, 'to', c.to));
  file.places?.forEach((p, i) => {
    check('places', i, 'at', p.at);
    check('places', i, 'to', p.to);
  });
  file.speedLimits?.forEach((l, i) => {
    check('speedLimits', i, 'from', l.from);
    check('speedLimits', i, 'to', l.to);
  });
  file.sights?.forEach((s, i) => {
    check('sights', i, 'from', s.from);
    check('sights', i, 'to', s.to);
  });
  checkRails(['railStretches'], file.railStretches, { length, loop: file.shape === 'loop' }, notes);
}

/** Stretches of rail lie on the line, are some way long, and only a loop's go over its origin. */
export function checkRails(
  path: FieldPath,
  stretches: readonly { readonly from: number; readonly to: number }[] | undefined,
  { length, loop }: Pick<Line, 'length' | 'loop'>,
  notes: Notes,
): void {
  stretches?.forEach(({ from, to }, i) => {
    if (Math.max(from, to) > length + 1e-6)
      trouble(
        notes,
        [...path, i, from > to ? 'from' : 'to'],
        metres(Math.max(from, to)),
        `at most ${metres(length)}, where the profile ends`,
      );
    else if (from === to || (from > to && !loop))
      trouble(notes, [...path, i, 'to'], metres(to), `more than ${metres(from)}, where the stretch begins`);
  });
}
