/** Examples of RFC 5545 as it prints them: written so, and read back as they were by another library. */
import ICAL from 'ical.js';
import { expect, it } from 'vitest';
import { type CalendarDay, calendar } from '../../../../records/calendar.ts';
import { printedIn } from '../../../support/measured.ts';

const published = printedIn(import.meta.url, 'B');

const day: CalendarDay = {
  id: '19970901T130000Z-123403',
  day: '1997-11-02',
  summary: 'Our Blissful Anniversary',
  description: '',
  stamp: '1997-09-01T13:00:00+00:00',
  alarms: [],
};
const linesOf = (of: Partial<CalendarDay>): readonly string[] =>
  calendar('x', [{ ...day, ...of }]).split('\r\n');
const eventOf = (text: string): ICAL.Event => {
  const [event] = new ICAL.Component(ICAL.parse(text)).getAllSubcomponents('vevent');
  return new ICAL.Event(event);
};

it('an event of a day that takes up no time (3.6.1)', () => {
  const printed = [
    'DTSTAMP:19970901T130000Z',
    'DTSTART;VALUE=DATE:19971102',
    'SUMMARY:Our Blissful Anniversary',
    'TRANSP:TRANSPARENT',
  ];
  const found = linesOf({}).filter((line) => printed.includes(line));
  expect(found).toHaveLength(printed.length);
  published.figure('lines of 3.6.1 that are not as printed', printed.length - found.length, 0, 0, 'lines');
  const { startDate, summary } = eventOf(calendar('x', [day]));
  expect([`${startDate}`, startDate.isDate, summary]).toEqual([
    '1997-11-02',
    true,
    'Our Blissful Anniversary',
  ]);
});

it('a moment is told in UTC, wherever it was recorded (3.3.5, form 2)', () =>
  expect(linesOf({ stamp: '1997-09-01T09:00:00-04:00' })).toContain('DTSTAMP:19970901T130000Z'));

it('a text of three lines (3.3.11)', () => {
  const description = 'Project XYZ Final Review\nConference Room - 3B\nCome Prepared.';
  expect(linesOf({ description })).toContain(
    'DESCRIPTION:Project XYZ Final Review\\nConference Room - 3B\\nCome Prepared.',
  );
  expect(eventOf(calendar('x', [{ ...day, description }])).description).toBe(description);
});

it('a long line is folded, and is one again (3.1)', () => {
  const description = 'This is a long description that exists on a long line. '.repeat(5).trim();
  const lines = linesOf({ description });
  const from = lines.findIndex((line) => line.startsWith('DESCRIPTION:'));
  const folded = lines.slice(
    from,
    lines.findIndex((line, i) => i > from && !line.startsWith(' ')),
  );
  expect(folded.length).toBe(4);
  expect(Math.max(...folded.map(({ length }) => length))).toBe(75);
  expect(folded.map((line, i) => (i === 0 ? line : line.slice(1))).join('')).toBe(
    `DESCRIPTION:${description}`,
  );
  expect(eventOf(calendar('x', [{ ...day, description }])).description).toBe(description);
});

it.each([',', ';', '\\', '\\n', 'a\\,b;c\nd'])(
  'marks that mean something come back as they were: %j',
  (summary) => expect(eventOf(calendar('x', [{ ...day, summary }])).summary).toBe(summary),
);

it('alarms come the days before that are said (3.3.6, 3.6.6)', () => {
  const text = calendar('x', [{ ...day, alarms: [30, 7] }]);
  const alarms = eventOf(text).component.getAllSubcomponents('valarm');
  expect(alarms.map((one) => `${one.getFirstPropertyValue('trigger')}`)).toEqual(['-P30D', '-P7D']);
});
