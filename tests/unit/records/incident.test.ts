/** Incidents: facts only, on the line that they were on, with measures that stay open until they are done. */
import { describe, expect, it } from 'vitest';
import { duties } from '../../../data/duties.ts';
import { incidentContent, NoSuch, restrictionContent } from '../../../desk/incident/content.ts';
import { dutiesFor } from '../../../desk/incident/duties.ts';
import { checkContent } from '../../../papers/record/check.ts';
import { hurts, incidentKinds } from '../../../papers/record/incident-fields.ts';
import { incidents, openMeasures } from '../../../records/incidents.ts';
import { look } from '../../../records/ledger.ts';
import { memoryStore } from '../../../records/stores/memory.ts';
import { incidentMarks, incidentStrip } from '../../../views/incident-strip.ts';
import { blameIn, tellIncidents } from '../../../words/records/incident.ts';
import { odds } from '../../../words/records/patterns.ts';
import { author, clockFrom, said } from '../../support/club-records.ts';
import { plain } from '../../support/rules.ts';

const base = plain(2);
const station = { id: 'halt', name: 'Mill Lane', kind: 'station', at: 42, stop: false } as const;
const outing = { ...base, line: { ...base.line, places: [station] } };
const fell = { what: 'fall', facts: 'slipped on the step' };

describe('what is recorded', () => {
  it('has line, way and place of a landmark from its outing, and stands without one', () => {
    expect(incidentContent({ ...fell, place: 'mill lane' }, outing, 'metric')).toEqual({
      ...fell,
      place: 'mill lane',
      line: base.line.name,
      direction: base.direction,
      at: '42.0 m',
    });
    expect(incidentContent({ ...fell, place: 'the old oak' }, outing, 'metric')).not.toHaveProperty('at');
    expect(incidentContent(fell, undefined, 'metric')).toEqual(fell);
    // What is said goes before what is looked up; of another line this outing says nothing.
    expect(incidentContent({ ...fell, place: 'Mill Lane', at: '7 m' }, outing, 'metric')['at']).toBe('7 m');
    const elsewhere = { ...fell, line: 'Elsewhere', at: '99 km' };
    expect(incidentContent(elsewhere, outing, 'metric')).toEqual(elsewhere);
  });
  it('is on the line and of its train, or refused', () => {
    const beyond = `${outing.line.length + 1} m`;
    expect(() => incidentContent({ ...fell, at: beyond }, outing, 'metric')).toThrow(NoSuch);
    expect(() => incidentContent({ ...fell, vehicle: 'No such car' }, outing, 'metric')).toThrow(NoSuch);
    const limit = { line: outing.line.name, from: '1 m', to: beyond, why: 'x' };
    expect(() => restrictionContent(limit, outing, 'metric')).toThrow(NoSuch);
    expect(restrictionContent(limit, undefined, 'metric')).toEqual(limit);
  });
  it('needs its kind and facts, and nothing else', () => {
    const all = {
      ...fell,
      line: 'L',
      at: '3 m',
      place: 'p',
      direction: 'forward',
      vehicle: 'Car',
      axle: 1,
      side: 'left',
      speed: '3 mph',
      rail: 'wet',
      hurt: 'nobody',
      departure: '0'.repeat(64),
      saw: ['1'.repeat(64)],
    };
    for (const key of Object.keys(all)) {
      const { [key as 'line']: _, ...rest } = all;
      expect([key, checkContent('incident', rest).ok]).toEqual([key, key !== 'what' && key !== 'facts']);
    }
    expect(checkContent('incident', { ...fell, facts: '' }).ok).toBe(false);
    expect(checkContent('incident', { ...fell, health: 'asthma' }).ok).toBe(false);
  });
});

describe('words', () => {
  it.each([
    'the driver was careless',
    'It was the guard’s fault',
    'gross negligence of the shed',
    'should have known',
  ])('“%s” says whose doing it was, but of a complaint', (facts) => {
    expect(blameIn('fall', facts)).toBeDefined();
    expect(blameIn('complaint', facts)).toBeUndefined();
  });
  it.each([
    'a fault in the rail head',
    'the driver braked at the board, the tail ran in',
    'coupling pin found broken',
  ])('“%s” is what was seen', (facts) => expect(blameIn('derailment', facts)).toBeUndefined());
  it('its own blame nobody', () => {
    for (const what of incidentKinds)
      for (const hurt of hurts) {
        const told = tellIncidents.incident({ what, facts: 'x', hurt }, []);
        expect([told, blameIn('fall', told)]).toEqual([told, undefined]);
      }
  });
  it('odds are told as no rarer than they are', () => {
    expect([1, 0.5, 0.21, 0.05, 1 / 53, 1 / 959, 1e-6].map(odds)).toEqual([
      'always',
      '50 times in 100',
      '21 times in 100',
      'once in 20',
      'once in 53',
      'once in 950',
      'once in 1,000,000',
    ]);
  });
});

describe('a measure', () => {
  it('is open until a record says what was done; those with a day first', async () => {
    const [store, ada, clock] = [memoryStore(), await author(), clockFrom()];
    const { row } = await said(store, ada, clock, 'incident', fell);
    const todo = (what: string, by?: string) =>
      said(store, ada, clock, 'measure', { incident: row.hash, what, ...(by === undefined ? {} : { by }) });
    const first = await todo('grit the step');
    await todo('paint it', '2026-06-01');
    const open = async () =>
      openMeasures(incidents((await look(store)).entries)).map(({ measure }) => measure.said.what);
    expect(await open()).toEqual(['paint it', 'grit the step']);
    await said(store, ada, clock, 'measured', { measure: first.row.hash, what: 'gritted' });
    expect(await open()).toEqual(['paint it']);
  });
});

describe('on the strip', () => {
  it('each that has a place on this line is marked, by its number in the list', async () => {
    const [store, ada, clock] = [memoryStore(), await author(), clockFrom()];
    const line = outing.line.name;
    for (const where of [
      { line, at: '10 m' },
      { line },
      { line: 'Elsewhere', at: '10 m' },
      { line, at: '30 m' },
    ])
      await said(store, ada, clock, 'incident', { ...fell, ...where });
    const { entries } = await look(store);
    const voice = { system: 'metric', wording: 'us', outing } as const;
    const marks = incidentMarks(outing, incidents(entries), [], voice);
    expect(marks.map(({ number, from }) => [number, from])).toEqual([
      [1, 10],
      [4, 30],
    ]);
    const drawn = JSON.stringify(
      incidentStrip(outing, null, marks, voice, { width: 800, height: 300, textSize: 12 }),
    );
    expect(drawn).toContain(marks[1].title);
  });
});

describe('duties to report', () => {
  it('each has a source and a deadline and is of kinds that there are', () => {
    for (const { kinds, hurt = [], source, deadline, says } of duties) {
      expect([source, deadline, says].every((text) => text.length > 3)).toBe(true);
      expect(kinds.every((kind) => (incidentKinds as readonly string[]).includes(kind))).toBe(true);
      expect(hurt.every((one) => (hurts as readonly string[]).includes(one))).toBe(true);
    }
  });
  it('none is left out because nobody said how badly somebody was hurt', () => {
    const of = (hurt?: 'nobody' | 'death') =>
      dutiesFor({ what: 'fall', ...(hurt ? { hurt } : {}) }).map(({ id }) => id);
    expect(of()).toEqual(expect.arrayContaining([...of('death'), ...of('nobody')]));
    expect(of('nobody').length).toBeLessThan(of().length);
    expect(dutiesFor({}, 'United Kingdom').every(({ country }) => country === 'United Kingdom')).toBe(true);
  });
});
