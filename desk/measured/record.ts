/** A record as it is written down, with the papers that it was made with; read and told. */
import type { Outcome } from '../../engine/calibrate/result.ts';
import { type TestKind, tests } from '../../engine/calibrate/tests/index.ts';
import { type Entry, type Load, type Read, VERSION } from '../../papers/index.ts';
import { type ReadTest, readTest } from '../../papers/read-test.ts';
import { tellRefusal } from '../../words/measured/refusals.ts';
import { tellMeasured } from '../../words/measured/results.ts';
import { testNames } from '../../words/measured/tests.ts';
import { inWording, type Voice } from '../../words/voice.ts';
import { membersOf, ridersOf, single } from '../make-up.ts';
import type { Json } from './apply.ts';

/** With what it was made: the train on its line, or one of its vehicles by itself. */
export interface MadeWith {
  /** An outing's paper with all parts in it. */
  readonly outing: Json;
  /** Id of the vehicle that was tested by itself. */
  readonly vehicle?: string;
  /** Ids of the vehicles that took part; all, if nothing is said. */
  readonly part?: readonly string[];
  /** Its riders were aboard; the driver alone, if not. */
  readonly riders?: boolean;
}

export const kindOf = (record: Json): TestKind | undefined => {
  const kind = (record['test'] as Json | undefined)?.['kind'];
  return typeof kind === 'string' && kind in tests ? (kind as TestKind) : undefined;
};

/** What a record is called until somebody calls it otherwise: the source of what it gives. */
export const usualName = (kind: TestKind, date: string, of?: string): string =>
  `${testNames[kind].replace(/[{}]/g, '')}${of === undefined ? '' : ` of ${of}`}, ${date}`;

/** A record to be written into. */
export const blankRecord = (kind: TestKind, date: string, rail?: string): Json => ({
  heedway: 'test',
  version: VERSION,
  name: usualName(kind, date),
  date,
  ...(rail === undefined ? {} : { rail }),
  test: { kind, ...(kind === 'stop-test' && rail !== undefined ? { rail } : {}) },
});

/** The record with what it was made with put in, where it does not say so itself. */
export function withPapers(record: Json, made: MadeWith | undefined): Json {
  const kind = kindOf(record);
  if (!made || kind === undefined) return record;
  const needs = tests[kind].with;
  if (needs === 'outing' && record['outing'] === undefined) return { ...record, outing: asTested(made) };
  if (needs === 'vehicle' && record['vehicle'] === undefined) {
    const vehicle = single(made.outing).find(({ id }) => id === made.vehicle)?.vehicle;
    return vehicle ? { ...record, vehicle } : record;
  }
  return record;
}

/** Ids of the vehicles of an outing that have the name of the one that a record was made with. */
export function ofThatName(outing: Json, record: Json): readonly string[] {
  const name = (record['vehicle'] as Json | undefined)?.['name'];
  return single(outing).flatMap(({ id, vehicle }) =>
    name !== undefined && vehicle['name'] === name ? [`${id}`] : [],
  );
}

/** The outing as it ran in the test: those vehicles, and whoever was aboard. */
function asTested({ outing, part, riders = false }: MadeWith): Json {
  const all = single(outing);
  const took = part ? all.filter(({ id }) => part.includes(`${id}`)) : all;
  const ids = new Set(took.map(({ id }) => id));
  const aboard = ridersOf(outing).filter(
    (r) => (riders || r.duty === 'driver') && (r.vehicle === undefined || ids.has(r.vehicle)),
  );
  const { tests: _tests, ...rest } = outing;
  const { pipeBrokenAfter, ...train } = outing['train'] as { pipeBrokenAfter?: readonly string[] };
  const broken = pipeBrokenAfter?.filter((id) => ids.has(id)) ?? [];
  return {
    ...rest,
    train: {
      ...train,
      // Of those that are counted as one, all: written so still.
      vehicles: took.length === all.length ? membersOf(outing) : took,
      ...(broken.length > 0 ? { pipeBrokenAfter: broken } : {}),
    },
    riders: aboard,
  };
}

const nothing: Load = async () => undefined;

/** A record by itself, with all papers in it; or a file beside which they lie. */
export const readRecord = (record: Json | Entry, load: Load = nothing): Promise<Read<ReadTest>> =>
  readTest(isEntry(record) ? record : { path: 'test', content: JSON.stringify(record) }, load);

const isEntry = (record: Json | Entry): record is Entry => 'content' in record && 'path' in record;

/** What comes of it, a line each; or why nothing does. */
export function tellOutcome(outcome: Outcome, { outing }: ReadTest, speech: Omit<Voice, 'outing'>): string[] {
  const shown = { ...speech, ...(outing ? { outing } : {}) };
  const lines = outcome.ok ? tellMeasured(outcome, shown) : [tellRefusal(outcome, shown)];
  return lines.map((line) => inWording(line.charAt(0).toUpperCase() + line.slice(1), speech.wording));
}
