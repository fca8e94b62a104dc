/** Hours from turns that people signed on and off for: what they cover, and what they do not. */
import { describe, expect, it } from 'vitest';
import { withHours } from '../../../desk/due/hours.ts';
import { drivenIn } from '../../../records/driving.ts';
import { hoursAt, refused, type Turn } from '../../../records/turns.ts';

const ms = (time: string): number => Date.parse(`${time}:00+01:00`);
const turn = (on: string, off?: string, more: Partial<Turn> = {}): Turn => ({
  on: ms(on),
  day: on.slice(0, 10),
  breaks: [],
  offset: '+01:00',
  record: 'r',
  ...(off === undefined ? {} : { off: ms(off) }),
  ...more,
});
const HOUR = 3600;
const BACK = '2026-05-31T18:00';
const today = (more: Partial<Turn> = {}): Turn => turn('2026-05-31T08:00', undefined, more);

describe('hours when the outing is over', () => {
  it('of this turn, from signing on', () =>
    expect(hoursAt([today()], BACK)).toEqual({ onDuty: 10 * HOUR, sinceBreak: 10 * HOUR }));

  it('nobody who is not signed on has any', () => {
    expect(hoursAt([], BACK)).toBeUndefined();
    expect(hoursAt([turn('2026-05-31T08:00', '2026-05-31T09:00')], BACK)).toBeUndefined();
    expect(hoursAt([turn('2026-05-31T19:00')], BACK)).toBeUndefined();
  });

  it('a break counts when it is over and long enough', () => {
    const rest = (from: string, to?: string) => ({
      breaks: [{ from: ms(`2026-05-31T${from}`), ...(to ? { to: ms(`2026-05-31T${to}`) } : {}) }],
    });
    const since = (more: Partial<Turn>) => hoursAt([today(more)], BACK, { leastBreak: 1200 })?.sinceBreak;
    expect(since(rest('12:00', '12:20'))).toBe(5 * HOUR + 2400);
    expect(since(rest('12:00', '12:19'))).toBe(10 * HOUR);
    expect(since(rest('12:00'))).toBe(10 * HOUR);
  });

  it('rest from the turn before, or from work elsewhere if that ended later', () => {
    const before = turn('2026-05-30T09:00', '2026-05-30T21:00');
    expect(hoursAt([before, today()], BACK)).toMatchObject({ rest: 11 * HOUR, turnBefore: 12 * HOUR });
    const worked = hoursAt([before, today({ freeSince: ms('2026-05-31T00:00') })], BACK);
    expect(worked).toMatchObject({ rest: 8 * HOUR });
    expect(worked).not.toHaveProperty('turnBefore');
    // Free since before that turn ended says less than the turn.
    expect(hoursAt([before, today({ freeSince: ms('2026-05-30T20:00') })], BACK)).toMatchObject({
      rest: 11 * HOUR,
    });
    // Not signed off: nobody can tell, but for what was said.
    expect(hoursAt([turn('2026-05-30T09:00'), today()], BACK)).not.toHaveProperty('rest');
  });

  it('a day and a week only where records cover them', () => {
    const yesterday = turn('2026-05-30T14:00', '2026-05-30T22:00');
    expect(hoursAt([yesterday, today()], BACK)).toMatchObject({ inDay: 14 * HOUR });
    expect(hoursAt([yesterday, today()], BACK)).not.toHaveProperty('inWeek');
    const old = turn('2026-05-24T12:00', '2026-05-24T20:00');
    // The window of seven days begins within that turn.
    expect(hoursAt([old, yesterday, today()], BACK)).toMatchObject({ inWeek: 20 * HOUR });
    const free = { freeSince: ms('2026-05-20T00:00') };
    expect(hoursAt([{ ...yesterday, ...free }, today()], BACK)).toMatchObject({ inWeek: 18 * HOUR });
    // Other work within the week: how much, nobody said.
    const other = today({ freeSince: ms('2026-05-31T00:00') });
    expect(hoursAt([old, yesterday, other], BACK)).not.toHaveProperty('inWeek');
    expect(hoursAt([old, turn('2026-05-30T14:00'), today()], BACK)).not.toHaveProperty('inWeek');
  });

  it('days in a row, ended by as many free days as the host says', () => {
    const on = (day: number) => turn(`2026-05-${day}T09:00`, `2026-05-${day}T12:00`);
    const all = [on(25), on(27), on(28), on(30), today()];
    expect(hoursAt(all, BACK)?.days).toBe(2);
    expect(hoursAt(all, BACK, { freeDays: 2 })).not.toHaveProperty('days');
    const since = { freeSince: ms('2026-05-22T00:00') };
    expect(hoursAt([{ ...on(25), ...since }, ...all.slice(1)], BACK, { freeDays: 2 })?.days).toBe(7);
    expect(hoursAt([on(22), ...all], BACK, { freeDays: 2 })?.days).toBe(7);
  });
});

it('what can be said of a turn follows from what was said', () => {
  const now = ms('2026-05-31T12:00');
  const resting = today({ breaks: [{ from: ms('2026-05-31T11:00') }] });
  const can = (all: readonly Turn[]) =>
    (['on', 'off', 'break', 'back'] as const).filter((w) => !refused(w, all, now));
  expect(can([])).toEqual(['on']);
  expect(can([today()])).toEqual(['off', 'break']);
  expect(can([resting])).toEqual(['off', 'back']);
  expect(can([turn('2026-05-31T08:00', '2026-05-31T09:00')])).toEqual(['on']);
  expect(refused('off', [today()], ms('2026-05-31T07:00'))).toContain('before what was said last');
});

describe('in the outing’s crew', () => {
  const recorded = [{ name: 'A. Larch', turns: [today()] }];
  const riders = [{ name: 'a. larch', duty: 'driver' }, { name: 'R' }];
  const paper = { riders, back: BACK };
  const hours = { onDuty: '10 h', sinceBreak: '10 h', record: 'r' };
  it('stands for whoever works and is recorded, renewed as a whole', () => {
    const made = withHours(paper, recorded);
    expect(made['crew']).toEqual([{ name: 'a. larch', hours }]);
    expect(withHours(made, recorded)).toBe(made);
    expect(withHours({ ...made, back: '2026-05-31T19:00' }, recorded)['crew']).toEqual([
      { name: 'a. larch', hours: { ...hours, onDuty: '11 h', sinceBreak: '11 h' } },
    ]);
    // Signed off, or nobody says when it is over: what was reckoned is gone.
    expect(withHours(made, [])['crew']).toEqual([{ name: 'a. larch' }]);
    expect(withHours({ riders, crew: made['crew'] }, recorded)['crew']).toEqual([{ name: 'a. larch' }]);
  });
  it('leaves what was written by hand', () => {
    const crew = [{ name: 'A. Larch', hours: { onDuty: '3 h' } }];
    expect(withHours({ ...paper, crew }, recorded)).toEqual({ ...paper, crew });
  });
  it('breaks by the host’s measure', () => {
    const breaks = [{ from: ms('2026-05-31T12:00'), to: ms('2026-05-31T12:10') }];
    const by = (value: string) =>
      withHours({ ...paper, host: { leastBreak: { value } } }, [
        { name: 'A. Larch', turns: [today({ breaks })] },
      ]);
    expect(by('10 min')['crew']).toMatchObject([{ hours: { sinceBreak: '5 h 50 min' } }]);
    expect(by('11 min')['crew']).toMatchObject([{ hours: { sinceBreak: '10 h' } }]);
  });
});

describe('time at the handles', () => {
  const at = (clock: string): number => ms(`2026-05-31T${clock}`);
  const ran = (from: string, to?: string) => ({ from: at(from), ...(to ? { to: at(to) } : {}) });
  const driven = (...all: ReturnType<typeof ran>[]) => drivenIn(all, at('08:00'), at('14:00'), at('15:00'));
  it('is that of the trains of this turn, and all of the outing', () => {
    expect(driven()).toBe(HOUR);
    expect(driven(ran('09:00', '11:30'))).toBe(3.5 * HOUR);
    // What was driven before this turn is of that one; what is out nobody can tell.
    expect(driven(ran('05:00', '07:30'))).toBe(HOUR);
    expect(driven(ran('07:30', '08:30'))).toBe(1.5 * HOUR);
    expect(driven(ran('09:00'))).toBeUndefined();
  });
  it('counts two trains at once as one, and none that left later', () => {
    expect(driven(ran('09:00', '11:00'), ran('10:00', '10:30'))).toBe(3 * HOUR);
    expect(driven(ran('13:30', '14:30'))).toBe(1.5 * HOUR);
    expect(driven(ran('15:30'))).toBe(HOUR);
  });
  it('is unknown where nobody says when it leaves and is back, or not in that order', () => {
    expect(drivenIn([], at('08:00'), Number.NaN, at('15:00'))).toBeUndefined();
    expect(drivenIn([], at('08:00'), at('15:00'), at('15:00'))).toBeUndefined();
    expect(drivenIn([], at('14:30'), at('14:00'), at('15:00'))).toBeUndefined();
  });
  it('stands in the crew by record, and what was written by hand stays', () => {
    const recorded = [{ name: 'A. Larch', turns: [today()], drives: [ran('09:00', '11:30')] }];
    const paper = { riders: [{ name: 'A. Larch', duty: 'driver' }], leaves: '2026-05-31T17:00', back: BACK };
    const made = withHours(paper, recorded);
    expect(made['crew']).toMatchObject([{ hours: { driving: '3 h 30 min', record: 'r and departures' } }]);
    expect(withHours(made, recorded)).toBe(made);
    // Nobody says any longer when it leaves: what was reckoned goes.
    const { leaves: _, ...later } = made as { leaves?: string };
    expect(JSON.stringify(withHours(later, recorded))).not.toContain('driving');
    const crew = [{ name: 'A. Larch', hours: { driving: '2 h', record: 'r' } }];
    expect(withHours({ ...paper, crew }, recorded)['crew']).toMatchObject([
      { hours: { driving: '2 h', record: 'r' } },
    ]);
  });
});
