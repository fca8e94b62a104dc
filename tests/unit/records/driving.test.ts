/** Time at the handles by what was recorded: whose, from when to when, whichever device said so. */
import { expect, it } from 'vitest';
import { recordedTurns } from '../../../desk/due/hours.ts';
import { drives } from '../../../records/driving.ts';
import { look } from '../../../records/ledger.ts';
import { personNamed } from '../../../records/names.ts';
import { memoryStore } from '../../../records/stores/memory.ts';
import { author, clockFrom, said } from '../../support/club-records.ts';

const HASH = 'a'.repeat(64);
const left = (driver: string, guard: string) => ({
  outing: 'Sunday',
  date: '2026-05-01',
  line: 'Line',
  train: 'Train',
  vehicles: ['Engine'],
  rail: 'dry',
  word: 'go',
  told: ['GO'],
  units: 'metric',
  wording: 'uk',
  answer: HASH,
  inputs: HASH,
  paper: {},
  crew: [
    { duty: 'driver', person: driver },
    { duty: 'guard', person: guard },
  ],
  riders: [],
  done: [],
  notDone: [],
});
const at = (time: string): number => Date.parse(`2026-05-01T${time}:00Z`);

it('is of whoever drove, under every reference to the same name, to the arrival as it was said last', async () => {
  const [store, ada] = [memoryStore(), await author()];
  const { person: guard } = await personNamed(store, 'B. Rowan');
  const { person: driver } = await personNamed(store, 'A. Larch');
  // The same person on another device: another salt.
  const other = 'b'.repeat(64);
  await store.name({ person: other, salt: 'x', name: 'a. larch' });
  const clock = clockFrom('2026-05-01T07:59:00Z');
  await said(store, ada, clock, 'turn', { person: driver, what: 'on' });
  const first = await said(store, ada, clockFrom('2026-05-01T08:59:00Z'), 'departure', left(other, guard));
  const came = await said(store, ada, clockFrom('2026-05-01T09:59:00Z'), 'arrival', {
    departure: first.row.hash,
  });
  const again = { departure: first.row.hash, carried: 4 };
  await said(store, ada, clockFrom('2026-05-01T10:29:00Z'), 'arrival', again, came.row.hash);
  await said(store, ada, clockFrom('2026-05-01T11:59:00Z'), 'departure', left(driver, guard));
  const { entries } = (await look(store)) as Awaited<ReturnType<typeof look>>;
  const names = await store.names();
  expect(recordedTurns(entries, names)).toMatchObject([
    {
      name: 'A. Larch',
      turns: [{ on: at('08:00') }],
      drives: [{ from: at('09:00'), to: at('10:30') }, { from: at('12:00') }],
    },
  ]);
  expect(drives(entries, (person) => person).has(guard)).toBe(false);
});
