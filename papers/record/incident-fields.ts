/** What happened that ought not to have, what is done about it, and where the line is slow or shut until it is mended. */
import * as z from 'zod/mini';
import { railStates } from '../../engine/things/rail.ts';
import { chainage, choice, day, group, may, must, remark, rows, speed, text } from '../describe.ts';
import { figure } from '../schema/quantity.ts';
import { hash, person } from './reference.ts';

export const incidentKinds = [
  'derailment',
  'near-miss',
  'uncoupling',
  'runaway',
  'burn',
  'fall',
  'collision',
  'track-defect',
  'complaint',
] as const;
export type IncidentKind = (typeof incidentKinds)[number];

/** How badly the worst hurt was hurt: what a duty to report goes by, and nobody's health. */
export const hurts = ['nobody', 'first aid', 'doctor', 'hospital', 'death'] as const;
export type Hurt = (typeof hurts)[number];

export const incident = group({
  what: must(choice(...incidentKinds), 'kind', 'What kind of thing it was.'),
  facts: must(
    remark().check(z.minLength(1)),
    'facts',
    'What was seen, in the order in which it was seen; whose doing it was has no place here.',
  ),
  line: may(text(), 'line', 'On which line, by its name.'),
  at: may(chainage(), 'at', 'Where along the line, by its boards or by tape.'),
  place: may(text(), 'place', 'Near which station, signal, crossing or tree.'),
  direction: may(choice('forward', 'reverse'), 'direction', 'Which way the train ran.'),
  vehicle: may(text(), 'vehicle', 'Which vehicle it was first, by its name.'),
  axle: may(z.int().check(z.gte(1), z.lte(50)), 'axle', 'Which of its axles, from the front.'),
  side: may(choice('left', 'right'), 'side', 'On which side, facing the way it ran.'),
  speed: may(figure('speed', 0, 20), 'speed', 'How fast, as it was read or thought to be.'),
  rail: may(choice(...railStates), 'rail', 'The rail as it was there.'),
  hurt: may(choice(...hurts), 'hurt', 'The worst that came to anybody; no more than that.'),
  departure: may(hash(), 'departure', 'The record of the train’s leaving: it has the crew, riders and rail.'),
  saw: may(rows(person(), 0, 50), 'who saw', 'References to names that stand apart.'),
});

export const measure = group({
  incident: must(hash(), 'incident', 'The record of what happened.'),
  what: must(remark().check(z.minLength(1)), 'what', 'What is to be done about it.'),
  by: may(day(), 'by', 'The day by which it is to be done.'),
  person: may(person(), 'person', 'Who sees to it: reference to a name that stands apart.'),
});

export const measured = group({
  measure: must(hash(), 'measure', 'The record of what was to be done.'),
  what: must(remark().check(z.minLength(1)), 'what was done', 'What was done, and what it showed.'),
});

export const restriction = group({
  line: must(text(), 'line', 'On which line, by its name.'),
  from: must(chainage(), 'from', 'Where it begins.'),
  to: must(chainage(), 'to', 'Where it ends.'),
  speed: may(speed(), 'speed', 'Greatest speed there; shut to every train, if none is said.'),
  why: must(text(400), 'why', 'The reason, as drivers are told it.'),
  because: may(hash(), 'because of', 'The incident or inspection that it comes from.'),
});

export const lifted = group({
  restriction: must(hash(), 'restriction', 'The record that it ends.'),
  why: must(remark().check(z.minLength(1)), 'why', 'What was found or done, so that trains run as before.'),
  person: may(
    person(),
    'who',
    'Who lifted it, where another records it: reference to a name that stands apart.',
  ),
});
