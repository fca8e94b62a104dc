/** The line: each field once. Distances run from its start in the running direction. */
import type * as z from 'zod/mini';
import { badRail, ONE_STEP_WORSE } from '../../engine/things/rail.ts';
import {
  chainage,
  choice,
  gauge,
  group,
  head,
  keptTests,
  may,
  must,
  remark,
  rows,
  speed,
  text,
  yes,
} from '../describe.ts';
import { figure, quantity } from '../schema/quantity.ts';

const profilePoint = group({
  at: may(chainage(), 'at', 'Distance of the point from the start of the line, by tape or wheel.'),
  length: may(figure('length', 0.01, 10_000), 'length', 'Instead of "at": distance from the point before.'),
  height: may(
    figure('length', -500, 6000),
    'height',
    'Height of the rail against any one mark kept for the whole survey: by level and staff, water level or hand level.',
  ),
  grade: may(
    figure('grade', -0.4, 0.4),
    '{grade}',
    'Instead of a height: rise from the point before, uphill positive.',
  ),
});

const curve = group({
  from: must(chainage(), 'from', 'Where it leaves the straight, its transition included.'),
  to: must(chainage(), 'to', 'Where the straight begins again.'),
  radius: must(
    figure('length', 1, 100_000),
    'radius',
    'To the middle of the track. With a string of length c held to the inner rail, v at its middle: c²/8v.',
  ),
  hand: must(choice('left', 'right'), 'hand', 'The way it turns, in the running direction.'),
  transitionIn: may(
    figure('length', 0, 1000),
    'transition in',
    'Length over which it tightens; none where it was laid without.',
  ),
  transitionOut: may(figure('length', 0, 1000), 'transition out', 'Length over which it eases.'),
  cant: may(
    figure('length', -0.3, 0.3),
    'cant',
    'How much higher the outer rail lies: a level across the rails, and what must be packed under the inner end. Negative where the inner one is higher.',
  ),
  gaugeWidening: may(
    figure('length', 0, 0.05),
    'gauge widening',
    'Gauge in the curve less gauge on the straight, with a rule.',
  ),
});

export const placeKinds = [
  'station',
  'stop',
  'signal',
  'switch',
  'crossing',
  'tunnel',
  'bridge',
  'summit',
  'board',
  'siding',
  'yard',
  'buffers',
] as const;

const place = group({
  name: must(text(), 'name', 'What the people of the line call it.'),
  kind: must(choice(...placeKinds), 'kind', 'What stands there: a signal, {switch}, a station …'),
  at: must(chainage(), 'at', 'Where it is, or where it begins.'),
  to: may(chainage(), 'to', 'Where it ends, if it is long: a platform, a tunnel.'),
  sight: may(
    figure('length', 0.1, 10_000),
    'sight',
    'How far before it the driver first sees it, sitting as he drives: ride up to it, mark the rail, measure.',
    { asked: 'how far before it the driver first sees it' },
  ),
  sightReverse: may(
    figure('length', 0.1, 10_000),
    'sight in reverse',
    'The same, when the line is run the other way.',
  ),
  stop: may(yes(), 'stop', 'Every train stops here.'),
  note: may(remark(), 'note', 'Anything worth keeping with it.'),
});

const flangeway = group({
  name: must(text(), 'name', 'What it is called: North {switch}, Mill Lane crossing …'),
  at: must(chainage(), 'at', 'Where it is.'),
  gauge: may(gauge(), 'gauge', 'There, with a gauge or rule; the gauge of the line, if nothing is said.'),
  frogFlangeway: may(
    figure('length', 0.002, 0.1),
    'flangeway at the frog',
    'Between frog and wing, or rail and boards of a crossing: the narrowest that a wheel goes through.',
  ),
  guardFlangeway: may(
    figure('length', 0.002, 0.1),
    'flangeway at the guard rail',
    'Between the guard rail and its rail, opposite the point of the frog.',
  ),
  guardCheck: may(
    figure('length', 0.03, 1),
    'guard check',
    'Across the track from the running side of the frog’s point to the guarding side of the guard rail; better than the gap alone.',
  ),
  guardFace: may(
    figure('length', 0.03, 1),
    'guard face',
    'Across the track between the guarding sides of guard rail and wing: what a wheelset’s backs must span.',
  ),
  depth: may(
    figure('length', 0.001, 0.2),
    'depth',
    'From the top of the rail to the floor of the shallower gap, dirt and bolts included.',
  ),
});

const structure = group({
  name: must(text(), 'name', 'What it is: platform, wall, North tunnel, lamp by the water crane …'),
  at: must(chainage(), 'at', 'Where it is, or where it begins.'),
  to: may(chainage(), 'to', 'Where it ends, if it is long; the one place, if nothing is said.'),
  side: may(
    choice('left', 'right', 'both'),
    'side',
    'On which side, in the running direction; both, if nothing is said.',
  ),
  distance: may(
    figure('length', 0.01, 10),
    'distance',
    'From the middle of the track, level, to its nearest face: from the inner side of the nearer rail, and half the gauge. None: it only hangs over the track.',
  ),
  bottom: may(
    figure('length', -2, 10),
    'bottom',
    'Above the rail, where that face begins: of a branch or a sign; from the ground, if nothing is said.',
  ),
  top: may(
    figure('length', -2, 10),
    'top',
    'Above the rail, where that face ends: of a platform or a low wall; higher than any train, if nothing is said.',
  ),
  headroom: may(
    figure('length', 0.1, 20),
    'headroom',
    'Clear height over the track, from the higher rail plumb up to the lowest part: of a bridge, a tunnel, a branch, a wire.',
  ),
  note: may(remark(), 'note', 'Anything worth keeping with it.'),
});

const siding = group({
  name: must(text(), 'name', 'What it is called: passing loop, engine road …'),
  side: must(choice('left', 'right'), 'side', 'On which side of the line, in the running direction.'),
  spacings: must(
    rows(
      group({
        at: must(chainage(), 'at', 'Where along the line.'),
        spacing: must(
          figure('length', 0, 30),
          'spacing',
          'From the middle of the line to the middle of the siding, square across: from rail to the same rail.',
        ),
      }),
      2,
      200,
    ),
    'spacings',
    'Taped across from the points on, closest near them: every foot or half a metre until the tracks lie well apart.',
  ),
  radius: may(figure('length', 1, 100_000), 'radius', 'Of its sharpest curve, that of the points included.', {
    asked: 'the radius of the siding’s sharpest curve, that of its points included: chord and versine',
  }),
});

const speedLimit = group({
  from: must(chainage(), 'from', 'Where the limit begins.'),
  to: must(chainage(), 'to', 'Where it ends.'),
  speed: must(speed(), 'speed', 'Greatest speed that the line allows there.'),
  why: must(text(), 'why', 'The reason, as drivers are told it.'),
  source: must(text(), 'source', 'The rule or notice that says so.'),
});

const sight = group({
  from: must(chainage(), 'from', 'Where the stretch begins.'),
  to: must(chainage(), 'to', 'Where it ends.'),
  distance: must(
    figure('length', 0.1, 10_000),
    'distance',
    'Least distance that the driver sees ahead anywhere in it.',
  ),
  direction: may(
    choice('forward', 'reverse', 'both'),
    'direction',
    'Running which way; both, if nothing is said.',
  ),
});

const railStretch = group({
  from: must(chainage(), 'from', 'Where the stretch begins.'),
  to: must(chainage(), 'to', 'Where it ends.'),
  state: must(
    choice(...badRail, ONE_STEP_WORSE),
    'usually',
    'What its rail usually is: damp in a tunnel, greasy under trees or where engines stand and drip oil. One step worse: whatever the day is, in shade or under leaves: damp on a dry day, greasy on a damp or a wet one.',
  ),
  why: may(text(), 'why', 'What makes it so, as drivers are told it.'),
});

/** Points at an end of a track. */
const points = () =>
  group({
    track: may(text(), 'track', 'Name of the track that they lie on; the line itself, if nothing is said.'),
    at: must(chainage(), 'at', 'Where the tips of the points are, by that track’s own distances.'),
    hand: must(
      choice('left', 'right'),
      'hand',
      'To which hand this track leaves, seen from the tips toward the frog, whichever way trains run.',
    ),
    points: must(
      choice('facing', 'trailing'),
      'points',
      'Facing where one comes to the tips first, walking the way that track’s distances grow; else trailing.',
    ),
    frogNumber: may(
      figure('ratio', 1.5, 30),
      'number of the frog',
      'Along the frog from where it is one inch wide to where it is two, in inches: 6 for one in six.',
      { asked: 'the number of the frog: how far along it grows wider by one inch' },
    ),
    frogAngle: may(
      figure('angle', 0.03, 0.7),
      'angle of the frog',
      'Instead of its number, where that is what one knows.',
    ),
    lead: may(
      figure('length', 0.1, 100),
      'lead',
      'From the tips of the points along the track that goes straight on to where the two gauge lines of the frog cross; a point blunt by half an inch stands half its number of inches behind that.',
      { asked: 'the lead: from the tips of the points to the frog, along the straight track' },
    ),
    radius: may(
      figure('length', 0.5, 10_000),
      'radius',
      'Of its curve, by string and versine: instead of the lead, or to hold it against.',
    ),
  });

const track = group({
  name: must(text(), 'name', 'What it is called: goods loop, engine road …'),
  length: must(
    figure('length', 0.5, 100_000),
    'length',
    'Along it, from the tips of its first points to the tips of its last, or to its buffers.',
  ),
  start: must(points(), 'first points', 'Where it leaves the line or another track.'),
  end: may(
    points(),
    'last points',
    'Where it comes in again, as one sees them from their tips; none: it ends at buffers.',
  ),
  curves: may(
    rows(curve, 0, 500),
    'curves',
    'Beyond its frogs, by its own distances; what lies in its turnouts follows from them.',
  ),
  profile: may(
    rows(profilePoint, 2, 5000),
    'profile',
    'Heights along it, from the tips of its first points to its end; without them nobody is told how a train runs over it.',
    { asked: 'the heights along this track, with a level' },
  ),
  speedLimits: may(rows(speedLimit, 0, 200), 'speed limits', 'Posted along it, by its own distances.'),
  places: may(
    rows(place, 0, 200),
    'places',
    'Stations, signals, {switch} and whatever else stands along it, by its own distances; an empty list where there is none. Asked for where a route runs over it and the line tells its own.',
    { asked: 'stations, signals and crossings along this track, or that there are none' },
  ),
  sights: may(
    rows(sight, 0, 200),
    'sight distances',
    'Where on it the driver cannot see far; an empty list where he sees all of it.',
    { asked: 'how far the driver sees along this track' },
  ),
  structures: may(
    rows(structure, 0, 200),
    'structures',
    'Whatever solid stands near it or hangs over it, from the tips of its first points on: what is told of the line and stands near this track too once more, measured from this one. An empty list where nothing does.',
    { asked: 'how far from the middle of this track, and how high, everything near it stands' },
  ),
  flangeways: may(
    rows(flangeway, 0, 50),
    'frogs and crossings',
    'Its frogs, those of its own points included, and crossings; an empty list where it has none.',
    { asked: 'guard check, guard face and depth of the gaps at each frog of this track' },
  ),
  railStretches: may(
    rows(railStretch, 0, 50),
    'stretches of rail',
    'Where its rail is usually worse than the rest; an empty list where it is not.',
    { asked: 'where the rail of this track is usually damp or greasy' },
  ),
});

export const lineSchema = group({
  ...head('line'),
  gauge: must(gauge(), 'gauge', 'Between the inner faces of the rails, on the straight.'),
  contactWidth: may(
    figure('length', 0.05, 1.2),
    'contact width',
    'Between the points where the wheels bear on the two rails: middle to middle of the shining bands.',
    { assumed: 'contact-width/extra' },
  ),
  shape: must(
    choice('loop', 'point-to-point'),
    'shape',
    'A loop must close: its last point lies as high as its first.',
  ),
  survey: may(
    choice('levelled', 'taped', 'gps', 'stated', 'assumed'),
    'survey',
    'How the heights were taken: with a level, with tape and hand level, by satellite, from a drawing, or guessed.',
  ),
  profile: must(
    rows(profilePoint, 2, 50_000),
    'profile',
    'Points along the line with the height of the rail; closest where the {grade} changes.',
    { asked: 'the heights along the line, with a level' },
  ),
  curves: may(rows(curve, 0, 5000), 'curves', 'Every curve with its ends, radius and hand.'),
  places: may(
    rows(place, 0, 2000),
    'places',
    'Stations, signals, {switch}, crossings and whatever else a driver looks out for.',
  ),
  flangeways: may(
    rows(flangeway, 0, 500),
    'frogs and crossings',
    'Every frog with its guard rail, and every crossing where flanges run in a gap, as measured.',
    { asked: 'guard check, guard face and depth of the gaps at each frog, by calliper across the track' },
  ),
  structures: may(
    rows(structure, 0, 2000),
    'structures',
    'Whatever solid stands near the track or hangs over it, as measured: platforms, posts, walls, trees, tunnels, bridges.',
    { asked: 'how far from the middle of the track, and how high, everything near it stands' },
  ),
  sidings: may(
    rows(siding, 0, 100),
    'sidings',
    'Tracks beside the line, by how far from it they lie: where does a train in them stand clear of the line?',
  ),
  tracks: may(
    rows(track, 0, 200),
    'tracks',
    'Loops and sidings with their points, as a tape has them: where does a train stand clear, and does it fit? A route over them is named by the outing.',
  ),
  speedLimits: may(
    rows(speedLimit, 0, 2000),
    'speed limits',
    'Limits of the line itself, posted or in its rules.',
  ),
  sights: may(
    rows(sight, 0, 2000),
    'sight distances',
    'Stretches on which the driver cannot see far, as in a cutting or a wood.',
  ),
  railStretches: may(
    rows(railStretch, 0, 200),
    'stretches of rail',
    'Where the rail is usually worse than the rest: a tunnel, shade, leaves, an oiled station. Counts where it is worse than the day.',
  ),
  twist: may(
    figure('twist', 0, 0.1),
    'most twist of the track',
    'Greatest change of cross-level over a length ÷ that length, walking the line with a level across the rails.',
    {
      asked:
        'how much the level across the rails changes from one end of a car to the other, along the whole line',
    },
  ),
  curveConstant: may(
    quantity('length', 0.001, 10),
    'curve resistance',
    'Drag of its curves ÷ weight × radius, by coasting through one.',
    { assumed: 'curve-constant' },
  ),
  tests: keptTests(),
});

export type LineFile = z.output<typeof lineSchema>;
