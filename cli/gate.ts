/**
 * The gate by which every outing comes in of which something is told: with what is recorded of it put into its paper.
 * Nobody has to ask for that: a store that lies here, or beside the outing's file, is asked by itself, for a limit that a
 * flag was forgotten for is a train on a shut line. Not to ask it has to be said, and is told with the answer.
 */
import { existsSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import type { Command as Program } from 'commander';
import { type Asked, asking, fileOf } from '../desk/asked.ts';
import { type Recorded, recorded, withShown } from '../desk/due/shown.ts';
import { openTriedFile } from '../desk/trying.ts';
import type { Outing } from '../engine/outing/types.ts';
import { readOuting } from '../papers/index.ts';
import { asked, inForce, notAsked, type Sight } from '../words/records/asked.ts';
import { type RecordsFlag, UsageFault } from './command.ts';
import { openOutingFile, refusal } from './open.ts';
import { openAsked, openUntried } from './open-asked.ts';
import { clock, inStore, lookAt, STORE } from './records.ts';

/** Flags of every command that an outing comes into. */
export const asksRecords = (program: Program): Program =>
  program
    .option(
      '--records <file>',
      `with what is recorded there; ${STORE}, if one lies here or beside the outing`,
    )
    .option('--no-records', 'with nothing that is recorded, and the answer says so');

type Json = Readonly<Record<string, unknown>>;

export interface Gate {
  /** What is asked about: an outing, or one with what is tried on it. */
  readonly asked: (path: string) => Promise<Asked>;
  /** An outing by itself, with its paper. */
  readonly untried: (path: string) => Promise<Asked>;
  readonly outing: (path: string) => Promise<Outing>;
  /** That records lie at hand and are not asked, in words; empty: they are, or there are none. */
  readonly silence: (path: string) => string;
  /** One that was made here. @param path where it is written */
  readonly made: (paper: Json, path: string) => Promise<Asked>;
}

/** What came of the records, once the outings are in: what stands over the answer, and the same for programs. */
export interface Opened {
  readonly gate: Gate;
  readonly lines: () => readonly string[];
  readonly json: () => unknown;
}

export function openGate(flag: RecordsFlag): Opened {
  const seen: Sight[] = [];
  const withRecords = async (path: string, written: Asked): Promise<Asked> => {
    const store = storeFor(path, flag);
    if (store === undefined) return written;
    if (flag.records === false) {
      seen.push({ store, asked: false });
      return written;
    }
    const { made, sight } = await shown(store, written);
    seen.push(sight);
    return made;
  };
  const untried = async (path: string): Promise<Asked> => withRecords(path, await openUntried(path));
  const gate: Gate = {
    asked: async (path) => withRecords(path, await openAsked(path)),
    untried,
    // Its paper with all its files is read only where something is put into it.
    outing: async (path) =>
      storeFor(path, flag) === undefined ? openOutingFile(path) : (await untried(path)).outing,
    silence: (path) => {
      const store = flag.records === false ? storeFor(path, flag) : undefined;
      return store === undefined ? '' : notAsked(store);
    },
    made: async (paper, path) => withRecords(path, asking(paper, await reading(paper))),
  };
  const told = (): Sight[] => [...new Map(seen.map((one) => [JSON.stringify(one), one])).values()];
  return {
    gate,
    lines: () => told().map((one) => (one.asked ? asked(one) : notAsked(one.store))),
    json: () => (told().length > 0 ? told() : undefined),
  };
}

/** Of what lies here and beside the outing there is one, or somebody says which. */
function storeFor(path: string, { records }: RecordsFlag): string | undefined {
  if (typeof records === 'string') return records;
  const beside = join(dirname(path), STORE);
  const lie = [STORE, ...(resolve(beside) === resolve(STORE) ? [] : [beside])].filter((one) =>
    existsSync(one),
  );
  if (lie.length > 1 && records !== false)
    throw new UsageFault(`found ${lie.join(' and ')}; expected --records with the one that counts`);
  return lie[0];
}

async function shown(records: string, written: Asked): Promise<{ made: Asked; sight: Sight }> {
  return inStore({ records }, async (store) => {
    const day = written.outing.date ?? clock.now().slice(0, 10);
    const { entries, faults } = await lookAt(store);
    const all: Recorded = recorded(entries, await store.names(), day);
    const paper = withShown(written.paper, all);
    const made = paper === written.paper ? written : await again(written, paper);
    return { made, sight: { store: records, asked: true, amiss: faults.length, ...inForce(made.outing) } };
  });
}

const nothing = async (): Promise<undefined> => undefined;

async function reading(paper: Json): Promise<Outing> {
  const read = await readOuting({ path: 'outing', content: JSON.stringify(paper) }, nothing);
  if (read.ok) return read.value;
  throw refusal(read.problems);
}

/** The same, and the same tried on it, of another paper. */
async function again(written: Asked, paper: Json): Promise<Asked> {
  if (written.trials.length === 0) return asking(paper, await reading(paper));
  const read = await openTriedFile(fileOf({ ...written, paper }), 'outing', nothing);
  if (!read.ok) throw refusal(read.problems);
  return asking(read.value.paper, read.value.outing, read.value.trials);
}
