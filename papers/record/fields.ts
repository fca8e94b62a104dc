/**
 * What a record says, kind by kind: each field once. Records are papers that nobody changes, and stand apart from those
 * that an answer is reckoned from: the first screen does without them.
 */
import * as z from 'zod/mini';
import { duties } from '../../engine/things/duty.ts';
import { groundKinds, inDateKinds } from '../../engine/things/in-date.ts';
import { railStates } from '../../engine/things/rail.ts';
import { choice, day, group, may, moment, must, remark, rows, text, yes } from '../describe.ts';
import { EXPECTED, readInterval } from '../due/interval.ts';
import { whens } from '../inspection/fields.ts';
import { results } from '../inspection/read.ts';
import { signedFor } from '../outing/crew-fields.ts';
import { figure } from '../schema/quantity.ts';
import { incident, lifted, measure, measured, restriction } from './incident-fields.ts';
import { removal, retention } from './kept-fields.ts';
import { hash, person } from './reference.ts';

/** The first record of every author: who it is. */
const author = group({ person: must(person(), 'person', 'Reference to a name that stands apart.') });

// ---- leaving and arriving

/** What is seen to before a train leaves. */
export const checks = ['brake-test', 'hose-off', 'signals', 'lights', 'briefed'] as const;
export type Check = (typeof checks)[number];

export const ageGroups = ['adult', 'youth', 'child', 'not said'] as const;

const aboard = group({
  vehicle: may(text(), 'vehicle', 'On which vehicle.'),
  seat: may(text(), 'seat', 'On which of its seats.'),
  group: must(choice(...ageGroups), 'group', 'Of which age, no nearer than this.'),
});

const crewMember = group({
  duty: must(choice(...duties), 'duty', 'What he or she does on this train.'),
  person: must(person(), 'person', 'Reference to a name that stands apart.'),
});

const departure = group({
  outing: must(text(), 'outing', 'What it is called.'),
  date: must(day(), 'date', 'The day of the outing.'),
  line: must(text(), 'line', 'Where it runs.'),
  train: must(text(), 'train', 'The train, by its name.'),
  vehicles: must(rows(text(), 1, 400), 'vehicles', 'By their names, from the front.'),
  rail: must(choice(...railStates), 'rail', 'The rail as it was.'),
  word: must(choice('go', 'limits', 'hold', 'unknown'), 'word', 'What the answer was.'),
  told: must(rows(remark(), 1, 2000), 'told', 'The answer as it was told, line by line.'),
  units: must(choice('imperial', 'metric'), 'units', 'In which it was told.'),
  wording: must(choice('us', 'uk'), 'wording', 'In which it was told.'),
  answer: must(hash(), 'answer', 'SHA-256 of the whole answer.'),
  inputs: must(hash(), 'inputs', 'SHA-256 of the paper that it was reckoned from.'),
  paper: must(z.unknown(), 'paper', 'That paper, without names.'),
  crew: must(rows(crewMember, 0, 100), 'crew', 'Who worked it.'),
  riders: must(rows(aboard, 0, 1000), 'riders', 'Who rode, by seat and age group.'),
  done: must(rows(choice(...checks), 0, checks.length), 'done', 'What was seen to before it left.'),
  notDone: must(rows(choice(...checks), 0, checks.length), 'not done', 'What was asked for and not seen to.'),
  against: may(remark(), 'against the word', 'Why it left all the same.'),
});

const arrival = group({
  departure: must(hash(), 'departure', 'The record of its leaving.'),
  distance: may(figure('length', 0, 1_000_000), 'distance', 'How far it ran, all laps together.'),
  carried: may(z.int().check(z.gte(0), z.lte(100_000)), 'riders carried', 'All laps together.'),
  events: may(remark(), 'events', 'What happened on the way; facts only.'),
});

// ---- certificates

const interval = () =>
  z.string().check(
    z.maxLength(200),
    z.refine((text) => readInterval(text) !== undefined, EXPECTED),
  );

const certificate = group({
  what: must(choice(...inDateKinds), 'what', 'What it is of.'),
  of: may(
    text(),
    'of',
    'Of which vehicle or thing, by its name; of the club, if it is of neither thing nor person.',
  ),
  person: may(person(), 'person', 'Of whom: reference to a name that stands apart.'),
  on: must(day(), 'on', 'Day on which it was done or begins.'),
  until: may(day(), 'until', 'Last day on which it stands, where it says so.'),
  interval: may(interval(), 'interval', 'How long it stands, as it is written.'),
  by: must(text(), 'by', 'Who gave it.'),
  runsKeptSince: may(
    day(),
    'runs kept since',
    'From this day on every run of it stands in these records, whoever puts it by: so says who writes this. For what goes by service days.',
  ),
  signedFor: signedFor(),
  details: may(
    remark(),
    'details',
    'What it says: pressure of a test and its factor, limits. Of a person’s health nothing but until when.',
  ),
});

// ---- inspections

const looked = group({
  item: must(text(60), 'item', 'Id of the item in its list.'),
  ask: must(text(400), 'ask', 'What was looked at, as the list asked it.'),
  result: must(choice(...results), 'result', 'Right; to be mended and usable; rejected.'),
  value: may(text(40), 'value', 'The figure that it was judged by.'),
  note: may(remark(), 'note', 'What is amiss.'),
  invented: may(
    yes(),
    'by an invented limit',
    'What is amiss is so by a figure of an example list: invented, and nobody’s limit.',
  ),
  photo: may(hash(), 'photo', 'SHA-256 of a photo of it, which stands beside the records.'),
});

const inspection = group({
  list: must(text(), 'list', 'Name of the list that was gone through.'),
  listHash: must(hash(), 'hash of the list', 'SHA-256 of its canonical text.'),
  when: must(choice(...whens), 'when', 'When it is gone through.'),
  of: must(text(), 'of', 'What was looked at, by its name.'),
  ground: may(
    choice(...groundKinds),
    'on the ground',
    'What it is, where it is neither a vehicle nor the line.',
  ),
  looked: must(rows(looked, 1, 200), 'looked at', 'Every item of the list.'),
});

const mended = group({
  inspection: must(hash(), 'inspection', 'The record in which it was found.'),
  item: must(text(60), 'item', 'Which item of it.'),
  what: must(remark(), 'what was done', 'How it was mended or made good.'),
});

// ---- turns of duty

export const turnWords = ['on', 'off', 'break', 'back'] as const;

const turn = group({
  person: must(person(), 'person', 'Reference to a name that stands apart.'),
  what: must(choice(...turnWords), 'what', 'Signs on, signs off, has a break, is back from it.'),
  freeSince: may(
    moment(),
    'free since',
    'When signing on: since when he or she did no work, elsewhere neither.',
  ),
});

const note = group({ text: must(remark(), 'text', 'Anything worth keeping.') });

export const kinds = {
  author,
  departure,
  arrival,
  certificate,
  inspection,
  mended,
  turn,
  note,
  incident,
  measure,
  measured,
  restriction,
  lifted,
  retention,
  removal,
} as const;
export type Kind = keyof typeof kinds;
export type Content<K extends Kind> = z.output<(typeof kinds)[K]>;
