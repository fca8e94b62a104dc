/** Incidents with what is to be done about them, and what of it is done. */
import { sameName } from '../papers/compile/named.ts';
import { checkContent } from '../papers/record/check.ts';
import type { Content, Kind } from '../papers/record/fields.ts';
import { type Standing, standing } from './amended.ts';
import { dayOf, type Entry } from './record.ts';
import { trips } from './service.ts';

export interface Measure {
  readonly from: Standing;
  readonly said: Content<'measure'>;
  /** Absent: it is not done, as far as anybody said. */
  readonly done?: Content<'measured'>;
}

export interface Incident {
  readonly from: Standing;
  readonly said: Content<'incident'>;
  /** Day on which it happened. */
  readonly day: string;
  readonly measures: readonly Measure[];
}

const read = <K extends Kind>(entries: readonly Entry[], kind: K) =>
  standing(entries, kind).flatMap((from) => {
    const checked = checkContent(kind, from.content);
    return checked.ok ? [{ from, said: checked.value }] : [];
  });

export function incidents(entries: readonly Entry[]): Incident[] {
  const done = new Map(read(entries, 'measured').map(({ said }) => [said.measure, said]));
  const measures = new Map<string, Measure[]>();
  for (const { from, said } of read(entries, 'measure')) {
    const closed = done.get(from.first.row.hash);
    const list = measures.get(said.incident) ?? [];
    measures.set(said.incident, [...list, { from, said, ...(closed ? { done: closed } : {}) }]);
  }
  return read(entries, 'incident').map(({ from, said }) => ({
    from,
    said,
    day: dayOf(from.first.body),
    measures: measures.get(from.first.row.hash) ?? [],
  }));
}

/** What left the rails, and nobody went through since by a list for that. */
export interface Derailed {
  readonly incident: Incident;
  /** A vehicle, or the line where nobody said which vehicle it was. */
  readonly of: string;
  /** It is the line. */
  readonly whole: boolean;
  /** Day on which it happened. */
  readonly since: string;
}

/**
 * The vehicle that was named; else every one of the train that had left; else the line. A list for after a derailment, gone through later, closes
 * it: what that found amiss stays open by itself.
 */
export function derailed(entries: readonly Entry[]): Derailed[] {
  const off = incidents(entries).filter(({ said }) => said.what === 'derailment');
  // Of most stores nothing else has to be read.
  if (off.length === 0) return [];
  const left = new Map(trips(entries).map(({ departure, left }) => [departure.first.row.hash, left]));
  const looked = read(entries, 'inspection').filter(({ said }) => said.when === 'after-derailment');
  const since = (of: string, moment: string): boolean =>
    looked.some(
      ({ from, said }) => sameName(said.of, of) && Date.parse(from.first.body.said) >= Date.parse(moment),
    );
  return off.flatMap((incident) => {
    const { vehicle, departure, line } = incident.said;
    const train = departure === undefined ? undefined : left.get(departure)?.vehicles;
    const all = vehicle === undefined ? (train ?? (line === undefined ? [] : [line])) : [vehicle];
    return all
      .filter((of) => !since(of, incident.from.first.body.said))
      .map((of) => ({ incident, of, whole: vehicle === undefined && !train, since: incident.day }));
  });
}

/** What is to be done and is not, those with a day first. */
export const openMeasures = (
  all: readonly Incident[],
): { readonly incident: Incident; readonly measure: Measure }[] =>
  all
    .flatMap((incident) => incident.measures.map((measure) => ({ incident, measure })))
    .filter(({ measure }) => !measure.done)
    .sort((a, b) => ((a.measure.said.by ?? '9999') < (b.measure.said.by ?? '9999') ? -1 : 1));
