/** Incidents with what is to be done about them, and what of it is done. */
import { checkContent } from '../papers/record/check.ts';
import type { Content, Kind } from '../papers/record/fields.ts';
import { type Standing, standing } from './amended.ts';
import { dayOf, type Entry } from './record.ts';

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

/** What is to be done and is not, those with a day first. */
export const openMeasures = (
  all: readonly Incident[],
): { readonly incident: Incident; readonly measure: Measure }[] =>
  all
    .flatMap((incident) => incident.measures.map((measure) => ({ incident, measure })))
    .filter(({ measure }) => !measure.done)
    .sort((a, b) => ((a.measure.said.by ?? '9999') < (b.measure.said.by ?? '9999') ? -1 : 1));
