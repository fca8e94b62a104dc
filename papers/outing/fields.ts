/** The outing: each field once. Line, train and host are papers of their own, read apart. */
import * as z from 'zod/mini';
import { otherTrainsWays } from '../../engine/outing/types.ts';
import { groundKinds, inDateKinds } from '../../engine/things/in-date.ts';
import { railStates, seenRail } from '../../engine/things/rail.ts';
import {
  chainage,
  choice,
  day,
  group,
  head,
  keptTests,
  may,
  moment,
  must,
  rows,
  speed,
  text,
  yes,
} from '../describe.ts';
import { age } from '../schema/age.ts';
import { figure, quantity } from '../schema/quantity.ts';
import { crewMember, signedFor } from './crew-fields.ts';

const rider = group({
  name: must(text(), 'name', 'Whoever it is; a number will do.'),
  weight: may(quantity('mass', 2, 300), 'weight', 'As dressed for the ride, bags included, by scales.'),
  typical: may(
    choice('man', 'woman', 'adult', 'heavy', 'youth', 'child'),
    'typical',
    'Instead of a weight: one like this, with all its spread; heavy: an adult of 230 lb or more.',
    { assumed: 'mass' },
  ),
  age: may(age(), 'age', 'Such as 7, "8 months" or 0.5: of children always.', { asked: 'ask how old' }),
  vehicle: may(text(), 'vehicle', 'Which vehicle he or she rides on.'),
  seat: may(text(), 'seat', 'Which of its seats.', { asked: 'on which seat each rider sits' }),
  duty: may(choice('rider', 'driver', 'guard'), 'duty', 'Rider, if nothing is said.', {
    asked: 'who drives, and where the driver sits',
  }),
  group: may(text(), 'group', 'Riders of the same group are kept together.'),
  heldBy: may(text(), 'held by', 'Name of the adult who holds this child.'),
});

const railStretch = group({
  from: must(chainage(), 'from', 'Where the stretch begins.'),
  to: must(chainage(), 'to', 'Where it ends.'),
  state: must(choice(...seenRail), 'today', 'Its rail as it is today: look, and wipe it with a finger.'),
  why: may(text(), 'why', 'What makes it so.'),
});

const conditions = group({
  railState: must(
    choice(...railStates),
    'rail state',
    'The rail as it is today; where it is not like this, say so under "stretches of rail".',
  ),
  railStretches: may(
    rows(railStretch, 0, 200),
    'stretches of rail today',
    'Where the rail is worse today than the rest, or better; stands before what the line says of the place.',
  ),
  adhesion: may(
    quantity('ratio', 0.01, 1),
    'adhesion',
    "Measured on this rail today: pull at which an engine's locked wheels slide ÷ their weight.",
    { assumed: 'adhesion' },
  ),
  altitude: may(figure('length', -500, 6000), 'altitude', 'Above the sea; thin air weakens a vacuum brake.', {
    asked: 'how high the line lies above the sea',
  }),
  airPressure: may(
    figure('pressure', 30_000, 115_000),
    'air pressure',
    'By a barometer at the line, not reduced to sea level.',
  ),
  night: may(yes(), 'night', 'It runs after dark.'),
  visibility: may(
    figure('length', 0.5, 2000),
    'seen today',
    'How far the driver sees anywhere today, from the seat: in fog, smoke or heavy rain, or by the engine’s own light after dark. Where the line lets one see less, that counts.',
    {
      asked:
        'how far the driver sees somebody in dark clothes on the track, by the engine’s own light or through the fog: pace it from the seat',
    },
  ),
  brakeTried: may(
    yes(),
    'brake tried',
    'The driver has tried a stop with this engine today, or knows its brake.',
    { asked: 'try a stop with the empty train, and say so' },
  ),
  wind: may(figure('speed', 0, 60), 'wind', 'In gusts, from whatever side.', {
    asked: 'by an anemometer held up, the strongest gust of ten minutes',
  }),
  lightning: may(yes(), 'lightning', 'It is about, seen or heard; no: the sky was looked at.', {
    asked: 'look at the sky and listen',
  }),
  temperature: may(figure('temperature', 230, 340), 'heat', 'Of the air, in the shade.', {
    asked: 'by a thermometer in the shade',
  }),
  crosswind: may(
    figure('speed', 0, 60),
    'crosswind',
    'Wind across the line, gusts included; where nothing is said the wind counts, for it comes across somewhere.',
  ),
  reaction: may(
    quantity('time', 0, 30),
    'reaction',
    'From what the driver sees to the hand on the brake, by stopwatch.',
    { assumed: 'reaction' },
  ),
});

const ofRail = (state: string) =>
  may(
    quantity('ratio', 0.01, 1),
    `on ${state} rail`,
    'Measured on this line: drag of locked wheels ÷ their weight.',
  );

const measuredAdhesion = group({
  dry: ofRail('dry'),
  damp: ofRail('damp'),
  wet: ofRail('wet'),
  greasy: ofRail('greasy'),
  sanded: ofRail('dry, sanded'),
  'damp-sanded': ofRail('damp, sanded'),
  'wet-sanded': ofRail('wet, sanded'),
  'greasy-sanded': ofRail('greasy, sanded'),
});

const following = group({
  after: must(figure('time', 0, 86_400), 'after', 'How long behind this one, by the clock.'),
  speed: must(speed(), 'speed', 'How fast it comes.'),
});

const agreedLimit = group({
  from: must(chainage(), 'from', 'Where the limit begins.'),
  to: must(chainage(), 'to', 'Where it ends.'),
  speed: must(speed(), 'speed', 'Greatest speed there today.'),
});

const shown = group({
  what: must(choice(...inDateKinds), 'what', 'What it is of.'),
  of: may(text(), 'of', 'The vehicle or person by its name; of the club, if nothing is said.'),
  on: must(day(), 'on', 'Day on which it was done or begins.'),
  until: may(day(), 'until', 'Last day on which it stands, grace not counted.'),
  graceTo: may(day(), 'grace to', 'Last day of grace, where there is any.'),
  serviceLeft: may(
    figure('count', 0, 100_000),
    'service days left',
    'Where it goes by them: how many there are left, the day of the outing among them.',
  ),
  signedFor: signedFor(),
  by: may(text(), 'by', 'Who gave it.'),
  record: may(text(200), 'record', 'The record that says so; one written by hand has none.'),
});

const defect = group({
  of: must(text(), 'of', 'The vehicle or the line, by its name; or what is on the ground.'),
  ground: may(
    choice(...groundKinds),
    'on the ground',
    'What it is, where it is neither of a vehicle nor of the line.',
  ),
  what: must(text(500), 'what', 'What is amiss.'),
  rejects: must(yes(), 'rejects', 'It may not be used so; else it may, and is to be mended.'),
  invented: may(
    yes(),
    'by an invented limit',
    'It is amiss by a figure of an example list: invented, and nobody’s limit.',
  ),
  since: must(day(), 'since', 'Day on which it was found.'),
  record: may(text(200), 'record', 'The inspection in which it was found, and the item.'),
});

const restriction = group({
  of: must(text(), 'of', 'The line, by its name.'),
  from: must(chainage(), 'from', 'Where it begins.'),
  to: must(chainage(), 'to', 'Where it ends.'),
  speed: may(speed(), 'speed', 'Greatest speed there; shut to every train, if none is said.'),
  why: must(text(400), 'why', 'The reason, as drivers are told it.'),
  since: must(day(), 'since', 'Day from which it counts, until a record lifts it.'),
  record: may(text(200), 'record', 'The record that says so; one written by hand has none.'),
});

export const outingSchema = group({
  ...head('outing'),
  date: may(day(), 'date', 'The day of the outing.'),
  line: must(z.unknown(), 'line', 'The line itself, or {"file": "path"}.'),
  train: must(z.unknown(), 'train', 'The train itself, or {"file": "path"}.'),
  host: must(z.unknown(), 'host', 'The host\'s rules themselves, or {"file": "path"}.'),
  direction: may(
    choice('forward', 'reverse'),
    'direction',
    'The way that the line is run; forward, if nothing is said.',
  ),
  wayBack: may(
    choice('engine-leads', 'pushed', 'none'),
    'way back',
    'How the train comes back where the line does not go round: the engine leads (run round, or turned), it is pushed (the last vehicle leads), or it does not come back this way, as where each way has an outing of its own. The engine leads, if nothing is said; the word is of both ways.',
    { asked: 'how the train comes back: with the engine leading, pushed, or not this way' },
  ),
  route: may(
    rows(text(), 1, 100),
    'route',
    'Tracks of the line in the order in which they are run, "main" for the line itself; the line alone, if nothing is said. All distances of this outing are then along the route.',
  ),
  move: may(
    figure('count', 1, 100),
    'move',
    'Where the route sets back: which of its moves is answered in full, the first if nothing is said. The word is of all.',
  ),
  riders: may(rows(rider, 0, 1000), 'riders', 'Everybody on the train, the driver included.'),
  conditions: must(conditions, 'conditions', 'Rail, air and driver today.'),
  measuredAdhesion: may(
    measuredAdhesion,
    'measured adhesion',
    'By the state of the rail that it was measured on. Counts in full on its own day; on another only where it is less than what is assumed: how a rail holds differs from day to day.',
  ),
  plannedSpeed: may(speed(), 'planned speed', 'Speed that one means to run at.'),
  otherTrains: may(
    choice(...otherTrainsWays),
    'other trains',
    'On the line while this one is: none; only such as run the same way; or such as come the other way too, which the host then keeps apart. Where a line has two ends a train that ran the same way comes back the other way.',
    {
      asked:
        'whether other trains are on the line meanwhile, and which way they run: ask whoever is in charge',
    },
  ),
  following: may(following, 'train that follows', 'The next train behind this one.'),
  agreedLimits: may(
    rows(agreedLimit, 0, 2000),
    'speed limits agreed for today',
    'On top of those of the line.',
  ),
  shown: may(rows(shown, 0, 2000), 'certificates shown', 'What stands for this train and its people.', {
    asked: 'show the certificate, with the last day on which it stands',
  }),
  defects: may(rows(defect, 0, 2000), 'defects', 'What was found amiss and is not mended.'),
  crew: may(
    rows(crewMember, 0, 200),
    'crew',
    'Whoever works this train or stands by to: hours, what each declares, who looks out where.',
    { asked: 'who it is, by name' },
  ),
  signals: may(
    text(500),
    'signals today',
    'How guard and driver signal each other, where the host does not say it.',
    { asked: 'agree on it, and write it down' },
  ),
  leaves: may(moment(), 'leaves', 'When it leaves: for time at the handles that is reckoned from records.'),
  back: may(
    moment(),
    'back by',
    'When this outing is over at the latest: for hours of duty that are reckoned from records.',
  ),
  restrictions: may(
    rows(restriction, 0, 2000),
    'temporary limits and closures',
    'Where the line is slow or shut until somebody lifts it.',
    { asked: 'where along the line the limit begins and ends, by its boards or by tape' },
  ),
  tests: keptTests(),
});

export type OutingFile = z.output<typeof outingSchema>;
