/** The days of a calendar file: the last on which each thing stands. What goes by service days has no day, and is left out. */
import { type CalendarDay, calendar } from '../../records/calendar.ts';
import type { DueItem } from '../../records/due.ts';
import type { Named } from '../../records/store.ts';
import { tellDue } from '../../words/records/due.ts';

/** Days before at which it is called to mind. */
const ALARMS = [30, 7];

function dayOf(item: DueItem, names: readonly Named[]): CalendarDay[] {
  const { certificate, from, last } = item;
  if (last === undefined) return [];
  const { what, of, by } = tellDue(item, names);
  const { interval, details } = certificate;
  return [
    {
      id: from.first.row.hash,
      day: last,
      summary: `${of}: ${what}, last day`,
      description: [`Since ${certificate.on}, by ${by}.`, interval, details].filter(Boolean).join('\n'),
      stamp: (from.amendments.at(-1) ?? from.first).body.stored,
      alarms: ALARMS,
    },
  ];
}

export const dueCalendar = (name: string, items: readonly DueItem[], names: readonly Named[]): string =>
  calendar(
    name,
    items.flatMap((item) => dayOf(item, names)),
  );
