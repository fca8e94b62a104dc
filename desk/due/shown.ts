/**
 * What is recorded, shown to the host of an outing: the certificates of its vehicles and people and of the club, as they
 * were written, put into its paper. Whether they stand on its day is reckoned from the paper like everything else.
 */
import { type DueItem, dueOn } from '../../records/due.ts';
import { nameIn } from '../../records/names.ts';
import type { Entry } from '../../records/record.ts';
import { serviceDaysSince, trips } from '../../records/service.ts';
import type { Named } from '../../records/store.ts';

type Json = Readonly<Record<string, unknown>>;

function written({ certificate, since }: DueItem, gone: number | undefined, names: readonly Named[]): Json {
  const { what, of, person, until, interval } = certificate;
  const whose = of ?? (person === undefined ? undefined : nameIn(names, person));
  return {
    what,
    ...(whose === undefined ? {} : { of: whose }),
    on: since,
    ...(until === undefined ? {} : { until }),
    ...(interval === undefined ? {} : { interval }),
    ...(gone === undefined ? {} : { serviceDays: gone }),
  };
}

/** @param day of the outing: what its own date says, else today */
export function withShown(
  paper: Json,
  entries: readonly Entry[],
  names: readonly Named[],
  day: string,
): Json {
  const ran = trips(entries);
  const shown = dueOn(entries, day).map((item) => {
    const { of } = item.certificate;
    return written(item, of === undefined ? undefined : serviceDaysSince(ran, of, item.since, day), names);
  });
  // What was written into the paper by hand stays: of several the best counts.
  const byHand = (paper['shown'] ?? []) as readonly Json[];
  const fresh = shown.filter((one) => !byHand.some((other) => JSON.stringify(other) === JSON.stringify(one)));
  return byHand.length + fresh.length === 0 ? paper : { ...paper, shown: [...byHand, ...fresh] };
}
