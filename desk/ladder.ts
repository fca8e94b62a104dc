/** The ladder as it is shown: its steps as orders, each with the word after it, and what stays with what to mind. */
import type { Ladder } from '../engine/answer/ladder.ts';
import { applyChange } from '../engine/outing/change.ts';
import type { Outing } from '../engine/outing/types.ts';
import type { Finding } from '../engine/questions/finding.ts';
import { changedPaper } from '../papers/changed.ts';
import { tellChange } from '../words/change.ts';
import { leadWords, leftWords, measureStepWords, mindWords, stepWord } from '../words/ladder.ts';
import type { Voice } from '../words/voice.ts';
import { gathered, tellGathered } from './gathered.ts';
import { trying } from './trying.ts';

export interface ToldLadder {
  /** What to measure before anything is changed: the first steps. */
  readonly measure: readonly { readonly what: string; readonly field: string }[];
  readonly lead: string;
  readonly steps: readonly { readonly what: string; readonly word: string }[];
  /** What stays after the last step. */
  readonly stays: string;
  readonly left: readonly { readonly what: string; readonly mind: string }[];
}

export function tellLadder(ladder: Ladder, voice: Voice): ToldLadder {
  const changes = ladder.steps.map(({ change }) => change);
  const trials = trying(voice.outing, changes);
  const asks = new Set(ladder.measure.map(({ code, measure }) => `${code} ${measure}`));
  const saidBefore = ({ code, measure }: Finding): boolean =>
    ladder.verdict === 'unknown' && asks.has(`${code} ${measure}`);
  const after = { ...voice, outing: trials[trials.length - 1]?.to ?? voice.outing };
  return {
    measure: measuresOf(ladder, voice),
    lead: leadWords(ladder),
    steps: trials.map(({ change, from }, i) => ({
      what: tellChange(change, { ...voice, outing: from }),
      word: stepWord(ladder.steps[i], voice),
    })),
    stays: leftWords(ladder),
    left: gathered(ladder.left.filter((one) => !saidBefore(one))).map((group) => ({
      what: tellGathered(group, after),
      mind: mindWords(group.finding.code, voice),
    })),
  };
}

/** Each once, though several vehicles want it. */
const measuresOf = (ladder: Ladder, voice: Voice): ToldLadder['measure'] => {
  const told = gathered(ladder.measure).map(({ finding }) => ({
    what: measureStepWords(finding, voice),
    field: finding.measure ?? '',
  }));
  return told.filter(({ what }, i) => told.findIndex((other) => other.what === what) === i);
};

/** The outing's paper with the first steps done. */
export function paperAfter(
  paper: Readonly<Record<string, unknown>>,
  outing: Outing,
  ladder: Ladder,
  steps = ladder.steps.length,
): Record<string, unknown> {
  const changes = ladder.steps.slice(0, steps).map(({ change }) => change);
  return changedPaper(paper, outing, changes.reduce(applyChange, outing));
}
