/**
 * Remedies: the smallest changes that clear a finding, found by search and verified by asking the changed outing
 * again. Nothing is proposed that was not tried, and nothing after which the word is a worse one.
 */
import type { Change } from '../outing/change.ts';
import { toldForSeveral } from '../questions/changes.ts';
import type { Family } from '../questions/family.ts';
import type { Finding, Remedy } from '../questions/finding.ts';
import { wordOf } from './answer.ts';
import { familiesFor } from './families.ts';
import type { OpenInquiry } from './inquiry.ts';
import { questions } from './questions.ts';
import { trialsOn } from './trials.ts';
import type { Answer } from './types.ts';
import { worse } from './verdict.ts';

/** At most this many remedies are kept for a finding. */
const MOST_REMEDIES = 4;

/** What a change leads to, asked as far as it is needed. */
type Run = (change: Change) => OpenInquiry;

/** The answer with remedies on every finding that could be cleared by one. */
export function withRemedies(
  inquiry: OpenInquiry,
  answer: Answer,
  onTried: (changes: number) => void = () => {},
): Answer {
  const run = trialsOn(inquiry, onTried);
  // What nobody can tell is to be measured: only where nothing worse stands is it worth the search.
  const searched = (finding: Finding): boolean =>
    finding.severity === 'unknown' ? answer.verdict === 'unknown' : weight[finding.severity] > 0;
  const findings = answer.findings.map((finding) =>
    searched(finding)
      ? {
          ...finding,
          remedies: remediesFor(finding, answer, familiesFor(inquiry.context.written, finding), run),
        }
      : finding,
  );
  return { ...answer, findings };
}

/** As they are offered: those that better the word first, the smaller before the greater; of many the first four. */
export const asOffered = (found: readonly Remedy[]): Remedy[] =>
  [...found].sort((a, b) => Number(b.betters) - Number(a.betters) || a.size - b.size).slice(0, MOST_REMEDIES);

function remediesFor(
  finding: Finding,
  { verdict: now }: Answer,
  families: readonly Family[],
  run: Run,
): Remedy[] {
  const remedies = (of: readonly Family[]): Remedy[] =>
    of.flatMap((family) => {
      const i = smallestThatClears(finding, family, run);
      if (i === undefined) return [];
      const verdict = wordOf(run(family.changes[i]));
      if (worse(verdict, now)) return [];
      const betters = worse(now, verdict);
      return [{ change: family.changes[i], size: family.size + i, clears: true, betters, verdict }];
    });
  const single = remedies(families);
  const found = single.length === 0 && finding.severity === 'forbids' ? remedies(inPairs(families)) : single;
  return asOffered(found);
}

/** Where no single change clears: the mildest of one family (a better rail, another order) with each change of another. */
export function inPairs(families: readonly Family[]): Family[] {
  const [first, ...others] = families.filter((f) => f.changes.length > 0);
  if (!first || first.changes.length > 1) return [];
  return others
    .filter((f) => f.changes.length > 1)
    .map((f) => ({
      size: first.size + f.size,
      changes: f.changes.map((c): Change => ({ kind: 'together', changes: [first.changes[0], c] })),
    }));
}

/** Which change of the family is the first that clears: by halving, since a larger change of a family clears no less. */
export function smallestThatClears(finding: Finding, { changes }: Family, run: Run): number | undefined {
  if (changes.length === 0) return undefined;
  const clears = (i: number): boolean => isCleared(finding, run(changes[i]));
  if (!clears(changes.length - 1)) return undefined;
  let [low, high] = [-1, changes.length - 1];
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (clears(middle)) high = middle;
    else low = middle;
  }
  return high;
}

const weight = { forbids: 3, unknown: 2, limits: 1, notes: 0, assumed: 0 } as const;

/**
 * Gone, or said less strongly, at the same place and vehicle. Only the questions that can say it are asked; what
 * else the change does, the verdict after it tells.
 */
export function isCleared(finding: Finding, after: OpenInquiry): boolean {
  return !questions
    .filter(({ findings }) => finding.code in findings)
    .flatMap((question) => after.of(question).findings)
    .some(
      (f) =>
        weight[f.severity] > 0 &&
        f.code === finding.code &&
        weight[f.severity] >= weight[finding.severity] &&
        (f.where.vehicle === undefined ||
          f.where.vehicle === finding.where.vehicle ||
          toldForSeveral(finding.facts)) &&
        overlaps(f, finding),
    );
}

function overlaps(a: Finding, b: Finding): boolean {
  const [af, at] = [a.where.from, a.where.to];
  const [bf, bt] = [b.where.from, b.where.to];
  if (af === undefined || at === undefined || bf === undefined || bt === undefined) return true;
  // The hardest place moves a little when the train changes: the same finding elsewhere still counts.
  if (af === at || bf === bt) return true;
  return af <= bt && bf <= at;
}
