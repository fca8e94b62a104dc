/** The line: each field once. Distances run from its start in the running direction. */
import type * as z from 'zod/mini';
import { chainage, choice, gauge, group, head, keptTests, may, must, rows, text } from '../describe.ts';
import { figure, quantity } from '../schema/quantity.ts';
import {
  curve,
  flangeway,
  place,
  profilePoint,
  railStretch,
  sight,
  speedLimit,
  structure,
} from './along-fields.ts';

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
    {
      asked:
        "how much clear track the driver sees ahead: pace it from the driver's seat, where it is shortest",
    },
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
