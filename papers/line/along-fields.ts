/** What stands along a line or one of its tracks: each field once. Distances run from its start. */
import { badRail, ONE_STEP_WORSE } from '../../engine/things/rail.ts';
import { chainage, choice, gauge, group, may, must, remark, speed, text, yes } from '../describe.ts';
import { figure } from '../schema/quantity.ts';

export const profilePoint = group({
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

export const curve = group({
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

export const place = group({
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

export const flangeway = group({
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

export const structure = group({
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
  platform: may(yes(), 'platform', 'Riders get on and off across it; its top is what they stand on.'),
  headroom: may(
    figure('length', 0.1, 20),
    'headroom',
    'Clear height over the track, from the higher rail plumb up to the lowest part: of a bridge, a tunnel, a branch, a wire.',
  ),
  note: may(remark(), 'note', 'Anything worth keeping with it.'),
});

export const speedLimit = group({
  from: must(chainage(), 'from', 'Where the limit begins.'),
  to: must(chainage(), 'to', 'Where it ends.'),
  speed: must(speed(), 'speed', 'Greatest speed that the line allows there.'),
  why: must(text(), 'why', 'The reason, as drivers are told it.'),
  source: must(text(), 'source', 'The rule or notice that says so.'),
});

export const sight = group({
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

export const railStretch = group({
  from: must(chainage(), 'from', 'Where the stretch begins.'),
  to: must(chainage(), 'to', 'Where it ends.'),
  state: must(
    choice(...badRail, ONE_STEP_WORSE),
    'usually',
    'What its rail usually is: damp in a tunnel, greasy under trees or where engines stand and drip oil. One step worse: whatever the day is, in shade or under leaves: damp on a dry day, greasy on a damp or a wet one.',
  ),
  why: may(text(), 'why', 'What makes it so, as drivers are told it.'),
});
