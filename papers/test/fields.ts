/** A test's record: what was read, with what, by whom. Each field once; what a test fits stands in `engine/calibrate`. */
import * as z from 'zod/mini';
import { railStates } from '../../engine/things/rail.ts';
import { choice, day, group, head, may, must, remark, rows, text } from '../describe.ts';
import { figure } from '../schema/quantity.ts';
import { brakeTests } from './brake-fields.ts';
import { runTests } from './run-fields.ts';
import { standTests } from './stand-fields.ts';

const instruments = group({
  stopwatch: may(
    figure('time', 0.01, 5),
    'stopwatch',
    'How far one press may be off: half a second for a thumb, a thirtieth for frames of a video.',
    { assumed: 'measuring/stopwatch' },
  ),
  tape: may(
    figure('ratio', 0, 0.2),
    'tape',
    'How far a tape or wheel may be off throughout: 0.01 is one in a hundred.',
    {
      assumed: 'measuring/tape',
    },
  ),
  place: may(
    figure('length', 0.001, 50),
    'place',
    'How far one place may be off, of a mark or of rest: a few metres where satellites tell it.',
    { assumed: 'measuring/place' },
  ),
  speed: may(figure('speed', 0.001, 5), 'speed', 'How far one reading of the speed may be off.', {
    assumed: 'measuring/speed',
  }),
  balance: may(figure('ratio', 0, 0.5), 'balance', 'How far the spring balance may be off throughout.', {
    assumed: 'measuring/balance',
  }),
  speedometer: may(
    figure('ratio', 0, 0.5),
    'speedometer',
    'How far what shows the speed may be off throughout.',
    {
      assumed: 'measuring/speedometer',
    },
  ),
  scales: may(figure('ratio', 0, 0.5), 'scales', 'How far the scales may be off throughout.', {
    assumed: 'measuring/scales',
  }),
  gauge: may(
    figure('ratio', 0, 0.5),
    'gauge',
    'How far the pressure or vacuum gauge may be off throughout.',
    {
      assumed: 'measuring/gauge',
    },
  ),
});

const instead = group({
  vehicle: may(text(), 'vehicle', 'Of which vehicle of the train, by its id.'),
  field: must(text(), 'field', 'Path in its paper.'),
  gear: may(text(), 'gear', 'Of which of its brakes.'),
  was: may(z.unknown(), 'before', 'What stood there; left out: nothing.'),
  wrote: must(z.unknown(), 'written', 'What the test wrote there.'),
});

const foretold = group({
  speed: must(figure('speed', 0.05, 30), 'speed', 'At the mark.'),
  measured: must(figure('length', 0, 5000), 'measured', 'From the mark to where its front rested.'),
  likely: may(figure('length', 0, 1e6), 'likely', 'What the papers had said; left out: never.'),
  careful: may(
    figure('length', 0, 1e6),
    'careful',
    'No more than one in a hundred is longer; left out: never.',
  ),
});

export const testSchema = group({
  ...head('test'),
  date: must(day(), 'date', 'The day it was made.'),
  by: may(text(), 'by', 'Who read the instruments.'),
  where: may(text(), 'where', 'On which line, at which place.'),
  rail: may(choice(...railStates), 'rail', 'The rail as it was.'),
  weather: may(remark(), 'weather', 'Wind, warmth, wet: what may matter.'),
  outing: may(
    z.unknown(),
    'outing',
    'The train on its line as it was tested, or {"file": "path"}: for tests of a whole train.',
  ),
  vehicle: may(z.unknown(), 'vehicle', 'The vehicle that was tested by itself, or {"file": "path"}.'),
  instruments: may(instruments, 'instruments', 'Where one is better or worse than is usual.'),
  test: must(
    z.discriminatedUnion('kind', [...runTests, ...brakeTests, ...standTests]),
    'test',
    'Which test it was, and its readings.',
  ),
  foretold: may(
    rows(foretold, 0, 200),
    'foretold',
    'Written by the program where a stop test was applied: each stop beside what the papers had said of it before.',
  ),
  instead: may(
    rows(instead, 0, 500),
    'in the place of',
    'Written by the program where the test was applied: what stood there before, so that it can be taken back.',
  ),
});

export type TestFile = z.output<typeof testSchema>;
