/**
 * The running card: what the driver takes along, as data. One side of A5 or half-letter; the PDF and the
 * workbench's print page lay out the same card.
 */
import type { Answer } from '../engine/answer/types.ts';
import type { Outing } from '../engine/outing/types.ts';
import { tellRail, tellVerdict } from '../words/finding.ts';
import { reasonWords } from '../words/findings/stopping.ts';
import { distance, early, say, type Voice } from '../words/voice.ts';
import { assumedByWeight } from './assumed.ts';
import { countWays, countWords } from './count-ways.ts';
import { gathered, tellGathered } from './gathered.ts';
import { sentence } from './sentence.ts';
import { endsOf, type SpeedStretch, stretches } from './stretches.ts';

export interface Card {
  readonly verdict: string;
  /** The answer in one sentence. */
  readonly sentence: string;
  readonly title: string;
  readonly train: string;
  readonly line: string;
  readonly day: string;
  readonly rail: string;
  /** Findings that hold, are unknown, or limit; worst first. */
  readonly heeds: readonly string[];
  readonly moreHeeds: number;
  readonly speeds: readonly { readonly where: string; readonly speed: string; readonly why: string }[];
  readonly braking: readonly string[];
  readonly gap: string;
  readonly cars: readonly { readonly way: string; readonly count: string }[];
  /** Who sits where, vehicle by vehicle, front seat first. */
  readonly seating: readonly { readonly vehicle: string; readonly seats: string }[];
  readonly assumptions: string;
  readonly cautions: string;
}

const MOST_HEEDS = 3;
const MOST_SPEEDS = 5;
const MOST_BRAKING = 5;

export function runningCard(outing: Outing, answer: Answer, voice: Voice): Card {
  const heeds = gathered(answer.findings).filter(({ finding }) => finding.severity !== 'notes');
  return {
    verdict: tellVerdict(answer.verdict),
    sentence: sentence(answer, voice),
    title: outing.name,
    train: outing.train.name,
    line: `${outing.line.name}${outing.direction === 'reverse' ? ', run in reverse' : ''}`,
    day: outing.date ?? 'no date given',
    rail: tellRail(outing.conditions.railState),
    heeds: heeds.slice(0, MOST_HEEDS).map((heed) => tellGathered(heed, voice)),
    moreHeeds: Math.max(0, heeds.length - MOST_HEEDS),
    speeds: speedRows(answer, voice),
    braking: brakingRows(answer, voice),
    gap: gapText(answer, voice),
    cars: carRows(outing, answer),
    seating: seatRows(outing),
    assumptions: assumptionText(assumedByWeight(answer.findings).map(({ of }) => of)),
    cautions:
      "Reckoned, not licensed: the host's rules, boiler and local codes and the person in charge come first. Conditions change: check again when the rail does.",
  };
}

function speedRows(answer: Answer, voice: Voice): Card['speeds'] {
  if (!answer.speeds) return [];
  const all = byReason(stretches(answer.speeds));
  // The slowest places matter most on the card; they are shown in the order of the line.
  const shown = [...all].sort((a, b) => a.speed - b.speed).slice(0, MOST_SPEEDS);
  return all
    .filter((s) => shown.includes(s))
    .map((s) => ({
      where: endsOf(voice, s).join(' – '),
      speed: say(voice, { si: s.speed, kind: 'speed' }, 'down'),
      why: s.reason === 'host-line' ? 'host' : s.what === '' ? reasonWords(s.reason) : s.what,
    }));
}

/** Neighbours with one reason as one stretch, at its least speed. */
function byReason(list: readonly SpeedStretch[]): SpeedStretch[] {
  const out: SpeedStretch[] = [];
  for (const s of list) {
    const last = out[out.length - 1];
    if (last && last.reason === s.reason && last.what === s.what) {
      out[out.length - 1] = {
        ...last,
        to: s.to,
        ends: [last.ends[0], s.ends[1]],
        speed: Math.min(last.speed, s.speed),
      };
    } else out.push(s);
  }
  return out;
}

function brakingRows(answer: Answer, voice: Voice): string[] {
  return answer.brakingPoints.slice(0, MOST_BRAKING).map((p) => {
    const where = early(voice, p.at);
    return p.kind === 'stop'
      ? `${where}: brake for ${p.what}`
      : `${where}: brake to ${say(voice, { si: p.toSpeed, kind: 'speed' }, 'down')} by ${early(voice, p.target)}`;
  });
}

function gapText(answer: Answer, voice: Voice): string {
  if (!answer.speeds) return 'cannot tell';
  const most = answer.speeds.gap.reduce((a, b) => Math.max(a, b), 0);
  return Number.isFinite(most) ? distance(voice, most, 'up') : 'brakes do not hold everywhere';
}

function carRows(outing: Outing, answer: Answer): Card['cars'] {
  const today = answer.cars.find((c) => c.railState === outing.conditions.railState);
  if (!today) return [];
  // The search ends at a number of cars: more may be possible, and are not looked at.
  return countWays(answer.cars)
    .filter(([way]) => way !== 'heldByAll')
    .map(([way, name]) => ({ way: name, count: countWords(today, way, (n) => `${n}+`) }));
}

/** Seats front first with who sits there; empty ones show as a dash, vehicles without seats not at all. */
function seatRows({ train, riders }: Outing): Card['seating'] {
  return train.vehicles
    .filter((v) => v.seats.length > 0)
    .map((v) => ({
      vehicle: v.name,
      seats: [...v.seats]
        .sort((a, b) => a.at - b.at || b.across - a.across)
        .map((s) => riders.find((r) => r.vehicle === v.id && r.seat === s.id)?.name ?? '–')
        .join(' · '),
    }));
}

function assumptionText(of: readonly string[]): string {
  const names = [...new Set(of)];
  return names.length === 0
    ? 'nothing'
    : `${names.slice(0, 8).join(', ')}${names.length > 8 ? ` and ${names.length - 8} more` : ''}`;
}
