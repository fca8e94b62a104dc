/** The train: each field once. Its vehicles are papers of their own, read apart. */
import * as z from 'zod/mini';
import { group, head, may, must, rows, text, yes } from '../describe.ts';
import { figure } from '../schema/quantity.ts';

/** Vehicles in all, those that `count` repeats among them. */
export const MOST_VEHICLES = 200;

const member = group({
  vehicle: must(z.unknown(), 'vehicle', 'The vehicle itself, or {"file": "path"}.'),
  id: may(text(60), 'id', 'What it is called in this train, where others name it.'),
  name: may(text(), 'name', 'Its name in this train, if not its own.'),
  borrowed: may(
    yes(),
    'borrowed',
    'Of somebody else’s, or never driven by who drives it today: a stop is tried before anybody gets on.',
  ),
  count: may(figure('count', 1, 40), 'count', 'How many alike, one behind the other.'),
});

export const trainSchema = group({
  ...head('train'),
  vehicles: must(rows(member, 1, 60), 'vehicles', 'In order, the front first.'),
  pipeBrokenAfter: may(
    rows(text(), 0, MOST_VEHICLES),
    'pipe parted behind',
    'Vehicles behind which the brake pipe is not joined.',
  ),
  chainsFastened: may(
    yes(),
    'chains fastened',
    'Walk the train: every safety chain is hooked up, at every gap.',
    { assumed: 'chains-fastened', asked: 'walk the train and look whether every safety chain is hooked up' },
  ),
});

export type TrainFile = z.output<typeof trainSchema>;
