/**
 * Heedway as a library: read an outing's files, answer it, work a sum. Plain data in, plain data out; SI inside.
 *
 * Nothing here prints, asks the clock or reaches the network; files come through the `load` that the caller gives.
 */
import { answerSum, type SumReply } from '../desk/sums.ts';
import { answerOuting } from '../engine/answer/complete.ts';
import type { Answer } from '../engine/answer/types.ts';
import type { Outing } from '../engine/outing/types.ts';
import { type Entry, type Load, type Read, readOuting as readFiles } from '../papers/index.ts';

export type { SumAnswer, SumFault, SumReply } from '../desk/sums.ts';
export type { Answer, CarCount, CountLimit, CountWay } from '../engine/answer/types.ts';
export type { Outing } from '../engine/outing/types.ts';
export type { Finding, FindingOf, Remedy, Severity, Verdict } from '../engine/questions/finding.ts';
export type { BrakingPoint, SpeedMap } from '../engine/questions/speed/types.ts';
export type { Entry, FileProblem, Load, Read } from '../papers/index.ts';

/**
 * Reads an outing file and all that it refers to.
 *
 * @param file path and content (text or bytes) of the outing's file
 * @param load gives the content of a file that it names, by path; `undefined` where there is none. Left out: an
 *   outing that names other files is refused.
 * @returns the outing, or every problem found: file, field, what was found and what was expected. Never throws for
 *   what a file says.
 */
export const readOuting = (file: Entry, load: Load = async () => undefined): Promise<Read<Outing>> =>
  readFiles(file, load);

export interface AnswerOptions {
  /** Search for the smallest changes that clear a finding: some tenths of a second more. Left out: yes. */
  readonly remedies?: boolean;
}

/**
 * May it leave? Every question asked of an outing.
 *
 * @returns the verdict (`go`, `limits`, `hold`, `unknown`: cannot tell), the findings, worst first, each with what was
 *   found and required (SI), margin, source and remedies; speeds along the line (m, m/s); braking points; car counts.
 *   The same outing gives the same answer.
 * @throws RangeError for a train without vehicles
 */
export const answer = (outing: Outing, options: AnswerOptions = {}): Answer => answerOuting(outing, options);

/**
 * Works one of the sums in docs/sums.
 *
 * @param id such as `stopping-distance`
 * @param inputs symbol → figure with its unit as people write it, such as `{ speed: '7 mph', grade: '-2 %' }`
 * @returns the results in SI and in words, or the faults: symbol, found, expected. Out of range is a fault, never a
 *   number.
 */
export const sum = (id: string, inputs: Readonly<Record<string, string>>): SumReply =>
  answerSum(id, inputs, 'metric');
