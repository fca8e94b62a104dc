/** Times in records: local, with their offset from UTC, so that both the day there and the moment are plain (RFC 3339). */

const two = (n: number): string => `${n}`.padStart(2, '0');

/** @param ahead minutes that the place is ahead of UTC */
export function localTime(at: Date, ahead = -at.getTimezoneOffset()): string {
  const there = new Date(at.getTime() + ahead * 60_000).toISOString().slice(0, 19);
  const [hours, minutes] = [Math.floor(Math.abs(ahead) / 60), Math.abs(ahead) % 60];
  return `${there}${ahead < 0 ? '-' : '+'}${two(hours)}:${two(minutes)}`;
}

/** "2026-05-01 14:05": as it was there. */
export const shownTime = (time: string): string => time.slice(0, 16).replace('T', ' ');
