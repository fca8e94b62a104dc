/** Calendar days as papers write them (2026-05-31), counted and moved; of no place and no hour. */

const DAY = 86_400_000;

/** Days since 1970-01-01; undefined: there is no such day. */
export function dayNumber(day: string): number | undefined {
  if (!/^\d{4}-\d\d-\d\d$/.test(day)) return undefined;
  const at = Date.parse(`${day}T00:00:00Z`);
  return Number.isNaN(at) || dayText(at / DAY) !== day ? undefined : at / DAY;
}

export const dayText = (number: number): string => new Date(number * DAY).toISOString().slice(0, 10);

export function plusDays(day: string, days: number): string {
  const at = dayNumber(day);
  if (at === undefined) throw new RangeError(`${day} is no day`);
  return dayText(at + days);
}

/** The same day of a later month; where that month has none, its last. */
export function plusMonths(day: string, months: number): string {
  const [year, month, date] = day.split('-').map(Number);
  const first = new Date(Date.UTC(year, month - 1 + months, 1));
  const last = new Date(Date.UTC(first.getUTCFullYear(), first.getUTCMonth() + 1, 0)).getUTCDate();
  return `${first.toISOString().slice(0, 8)}${`${Math.min(date, last)}`.padStart(2, '0')}`;
}

export const endOfMonth = (day: string): string => plusDays(plusMonths(`${day.slice(0, 8)}01`, 1), -1);

export function daysBetween(from: string, to: string): number {
  const [a, b] = [dayNumber(from), dayNumber(to)];
  if (a === undefined || b === undefined) throw new RangeError(`${from} or ${to} is no day`);
  return b - a;
}
