/**
 * Due dates as an iCalendar file (RFC 5545): one event of a day for each, with alarms before it. The same records give the
 * same file, byte for byte.
 */

export interface CalendarDay {
  /** Of letters that stay the same: another file of the same store moves the event and makes no second one. */
  readonly id: string;
  readonly day: string;
  readonly summary: string;
  readonly description: string;
  /** When it was recorded, local with its offset. */
  readonly stamp: string;
  /** Days before it on which it is called to mind. */
  readonly alarms: readonly number[];
}

/** RFC 5545, 3.3.11: what has a meaning in a text is marked. */
const escaped = (text: string): string =>
  text.replace(/[\\;,]/g, (mark) => `\\${mark}`).replace(/\r\n?|\n/g, '\\n');

const utf8 = new TextEncoder();

/** RFC 5545, 3.1: lines of 75 octets at the most, the next beginning with a space; no letter is cut through. */
function folded(line: string): string {
  const lines: string[] = [];
  let now = '';
  let octets = 0;
  for (const letter of line) {
    const size = utf8.encode(letter).length;
    if (octets + size > 75) {
      lines.push(now);
      now = ' ';
      octets = 1;
    }
    now += letter;
    octets += size;
  }
  return [...lines, now].join('\r\n');
}

const basic = (day: string): string => day.replaceAll('-', '');
const utc = (time: string): string => `${new Date(time).toISOString().slice(0, 19).replace(/[-:]/g, '')}Z`;

const eventOf = ({ id, day, summary, description, stamp, alarms }: CalendarDay): string[] => [
  'BEGIN:VEVENT',
  `UID:${id}@heedway`,
  `DTSTAMP:${utc(stamp)}`,
  `DTSTART;VALUE=DATE:${basic(day)}`,
  `SUMMARY:${escaped(summary)}`,
  `DESCRIPTION:${escaped(description)}`,
  'TRANSP:TRANSPARENT',
  ...alarms.flatMap((days) => [
    'BEGIN:VALARM',
    'ACTION:DISPLAY',
    `DESCRIPTION:${escaped(summary)}`,
    `TRIGGER:-P${days}D`,
    'END:VALARM',
  ]),
  'END:VEVENT',
];

export const calendar = (name: string, days: readonly CalendarDay[]): string =>
  [
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    'PRODID:-//Heedway//Records//EN',
    'CALSCALE:GREGORIAN',
    `X-WR-CALNAME:${escaped(name)}`,
    ...[...days].sort((a, b) => (a.day + a.id < b.day + b.id ? -1 : 1)).flatMap(eventOf),
    'END:VCALENDAR',
    '',
  ]
    .map((line) => folded(line))
    .join('\r\n');
