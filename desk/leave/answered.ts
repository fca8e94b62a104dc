/**
 * The answer to a recorded paper, as text: what was told, line by line, and a hash of all of it. The same paper and the
 * same version give the same, byte for byte, on whatever machine.
 */
import { firstAnswer, told } from '../../engine/answer/answer.ts';
import { inquire } from '../../engine/answer/inquiry.ts';
import type { Answer } from '../../engine/answer/types.ts';
import type { Outing } from '../../engine/outing/types.ts';
import { type FileProblem, readOuting } from '../../papers/index.ts';
import { canonical } from '../../records/canonical.ts';
import { sha256 } from '../../records/hash.ts';
import { notToRun, tellVerdict } from '../../words/verdict.ts';
import { distance, type Voice } from '../../words/voice.ts';
import { heeded } from '../card.ts';
import { actLines, drivenRows } from '../driven.ts';
import { gathered, tellGathered } from '../gathered.ts';
import { ALONE, gapToKeep, NO_OTHER_TRAIN, sentence } from '../sentence.ts';
import type { Json } from './nameless.ts';

export type Speech = Omit<Voice, 'outing'>;

/** Figures are hashed to six digits: sine and root may differ in the last bit between machines. */
const DIGITS = 6;

const plain = (_key: string, value: unknown): unknown => {
  if (typeof value === 'number')
    return Number.isFinite(value) ? Number(value.toPrecision(DIGITS)) : `${value}`;
  return ArrayBuffer.isView(value) ? Array.from(value as Float64Array, (v) => plain('', v)) : value;
};

/** The zones that are driven follow from the speeds, which are hashed. */
export const answerHash = ({ driven: _, ...answer }: Answer): Promise<string> =>
  sha256(canonical(JSON.parse(JSON.stringify(answer, plain))));

export interface Answered {
  readonly outing: Outing;
  readonly answer: Answer;
  /** SHA-256 of the answer. */
  readonly hash: string;
  /** What was told: the word first. */
  readonly told: readonly string[];
}

/** What the driver was told: the word, the sentence, what holds or limits, the speeds, where to brake, the gap. */
export function toldLines(answer: Answer, voice: Voice): readonly string[] {
  const gap = gapToKeep(answer, voice.outing);
  return [
    tellVerdict(answer.verdict),
    sentence(answer, voice),
    ...gathered(answer.findings)
      .filter(({ finding }) => heeded(finding.severity))
      .map((heed) => tellGathered(heed, voice)),
    notToRun(answer.verdict),
    ...drivenRows(answer, voice).map(({ from, to, speed, why }) => `${from} – ${to}: ${speed} (${why})`),
    ...actLines(answer, voice),
    ...(gap === undefined ? [] : gap === ALONE ? [NO_OTHER_TRAIN] : [`gap ${distance(voice, gap, 'up')}`]),
  ].filter((line) => line !== '');
}

/** @param paper as `nameless` gives it */
export async function answered(
  paper: Json,
  speech: Speech,
): Promise<Answered | { readonly problems: readonly FileProblem[] }> {
  const read = await readOuting({ path: 'outing', content: JSON.stringify(paper) }, async () => undefined);
  if (!read.ok) return { problems: read.problems };
  const outing = read.value;
  const inquiry = inquire(outing);
  // How many cars other trains might have is not what this one left by.
  const answer = told(inquiry, firstAnswer(inquiry));
  return {
    outing,
    answer,
    hash: await answerHash(answer),
    told: toldLines(answer, { ...speech, outing }),
  };
}

export const inputsHash = (paper: Json): Promise<string> => sha256(canonical(paper));
