/** The host's rules of people at work and of riders, weather and night: each field once. */
import { group, may, must, rows, text, yes } from '../describe.ts';
import { figure } from '../schema/quantity.ts';
import { rule } from './rule.ts';

const HOUR = 3600;
const hours = (most: number) => figure('time', 0, most * HOUR);
const years = () => figure('count', 0, 99);

/** What is asked of whoever drives, guards or looks out. */
export const crewRules = {
  mostOnDuty: rule(hours(48), 'most time on duty', 'In one turn, for whoever drives, guards or looks out.'),
  mostDriving: rule(hours(48), 'most time driving', 'In one turn, at the handles.'),
  mostDrivingAtNight: rule(hours(48), 'most time driving at night', 'In a turn that is after dark.'),
  mostWithoutBreak: rule(hours(48), 'most time without a break', 'Of work on end.'),
  leastBreak: rule(
    hours(12),
    'a break is at least',
    'A shorter one is none: for what is reckoned from records.',
  ),
  leastRest: rule(hours(120), 'least rest', 'Before a turn.'),
  restAfterFullTurn: rule(
    hours(120),
    'least rest after a full turn',
    'Before a turn, where the one before it was of the most time on duty.',
  ),
  mostInDay: rule(hours(24), 'most time on duty in 24 hours', 'In any 24 hours, all turns together.'),
  mostInWeek: rule(hours(168), 'most time on duty in a week', 'In any seven days, all turns together.'),
  mostDays: rule(figure('count', 1, 366), 'most days in a row', 'Days with duty on end.'),
  freeDays: rule(
    figure('count', 1, 30),
    'free days that end a row',
    'Fewer free days do not end it; one does, if nothing is said: for what is reckoned from records.',
  ),
  soberDeclared: rule(
    yes(),
    'says: nothing drunk or taken',
    'Everybody who works a train says so; yes or no is all that is written.',
  ),
  fitDeclared: rule(
    yes(),
    'says: fit to work',
    'Everybody who works a train says so; yes or no is all that is written, and never why.',
  ),
  youngestDriver: rule(years(), 'youngest driver, years', 'Nobody younger drives.'),
  youngestGuard: rule(years(), 'youngest guard, years', 'Nobody younger rides as guard.'),
  youngestLookout: rule(years(), 'youngest lookout, years', 'Nobody younger looks out.'),
  drivesAlone: rule(
    years(),
    'drives alone from, years',
    'A younger driver has somebody of that age or more beside, on the engine or its tender.',
  ),
  stopTried: rule(
    yes(),
    'stop tried first',
    'The driver has tried a stop with this engine before anybody gets on.',
  ),
  guardSignals: rule(yes(), 'guard’s signals written', 'Where a guard rides it is written how they signal.'),
};

export const weatherRules = {
  lightningStops: rule(yes(), 'lightning stops it', 'Nothing runs while lightning is about.'),
  mostWind: rule(figure('speed', 0.5, 60), 'most wind', 'In gusts, from whatever side.'),
  mostHeat: rule(figure('temperature', 250, 340), 'most heat', 'Of the air, in the shade.'),
  runsAtNight: rule(yes(), 'runs at night', 'No: nothing runs after dark.'),
  guardAtNight: rule(yes(), 'guard rides at night', 'After dark a guard must ride, however short the train.'),
};

const signal = group({
  signal: must(text(), 'signal', 'What is given: bell, whistle, flag, lamp, hand.'),
  means: must(text(), 'means', 'What it means to whoever hears or sees it.'),
});

const lookout = group({
  at: must(text(), 'at', 'Where somebody looks out whenever a train runs: a crossing, the front car.'),
  source: must(text(), 'source', 'Where it is written: book and number.'),
});

/** What riders are told. */
const briefing = group({
  board: may(
    rows(text(300), 1, 30),
    'on the board',
    'What the riders’ board says, a line for each; the example that comes along, if nothing is said.',
  ),
  aloud: may(
    text(2000),
    'read aloud',
    'What is read to riders before they leave: 75 to 80 words take half a minute.',
  ),
  infants: may(text(300), 'infants', 'What the host says of the very young.'),
  dropped: may(text(300), 'what is dropped', 'What is done when something falls off.'),
  dress: may(text(300), 'what the crew wears', 'Boots, gloves, eyes; for the crew’s sheet.'),
  source: must(text(), 'source', 'Where it is written: book and number.'),
});

export const people = {
  signals: may(rows(signal, 0, 40), 'signals of guard and driver', 'How they speak to each other.'),
  lookouts: may(rows(lookout, 0, 40), 'lookouts', 'Where somebody looks out whenever a train runs.'),
  briefing: may(briefing, 'what riders are told', 'The riders’ board, and what is read aloud.'),
};
