/** The day changed by a word: only that changes, nobody is lost, and what cannot be done is not done. */
import { readFile } from 'node:fs/promises';
import { describe, expect, it } from 'vitest';
import {
  aboard,
  freeSeat,
  oneFewer,
  oneMore,
  peopleKinds,
  withDark,
  withRail,
  withSand,
} from '../../../desk/day.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import { bundleOuting, readOuting } from '../../../papers/index.ts';

type Json = Record<string, unknown>;

const load = (path: string): Promise<string> =>
  readFile(new URL(`../../../examples/${path}`, import.meta.url), 'utf8');
const bundle = await bundleOuting({ path: 'heavy-air.json', content: await load('heavy-air.json') }, load);
if (!bundle.ok) throw new Error('the example cannot be read');
const paper: Json = bundle.value;

async function read(json: Json): Promise<Outing> {
  const found = await readOuting({ path: 'outing', content: JSON.stringify(json) }, async () => undefined);
  if (!found.ok) throw new Error(found.problems.map((p) => p.message).join());
  return found.value;
}

describe('the day', () => {
  it('has another rail and the rest of its conditions as they were', async () => {
    const wet = withRail(paper, 'wet');
    expect((await read(wet)).conditions).toEqual({ ...(await read(paper)).conditions, railState: 'wet' });
    expect(withRail(wet, 'dry')).toEqual(paper);
  });

  it('what was measured on one rail is not believed of another', () => {
    const measured = { ...paper, conditions: { ...(paper['conditions'] as Json), adhesion: 0.3 } };
    expect(withRail(measured, 'greasy')['conditions']).not.toHaveProperty('adhesion');
    const same = (paper['conditions'] as Json)['railState'] as 'dry';
    expect(withRail(measured, same)['conditions']).toMatchObject({ adhesion: 0.3 });
  });

  it('has sand on whatever rail there is; what was measured there lies beneath it', () => {
    const dry = (paper['conditions'] as Json)['railState'];
    expect(dry).toBe('dry');
    expect(withSand(paper, 'dry')['conditions']).toMatchObject({ railState: 'sanded' });
    const damp = {
      ...paper,
      conditions: { ...(paper['conditions'] as Json), railState: 'damp', adhesion: 0.08 },
    };
    const sanded = withSand(damp, 'damp');
    expect(sanded['conditions']).toMatchObject({ railState: 'damp-sanded', adhesion: 0.08 });
    expect(withSand(sanded, 'damp-sanded')).toEqual(damp);
    // Sand on a dry rail has figures of its own: what was measured without it is not one of them.
    const bare = { ...paper, conditions: { ...(paper['conditions'] as Json), adhesion: 0.3 } };
    expect(withSand(bare, 'dry')['conditions']).not.toHaveProperty('adhesion');
  });

  it('measured beneath the sand counts for the brakes, and the sand for the pull', async () => {
    const damp = {
      ...paper,
      conditions: { ...(paper['conditions'] as Json), railState: 'damp-sanded', adhesion: 0.08 },
    };
    const { adhesion } = (await read(damp)).assumed;
    expect(adhesion.damp.value).toBe(0.08);
    expect(adhesion['damp-sanded']).toMatchObject({ value: 0.2, how: 'assumed' });
  });

  it('is dark, and by daylight leaves nothing behind', async () => {
    expect((await read(withDark(paper, true))).conditions.night).toBe(true);
    expect(withDark(withDark(paper, true), false)).toEqual(paper);
  });

  it('fills every free seat of the cars one by one, and then no more', async () => {
    let json = paper;
    const seats = (await read(paper)).train.vehicles.flatMap((v) =>
      v.role === 'engine' ? [] : v.seats.filter((s) => !s.driver),
    ).length;
    for (let i = 0; i < 30; i++) {
      const outing = await read(json);
      const next = oneMore(json, outing, 'child');
      if (!next) {
        expect(freeSeat(outing)).toBeUndefined();
        const guards = outing.riders.filter((r) => r.duty === 'guard').length;
        expect(aboard(outing).length + guards).toBe(seats);
        return;
      }
      expect(aboard(await read(next))).toHaveLength(aboard(outing).length + 1);
      json = next;
    }
    throw new Error('never full');
  });

  it.each(peopleKinds)('lets one %s who came go again', async (kind) => {
    const outing = await read(paper);
    const more = oneMore(paper, outing, kind);
    const fewer = oneFewer(more!, await read(more!), kind);
    expect(fewer).toEqual(paper);
  });

  it('lets nobody go of a kind of whom nobody is aboard', async () => {
    const none = { ...paper, riders: (paper['riders'] as Json[]).filter((r) => r['typical'] !== 'youth') };
    expect(oneFewer(none, await read(none), 'youth')).toBeUndefined();
  });

  it('lets whoever holds a child go last', async () => {
    const riders = (paper['riders'] as Json[]).map((r) =>
      r['typical'] === 'child' ? { ...r, heldBy: lastAdult(paper) } : r,
    );
    const held = { ...paper, riders };
    const left = oneFewer(held, await read(held), 'adult');
    expect((left!['riders'] as Json[]).some((r) => r['name'] === lastAdult(paper))).toBe(true);
  });
});

function lastAdult(json: Json): string {
  const adults = (json['riders'] as Json[]).filter(
    (r) => r['duty'] === undefined && ['adult', 'man', 'woman'].includes(String(r['typical'])),
  );
  return String(adults.at(-1)?.['name']);
}
