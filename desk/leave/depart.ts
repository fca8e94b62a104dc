/**
 * A departure: the answer as it was told, what it was reckoned from, who worked the train and what was seen to. A train
 * leaves by its word and with all checks made, or the record says why it left all the same.
 */
import type { Outing } from '../../engine/outing/types.ts';
import type { Verdict } from '../../engine/questions/finding.ts';
import type { Duty } from '../../engine/things/duty.ts';
import { changedPaper } from '../../papers/changed.ts';
import type { FileProblem } from '../../papers/index.ts';
import type { Check, Content } from '../../papers/record/fields.ts';
import type { Entry } from '../../records/record.ts';
import type { Asked } from '../asked.ts';
import { type Answered, answered, inputsHash, type Speech } from './answered.ts';
import { askedChecks, type Sky, unsaidSky } from './checks.ts';
import { type Json, nameless } from './nameless.ts';

/** An outing with its answer, before it leaves. */
export interface Ready {
  readonly paper: Json;
  readonly answered: Answered;
  readonly speech: Speech;
  /** What this train asks to be seen to. */
  readonly asked: readonly Check[];
  /** Drivers, guards and lookouts by their names, which the record does not have. */
  readonly crew: readonly { readonly duty: Duty; readonly name: string }[];
}

export type MadeReady = Ready | { readonly problems: readonly FileProblem[] };

/** @param written an outing's paper with all parts in it */
export async function readyToLeave(written: Json, speech: Speech): Promise<MadeReady> {
  const paper = nameless(written);
  const made = await answered(paper, speech);
  if ('problems' in made) return made;
  const riders = (written['riders'] ?? []) as readonly { readonly name: string; readonly duty?: string }[];
  const listed = (written['crew'] ?? []) as readonly {
    readonly name: string;
    readonly looksOutAt?: string;
  }[];
  return {
    paper,
    answered: made,
    speech,
    asked: askedChecks(made.outing),
    crew: [
      ...riders.flatMap(({ name, duty }) =>
        duty === 'driver' || duty === 'guard' ? [{ duty, name } as const] : [],
      ),
      ...listed.flatMap(({ name, looksOutAt }) =>
        looksOutAt === undefined ? [] : [{ duty: 'lookout', name } as const],
      ),
    ],
  };
}

/** What is tried on an outing is what leaves. */
export const asWritten = ({ paper, trials, outing }: Asked): Json =>
  trials.length === 0 ? paper : changedPaper(paper, trials[0].from, outing);

/** What of an outing may be in the way of its leaving. */
export interface Stands {
  readonly verdict: Verdict;
  readonly date?: string | undefined;
  readonly asked: readonly Check[];
  /** Somebody drives. */
  readonly driven: boolean;
  /** Weather and night by which the host has rules and of which nobody said anything. */
  readonly unsaid: readonly Sky[];
}

/** @param paper what it was read from */
export const standsOf = (outing: Outing, paper: Json, verdict: Verdict): Stands => ({
  verdict,
  date: outing.date,
  asked: askedChecks(outing),
  driven: outing.riders.some(({ duty }) => duty === 'driver'),
  unsaid: unsaidSky(outing, (paper['conditions'] as Json | undefined)?.['night'] !== undefined),
});
export const stands = ({ paper, answered: { outing, answer } }: Ready): Stands =>
  standsOf(outing, paper, answer.verdict);

/** Why it may not leave as it stands, of what a record can know. */
export type Hindrance =
  | { readonly what: 'word'; readonly word: 'hold' | 'unknown' }
  | { readonly what: 'checks'; readonly checks: readonly Check[] }
  /** The outing is of another day: its rail and people are too. */
  | { readonly what: 'day'; readonly of: string; readonly today: string }
  /** Nobody drives. */
  | { readonly what: 'driver' }
  /** Nobody has looked at the sky, and the host has a rule for it. */
  | { readonly what: 'sky'; readonly of: readonly Sky[] }
  /** What is recorded here could not be asked: limits, defects, certificates. */
  | { readonly what: 'records' }
  /** On a list that nobody recorded something of this train, or of a thing not named, is rejected. */
  | { readonly what: 'rejected'; readonly list: string; readonly of: string }
  /** It has left and not arrived. */
  | { readonly what: 'out'; readonly departure: string }
  /** Of what is recorded something is not as it was written: it counts for nothing, a closure of the line too. */
  | { readonly what: 'amiss'; readonly faults: number };

/**
 * @param today local day
 * @param out hashes of departures of these vehicles that have not arrived
 * @param faults how much is amiss in the records
 */
export function hindrances(
  { verdict, date, asked, driven, unsaid }: Stands,
  done: readonly Check[],
  today: string,
  out: readonly string[] = [],
  faults = 0,
): readonly Hindrance[] {
  const lacking = asked.filter((check) => !done.includes(check));
  return [
    ...(verdict === 'hold' || verdict === 'unknown' ? [{ what: 'word', word: verdict } as const] : []),
    ...(lacking.length > 0 ? [{ what: 'checks', checks: lacking } as const] : []),
    ...(date !== undefined && date !== today ? [{ what: 'day', of: date, today } as const] : []),
    ...(driven ? [] : [{ what: 'driver' } as const]),
    ...(unsaid.length > 0 ? [{ what: 'sky', of: unsaid } as const] : []),
    ...out.map((departure) => ({ what: 'out', departure }) as const),
    ...(faults > 0 ? [{ what: 'amiss', faults } as const] : []),
  ];
}

/** @param person reference to a name @param against why it leaves against a hindrance */
export async function departureContent(
  ready: Ready,
  done: readonly Check[],
  today: string,
  person: (name: string) => Promise<string>,
  against?: string,
): Promise<Content<'departure'>> {
  const { paper, answered: made, speech, asked, crew } = ready;
  const { outing, answer } = made;
  const crewRefs = [];
  for (const { duty, name } of crew) crewRefs.push({ duty, person: await person(name) });
  return {
    outing: outing.name,
    date: outing.date ?? today,
    line: outing.line.name,
    train: outing.train.name,
    vehicles: outing.train.vehicles.map(({ name }) => name),
    rail: outing.conditions.railState,
    word: answer.verdict,
    told: [...made.told],
    units: speech.system,
    wording: speech.wording,
    answer: made.hash,
    inputs: await inputsHash(paper),
    paper,
    crew: crewRefs,
    riders: outing.riders
      .filter(({ duty }) => duty === 'rider')
      .map(({ vehicle, seat, ageGroup }) => ({
        ...(vehicle === undefined ? {} : { vehicle }),
        ...(seat === undefined ? {} : { seat }),
        group: ageGroup,
      })),
    done: asked.filter((check) => done.includes(check)),
    notDone: asked.filter((check) => !done.includes(check)),
    ...(against === undefined ? {} : { against }),
  };
}

// ---- and again, years later

export interface Replayed {
  /** The paper is the one whose hash was recorded. */
  readonly inputs: boolean;
  /** The same answer, byte for byte. */
  readonly same: boolean;
  /** The version that left, and that of today. */
  readonly versions: { readonly left: string; readonly today: string };
  readonly gone: readonly string[];
  readonly come: readonly string[];
}

/** The departure's answer reckoned anew from its record. */
export async function replay(
  entry: Entry,
  program: string,
): Promise<Replayed | { readonly problems: readonly FileProblem[] }> {
  const { paper, units, wording } = entry.body.content as unknown as Content<'departure'>;
  const made = await answered(paper as Json, { system: units, wording });
  return 'problems' in made ? made : heldAgainst(entry, made, program);
}

/** @param made the answer to the record's paper, today */
export async function heldAgainst(
  { body }: Entry,
  made: Pick<Answered, 'hash' | 'told'>,
  program: string,
): Promise<Replayed> {
  const left = body.content as unknown as Content<'departure'>;
  return {
    inputs: (await inputsHash(left.paper as Json)) === left.inputs,
    same: made.hash === left.answer && JSON.stringify(made.told) === JSON.stringify(left.told),
    versions: { left: body.program, today: program },
    gone: left.told.filter((line) => !made.told.includes(line)),
    come: made.told.filter((line) => !left.told.includes(line)),
  };
}
