/** The builder's questions as they are told, on the examples. */
import { describe, expect, it } from 'vitest';
import { openOutingFile } from '../../../cli/open.ts';
import { readDesign } from '../../../desk/brake-design.ts';
import { askChain } from '../../../desk/builder/chain.ts';
import { askCylinder, usualDesign } from '../../../desk/builder/cylinder.ts';
import { askSeat, readSeat, usualSeat } from '../../../desk/builder/seat-height.ts';
import type { Voice } from '../../../words/voice.ts';

const outing = await openOutingFile('examples/battery-vacuum.json');
const voice: Voice = { system: 'imperial', wording: 'us', outing };
const metric: Voice = { ...voice, system: 'metric' };

describe('which cylinder', () => {
  it.each([
    [voice, 0.0254 / 8],
    [metric, 0.001],
  ])('stands filled in so that it works, in stock bores', (speaks, step) => {
    const written = usualDesign(outing, speaks.system);
    expect(written.vacuum).toBeDefined();
    const read = readDesign(written, outing.conditions.reaction);
    if (!read.ok) throw new Error(JSON.stringify(read.problems));
    const { best, result, said } = askCylinder(outing, read.request, speaks, { vacuum: true });
    expect(best?.feasible).toBe(true);
    expect(best?.cautiousStop).toBeLessThanOrEqual(read.request.distance);
    expect(said[0]).toContain('Fit each of the 3 cars');
    expect(new Set(result.designs.map((d) => d.brakedCars))).toEqual(new Set([3]));
    for (const { bore } of result.designs) expect(bore / step).toBeCloseTo(Math.round(bore / step), 9);
  });

  it('keeps what is written and fills in the rest', () => {
    expect(usualDesign(outing, 'imperial', { distance: '200 ft', pressure: '60 psi' })).toMatchObject({
      distance: '200 ft',
      pressure: '60 psi',
      cylinders: '1',
    });
    expect(
      usualDesign(outing, 'imperial', { distance: '200 ft', pressure: '60 psi' }).vacuum,
    ).toBeUndefined();
  });

  it('says so where the rail gives no more', () => {
    const read = readDesign(
      { ...usualDesign(outing, 'imperial', { distance: '10 ft' }) },
      outing.conditions.reaction,
    );
    if (!read.ok) throw new Error('not read');
    expect(askCylinder(outing, read.request, voice, { vacuum: true }).said[0]).toContain(
      'No cylinder does it',
    );
  });
});

describe('what a cylinder was reckoned with', () => {
  /** Asked once for all that look at it: the same question has the same reply. */
  const known = new Map<string, string>();
  const said = (of: typeof outing, written = {}): string => {
    const key = JSON.stringify([of, written]);
    const told = known.get(key) ?? asked(of, written);
    known.set(key, told);
    return told;
  };
  const asked = (of: typeof outing, written: object): string => {
    const read = readDesign(usualDesign(of, 'imperial', written), of.conditions.reaction);
    if (!read.ok) throw new Error(JSON.stringify(read.problems));
    const vacuum = !('pressure' in written);
    return askCylinder(of, read.request, { ...voice, outing: of }, { vacuum }).said.join('\n');
  };
  const seeing = (...sights: typeof outing.line.sights): typeof outing => ({
    ...outing,
    line: { ...outing.line, sights },
  });
  const all = { from: 0, to: outing.line.length, direction: 'both' } as const;

  it('is said, filled in or written', () => {
    expect(said(outing)).toContain(
      'Reckoned with 18.0 inHg of vacuum in one cylinder to a car, return springs of 6 lbf, blocks of cast-iron, efficiency of the rigging 0.8, 0.5 s until the blocks touch and 1.5 s from there to full: write',
    );
    expect(said(outing, { pressure: '50 psi', cylinders: '2', engine: false })).toMatch(
      /Reckoned with 50\.0 psi of air in 2 cylinders .* to full, engine and tender unbraked: write/,
    );
  });

  it('is no stop that is longer than what is seen without a word of it', () => {
    const written = { distance: '100 ft' };
    const seen = (distance: number): string => said(seeing({ ...all, distance }), written);
    // 49.2 ft, less the 2.4 ft that the driver sits behind the head and the host's margin of 10 ft.
    expect(seen(15)).toMatch(
      /not short enough for every place: where least is seen on this line 36 ft is left to stop in/,
    );
    expect(seen(150)).not.toContain('not short enough');
    expect(said({ ...seeing(), assumed: { ...outing.assumed, sight: 15 } }, written)).toContain(
      'nobody has said how far the driver sees on this line; of the 49 ft that is assumed 36 ft is left',
    );
  });

  it('is asked first to stop in what is left where least is seen, stated or assumed as in the answer', () => {
    const first = (of: typeof outing): string => usualDesign(of, 'imperial').distance;
    expect(first(seeing({ ...all, distance: 60 * 0.3048 }))).toBe('45 ft');
    expect(first(seeing({ ...all, distance: 200 * 0.3048 }))).not.toBe('45 ft');
    // A signal that comes late in sight is seen no farther than it is.
    const signal = {
      id: 'late',
      kind: 'signal',
      name: 'Late',
      stop: false,
      at: 200,
      sight: 50 * 0.3048,
    } as const;
    const far = seeing({ ...all, distance: 300 * 0.3048 });
    expect(first({ ...far, line: { ...far.line, places: [signal] } })).toBe('35 ft');
    const unsaid = { ...seeing(), line: { ...outing.line, sights: [], places: [] } };
    expect(first(unsaid)).toBe('85 ft');
    expect(first({ ...unsaid, host: { name: '' } })).toBe('85 ft');
    expect(usualDesign(unsaid, 'metric').distance).toBe('26 m');
    // Nobody is asked to stop in no distance at all.
    expect(first(seeing({ ...all, distance: 1 }))).toBe('5 ft');
  });

  it('says in what distance one would do, where none does in what is seen', () => {
    const [none, does] = said(seeing({ ...all, distance: 15 })).split('\n');
    expect(none).toMatch(/^No (stock )?cylinder does it/);
    const [, ft] = /^In (\d+) ft one would do: see that far ahead/.exec(does) ?? [];
    expect(Number(ft)).toBeGreaterThan(36);
    const asked = said(seeing({ ...all, distance: 15 }), { distance: `${ft} ft` });
    expect(asked).toContain('Fit each of the 3 cars');
    // It is told at once which, as whoever asked for that distance next would be told.
    const near = said(seeing({ ...all, distance: 15 })).split('\n');
    const at = near.findIndex((line) => line.startsWith('Fit each'));
    expect(near.slice(at, at + 2)).toEqual(asked.split('\n').slice(0, 2));
  });

  it('says from what speed one would do in what is seen: from half a mile an hour more none does', () => {
    const seen = seeing({ ...all, distance: 15 });
    const [, mph, far] = /or run slower: from ([\d.]+) mph one would do in (\d+ ft)\./.exec(said(seen)) ?? [];
    const from = (speed: number) => said(seen, { distance: far, speed: `${speed} mph` });
    expect(from(Number(mph))).toMatch(/^Fit each of the 3 cars/);
    expect(from(Number(mph) + 0.5)).toMatch(/^No (stock )?cylinder does it in/);
  });

  it('and no speed that nobody named', () => {
    expect(said(outing)).not.toContain('Nobody has said how fast');
    const { plannedSpeed: _, ...unplanned } = outing;
    const { speed: __, ...host } = outing.host;
    const unnamed = { ...unplanned, host };
    expect(said(unnamed)).toContain('Nobody has said how fast this outing runs: 8.0 mph is the highest');
    expect(said(unnamed, { speed: '5 mph' })).not.toContain('Nobody has said how fast');
    const seat = readSeat(usualSeat(unnamed, 'imperial'), unnamed);
    if (!seat.ok) throw new Error('not read');
    const asked = (of: typeof outing): string => askSeat(of, seat.ask, { ...voice, outing: of }).said.join();
    expect(asked(unnamed)).toContain('8.0 mph is the highest that is looked at');
    expect(asked(outing)).not.toContain('Nobody has said how fast');
  });
});

describe('which chain', () => {
  const { buys, rows, said, tables } = askChain(outing, voice);

  it('is no smaller than any gap asks for, and was hung', () => {
    expect(buys.map((b) => b.grade)).toEqual([30, 43, 70, 80]);
    for (const { grade, size, fails, pieces } of buys) {
      const needed = rows.map((r) => r.smallest.find((s) => s.grade === grade)?.size ?? Infinity);
      expect(size).toBe(Math.max(...needed));
      expect(fails).toEqual([]);
      expect(pieces).toBe(rows.length);
    }
  });

  it('is one that a catch does not spend, where there is one', () => {
    const kept = buys.find((b) => b.spent.length === 0);
    expect(said[0]).toContain(`grade ${kept?.grade}`);
    expect(tables[0].rows).toHaveLength(4);
  });
});

describe('how high the seat', () => {
  it('tells height, what sets it and the word', () => {
    const read = readSeat(usualSeat(outing, 'imperial'), outing);
    if (!read.ok) throw new Error('not read');
    const { said, verdict } = askSeat(read.outing, read.ask, voice);
    expect(said[0]).toBe('Seats of Vacuum car 1 may be 18 in above the rail (now 15 in: room for 3 in).');
    expect(said[1]).toContain('Rule 3.8');
    expect(verdict).toBe('limits');
  });

  it.each([
    [{ car: 'nobody' }, 'car'],
    [{ lean: '3 mph' }, 'lean'],
    [{ who: 'some' }, 'who'],
    [{ speed: '90 mph' }, 'speed'],
  ])('refuses %j', (changes, field) => {
    const read = readSeat({ ...usualSeat(outing, 'imperial'), ...changes }, outing);
    expect(read.ok ? [] : read.problems.map((p) => p.field)).toEqual([field]);
  });
});
