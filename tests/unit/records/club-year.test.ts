/** The example's year is what its seed makes, byte for byte; it verifies, and says what a year of a club says. */
import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { recorded, withShown } from '../../../desk/due/shown.ts';
import { answered, inputsHash } from '../../../desk/leave/answered.ts';
import { askedChecks } from '../../../desk/leave/checks.ts';
import type { Ready } from '../../../desk/leave/depart.ts';
import { type Json, nameless } from '../../../desk/leave/nameless.ts';
import { readOuting } from '../../../papers/index.ts';
import type { Content } from '../../../papers/record/fields.ts';
import { dueOn } from '../../../records/due.ts';
import { readStoreFile } from '../../../records/file.ts';
import { incidents, openMeasures } from '../../../records/incidents.ts';
import { openDefects } from '../../../records/inspections.ts';
import { openRestrictions } from '../../../records/restrictions.ts';
import { service, trips } from '../../../records/service.ts';
import { clubPath, paperOf, reckoning, SEED, sundayPath, sundayText } from '../../../scripts/club/outings.ts';
import { clubYear, people, TO } from '../../../scripts/club/year.ts';
import { full, runs } from '../../support/tier.ts';

const orderCodes: readonly string[] = ['out-of-date', 'not-shown', 'in-grace', 'defect-open'];
const bytes = readFileSync(clubPath);
const read = await readStoreFile(bytes);
const { entries } = read.verified;

/** As it was recorded: reckoned anew only in full. */
async function asRecorded(train: 'steam' | 'battery'): Promise<Ready> {
  const paper = nameless(await paperOf(train)) as Json;
  const inputs = await inputsHash(paper);
  const left = entries
    .map(({ body }) => body.content as unknown as Content<'departure'>)
    .find((content) => content.inputs === inputs);
  const outing = await readOuting({ path: 'outing', content: JSON.stringify(paper) }, async () => undefined);
  if (!left || !outing.ok) throw new Error(`npm run club: no departure of ${train}`);
  return {
    paper,
    answered: {
      outing: outing.value,
      answer: { verdict: left.word } as Ready['answered']['answer'],
      hash: left.answer,
      told: left.told,
    },
    speech: { system: left.units, wording: left.wording },
    asked: askedChecks(outing.value),
    crew: [{ duty: 'driver', name: 'Driver' }],
  };
}

it('is made anew as it is (else: npm run club)', async () => {
  const made = await clubYear({ seed: SEED, ready: full ? reckoning() : asRecorded });
  expect(made === bytes.toString('utf8')).toBe(true);
});

it('so is the outing of its last day', async () => {
  expect(await sundayText()).toBe(readFileSync(sundayPath, 'utf8'));
});

it('which by itself cannot tell, and with the records leaves: but not with a driver whose ticket is out', async () => {
  const paper = JSON.parse(await sundayText()) as Json;
  const shown = withShown(paper, recorded(entries, read.names, TO));
  const other = JSON.parse(JSON.stringify(paper).replace(people.shed, people.gate)) as Json;
  const cases = [
    [shown, 'limits', ['defect-open']],
    [paper, 'unknown', ['not-shown']],
    [withShown(other, recorded(entries, read.names, TO)), 'hold', ['defect-open', 'out-of-date']],
  ] as const;
  for (const [one, verdict, codes] of cases.slice(0, runs(1, 3))) {
    const made = await answered(nameless(one), { system: 'imperial', wording: 'us' });
    if ('problems' in made) throw new Error(JSON.stringify(made.problems));
    const found = made.answer.findings.map(({ code }) => code).filter((c) => orderCodes.includes(c));
    expect([made.answer.verdict, [...new Set(found)].sort()]).toEqual([verdict, codes]);
  }
});

it('another seed is another year', async () => {
  const made = await clubYear({ seed: SEED + 1, ready: asRecorded });
  expect(made === bytes.toString('utf8')).toBe(false);
});

it('verifies, and has what a year has', () => {
  expect([read.faults, read.verified.forks, read.names.length]).toEqual([[], [], 3]);
  const states = dueOn(entries, TO).map(({ state }) => state);
  expect(new Set(states)).toEqual(new Set(['stands', 'out', 'grace']));
  expect(openDefects(entries).length).toBeGreaterThan(0);
  const told = incidents(entries);
  expect(told.map(({ said }) => said.what)).toEqual([
    'derailment',
    'derailment',
    'burn',
    'near-miss',
    'complaint',
  ]);
  expect(told.every(({ said }) => said.departure !== undefined)).toBe(true);
  expect(openMeasures(told)).toHaveLength(1);
  expect(openRestrictions(entries)).toEqual([]);
  expect(entries.filter(({ body }) => body.kind === 'lifted')).toHaveLength(1);
  const all = trips(entries);
  expect(all.every(({ arrival }) => arrival)).toBe(true);
  const fenwick = service(all).find(({ vehicle }) => vehicle === 'Fenwick');
  expect(fenwick?.days).toHaveLength(17);
});
