/** The make-up of a train changed step by step: ids stay, riders stay with their car or wait, nobody is lost. */

import { readFile } from 'node:fs/promises';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  boarded,
  changed,
  joined,
  left,
  letOff,
  membersOf,
  moved,
  platformed,
  ridersOf,
  seated,
  single,
} from '../../../desk/make-up.ts';
import { bundleOuting, readOuting } from '../../../papers/index.ts';
import type { Json } from '../../../web/state/session.ts';
import { runs } from '../../support/tier.ts';

const load = (path: string): Promise<string> =>
  readFile(new URL(`../../../examples/${path}`, import.meta.url), 'utf8');
const bundle = await bundleOuting({ path: 'heavy-air.json', content: await load('heavy-air.json') }, load);
if (!bundle.ok) throw new Error('the example cannot be read');
const paper: Json = bundle.value;
const ids = (p: Json): (string | undefined)[] => single(p).map((m) => m.id);
const reads = async (p: Json) =>
  readOuting({ path: 'outing', content: JSON.stringify(p) }, async () => undefined);

describe('cars by count', () => {
  it('are written out with the ids and names that the reader of files gives them', async () => {
    const read = await reads(paper);
    expect(read.ok && read.value.train.vehicles.map((v) => v.id)).toEqual(ids(paper));
    const written = await reads(moved(paper, 1, 1));
    expect(read.ok && written.ok && written.value.train.vehicles).toEqual(
      read.ok && read.value.train.vehicles,
    );
  });
});

describe('vehicles', () => {
  it('move and come back', () => {
    const there = moved(paper, 1, 4);
    expect(ids(there)).toEqual(['engine', 'car-2', 'car-3', 'car-4', 'car-1', 'car-5']);
    expect(ids(moved(there, 4, 1))).toEqual(ids(paper));
  });

  it('join under an id and name of their own', async () => {
    const car = membersOf(paper)[1].vehicle;
    const twice = joined(joined(paper, car, 6), car, 0);
    const read = await reads(twice);
    expect(read.ok).toBe(true);
    if (!read.ok) return;
    const names = read.value.train.vehicles.map((v) => v.name);
    expect(new Set(names).size).toBe(8);
    expect(names[0]).toBe('Air car 6');
  });

  it('are left behind with what is amiss with them, and with nothing else', () => {
    const at = (of: string) => ({ of, what: 'x', rejects: true, since: '2026-05-30' });
    const stay = ['Air car', 'Air car 1', 'The line'].map(at);
    const amiss = { ...paper, defects: [at('Air car 2'), at('AIR CAR 2'), ...stay] };
    expect(left(amiss, 2)['defects']).toEqual(stay);
  });

  it('are left behind with their riders on the platform, and the pipe forgets them', async () => {
    const train = paper['train'] as Json;
    const parted = { ...paper, train: { ...train, pipeBrokenAfter: ['car-2', 'car-5'] } };
    const rest = left(parted, 2);
    expect(ids(rest)).toEqual(['engine', 'car-1', 'car-3', 'car-4', 'car-5']);
    expect(ridersOf(rest)).toHaveLength(ridersOf(paper).length);
    expect(
      ridersOf(rest)
        .filter((r) => r.vehicle === undefined)
        .map((r) => r.name),
    ).toEqual(
      ridersOf(paper)
        .filter((r) => r.vehicle === 'car-2')
        .map((r) => r.name),
    );
    expect((rest['train'] as Json)['pipeBrokenAfter']).toEqual(['car-5']);
    expect((await reads(rest)).ok).toBe(true);
  });

  it('the last vehicle stays', () => {
    const only = { ...paper, train: { ...(paper['train'] as Json), vehicles: [membersOf(paper)[0]] } };
    expect(left(only, 0)).toBe(only);
  });
});

describe('riders', () => {
  const at = (p: Json, name: string) => ridersOf(p).find((r) => r.name === name);
  const index = (name: string): number => ridersOf(paper).findIndex((r) => r.name === name);

  it('change places with who sits there', () => {
    const [a, b] = [at(paper, 'Rider 1'), at(paper, 'Rider 2')];
    const next = seated(paper, index('Rider 1'), { vehicle: String(b?.vehicle), seat: String(b?.seat) });
    expect(at(next, 'Rider 1')).toMatchObject({ vehicle: b?.vehicle, seat: b?.seat });
    expect(at(next, 'Rider 2')).toMatchObject({ vehicle: a?.vehicle, seat: a?.seat });
  });

  it('one from the platform sends who sat there to the platform', () => {
    const waiting = platformed(paper, index('Rider 1'));
    const two = at(paper, 'Rider 2');
    const next = seated(waiting, index('Rider 1'), {
      vehicle: String(two?.vehicle),
      seat: String(two?.seat),
    });
    expect(at(next, 'Rider 2')).not.toHaveProperty('seat');
    expect(at(next, 'Rider 1')?.seat).toBe(two?.seat);
  });

  it('a child stays held by one who is renamed, and by nobody who is let off', () => {
    const held = changed(paper, index('Rider 3'), { heldBy: 'Rider 1' });
    expect(at(changed(held, index('Rider 1'), { name: 'Ann' }), 'Rider 3')?.heldBy).toBe('Ann');
    expect(at(letOff(held, index('Rider 1')), 'Rider 3')).not.toHaveProperty('heldBy');
  });

  it('whatever is done, seats hold one rider each and the paper can be read', async () => {
    const seats = single(paper).flatMap((m) =>
      (m.vehicle['seats'] as Json[]).map((s) => ({ vehicle: String(m.id), seat: String(s['name']) })),
    );
    const act = fc.oneof(
      fc.record({ do: fc.constant('seat'), who: fc.nat(30), to: fc.constantFrom(...seats) }),
      fc.record({ do: fc.constant('platform'), who: fc.nat(30) }),
      fc.record({ do: fc.constant('off'), who: fc.nat(30) }),
      fc.record({ do: fc.constant('on') }),
      fc.record({ do: fc.constant('move'), who: fc.nat(5), place: fc.nat(5) }),
    );
    await fc.assert(
      fc.asyncProperty(fc.array(act, { maxLength: 20 }), async (acts) => {
        let now = paper;
        for (const a of acts as { do: string; who: number; place: number; to: (typeof seats)[number] }[]) {
          const who = ridersOf(now).length > 0 ? a.who % ridersOf(now).length : 0;
          if (a.do === 'seat') now = seated(now, who, a.to);
          if (a.do === 'platform') now = platformed(now, who);
          if (a.do === 'off') now = letOff(now, who);
          if (a.do === 'on') now = boarded(now, { typical: 'adult' });
          if (a.do === 'move') now = moved(now, a.who, a.place);
        }
        const taken = ridersOf(now).flatMap((r) => (r.seat === undefined ? [] : [`${r.vehicle}/${r.seat}`]));
        expect(new Set(taken).size).toBe(taken.length);
        const read = await reads(now);
        expect(read.ok ? [] : read.problems).toEqual([]);
      }),
      { seed: 1811, numRuns: runs(30, 300) },
    );
  });
});
