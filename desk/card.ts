/**
 * The running card: what the driver takes along, as data. A5 or half-letter, with a second side where one does not
 * hold all: nothing is left out. The PDF and the workbench's print page lay out the same card.
 */

import type { Answer } from '../engine/answer/types.ts';
import type { Outing } from '../engine/outing/types.ts';
import type { Finding, Severity } from '../engine/questions/finding.ts';
import { VERSION } from '../papers/index.ts';
import { tellLight, tellRails } from '../words/rails.ts';
import { NOT_ASKED } from '../words/records/asked.ts';
import { notToRun, staysHere, tellVerdict } from '../words/verdict.ts';
import { distance, type Voice } from '../words/voice.ts';
import type { Told } from './asked.ts';
import { assumedByWeight } from './assumed.ts';
import { counted, countWays, countWords } from './count-ways.ts';
import { actLines, drivenRows } from './driven.ts';
import { fileName } from './file-name.ts';
import { gathered, tellGathered } from './gathered.ts';
import { tellInvented } from './invented.ts';
import { ALONE, gapToKeep, NO_OTHER_TRAIN, sentence } from './sentence.ts';
import { tellTrials } from './tell-trials.ts';

export interface Card {
  readonly verdict: string;
  /** The answer in one sentence. */
  readonly sentence: string;
  readonly title: string;
  readonly train: string;
  readonly line: string;
  readonly day: string;
  readonly rail: string;
  /** By daylight or after dark, and how far is seen. */
  readonly light: string;
  /** What is tried on the outing, a line for each change; empty: it is as its papers have it. */
  readonly tried: readonly string[];
  /** What of it is an example that nobody measured; empty: nothing. */
  readonly invented: string;
  /** That records lie at hand and were not asked; empty: they were, or there are none. */
  readonly records: string;
  /** Findings that hold, are unknown, or limit; worst first, numbered as on the strip. */
  readonly heeds: readonly { readonly number: number; readonly text: string }[];
  /** Zones in the running order, with the seconds from post to post that keep to them. */
  readonly speeds: readonly {
    readonly where: string;
    readonly speed: string;
    readonly why: string;
    readonly posts: string;
  }[];
  readonly braking: readonly string[];
  /** That it is not to be run by, and why, said over all of it; empty: it is. */
  readonly notToRun: string;
  readonly gap: string;
  readonly cars: readonly string[];
  /** Who sits where, vehicle by vehicle, front seat first. */
  readonly seating: readonly { readonly vehicle: string; readonly seats: readonly Seat[] }[];
  readonly assumptions: string;
  readonly cautions: string;
  /** By which version, of program and papers. */
  readonly made: string;
}

/** Empty name: nobody sits there. */
export interface Seat {
  readonly seat: string;
  readonly name: string;
}

/** Whether a finding of that severity stands on the card. */
export const heeded = (severity: Severity): boolean =>
  severity === 'forbids' || severity === 'unknown' || severity === 'limits';

/** A card's file by outing, day and whether something is tried. */
export const cardFile = ({ asked }: Told, kind: 'card.pdf' | 'cards.pdf' | 'card.json'): string =>
  fileName(asked.outing.name, asked.outing.date, asked.trials.length > 0 ? `tried-${kind}` : kind);

/** Whose each side of a card is: in the margin, where it is not overlooked. */
export const cardMark = ({ verdict, title, day, tried, invented, records }: Card): string =>
  [
    ...(records === '' ? [] : [NOT_ASKED]),
    ...(invented === '' ? [] : ['INVENTED']),
    ...(tried.length > 0 ? ['TRIED'] : []),
    verdict.toUpperCase(),
    title,
    day,
  ].join(' · ');

export const TRIED = 'Tried, not as its papers have it:';

/**
 * @param told the answer with its own outing: there is no card of another
 * @param program its version
 * @param records that there are some which were not asked
 */
export function runningCard(told: Told, speech: Omit<Voice, 'outing'>, program: string, records = ''): Card {
  const { answer } = told;
  const { outing } = told.asked;
  const voice = { ...speech, outing };
  const stays = staysHere(answer.verdict);
  return {
    verdict: tellVerdict(answer.verdict),
    sentence: sentence(answer, voice),
    title: outing.name,
    train: outing.train.name,
    line: `${outing.line.name}${outing.direction === 'reverse' ? ', run in reverse' : ''}`,
    day: outing.date ?? 'no date given',
    rail: tellRails(voice),
    light: tellLight(voice),
    tried: tellTrials(told.asked, speech),
    invented: tellInvented(told.asked.paper),
    records,
    heeds: gathered(answer.findings).flatMap((heed, i) =>
      heeded(heed.finding.severity)
        ? [{ number: i + 1, text: `${tellGathered(heed, voice)}${whoSays(heed.finding)}` }]
        : [],
    ),
    speeds: speedRows(answer, voice),
    braking: actLines(answer, voice),
    notToRun: notToRun(answer.verdict),
    gap: stays === undefined ? gapText(answer, voice) : `none: ${stays}`,
    cars: carRows(outing, answer, voice),
    seating: seatRows(outing),
    assumptions: assumptionText(assumedByWeight(answer.findings).map(({ of }) => of)),
    cautions:
      "Reckoned, not licensed: the host's rules, boiler and local codes and the person in charge come first. Conditions change: check again when the rail does.",
    made: `Reckoned by Heedway ${program}, papers of version ${VERSION}.`,
  };
}

/** Of what is slow or shut for the time being: whose word it is and how long it counts. No name leaves the store. */
function whoSays({ code, source }: Finding): string {
  if (code !== 'line-slow' && code !== 'line-closed') return '';
  const [, record] = /, record (\w+)$/.exec(source) ?? [];
  return ` ${record === undefined ? 'Written by hand' : `Record ${record}`}; it stands until it is lifted.`;
}

const speedRows = (answer: Answer, voice: Voice): Card['speeds'] =>
  drivenRows(answer, voice).map(({ from, to, speed, why, posts }) => ({
    where: `${from} – ${to}`,
    speed,
    why,
    posts,
  }));

function gapText(answer: Answer, voice: Voice): string {
  const gap = gapToKeep(answer, voice.outing);
  if (gap === ALONE) return NO_OTHER_TRAIN;
  if (!answer.speeds) return 'cannot tell';
  return gap === undefined ? 'brakes do not hold everywhere' : distance(voice, gap, 'up');
}

function carRows(outing: Outing, answer: Answer, voice: Voice): Card['cars'] {
  const today = answer.cars.find((c) => c.railState === outing.conditions.railState);
  if (!today) return [];
  // The search ends at a number of cars: more may be possible, and are not looked at.
  return countWays(answer.cars, voice)
    .filter(([way]) => way !== 'heldByAll')
    .map(([way, name]) =>
      counted(
        way,
        name,
        countWords(today, way, (n) => `${n}+`),
      ),
    );
}

/** Seats front first with who sits there, vehicles without seats not at all. */
function seatRows({ train, riders }: Outing): Card['seating'] {
  return train.vehicles
    .filter((v) => v.seats.length > 0)
    .map((v) => ({
      vehicle: v.name,
      seats: [...v.seats]
        .sort((a, b) => a.at - b.at || b.across - a.across)
        .map((s) => ({
          seat: s.name,
          name: riders.find((r) => r.vehicle === v.id && r.seat === s.id)?.name ?? '',
        })),
    }));
}

/** On paper those alone that would change the word first; all stand with the answer. */
const MOST_ASSUMED = 6;

function assumptionText(all: readonly string[]): string {
  const of = [...new Set(all)];
  const more = of.length - MOST_ASSUMED;
  const told = of.slice(0, more > 1 ? MOST_ASSUMED : of.length).join(', ');
  return more > 1 ? `${told} and ${more} values more` : told || 'nothing';
}
