/**
 * The way back: on a line with two ends a train that goes out comes back, and what it climbed it then goes down. All other
 * questions are asked of the same train run the other way; what is no worse than on the way out is not told twice.
 * The engine leads unless the outing says otherwise (common practice, no source).
 */
import { amount } from '../base/quantity.ts';
import { wayBack } from '../outing/moves.ts';
import type { Outing } from '../outing/types.ts';
import { type Finding, severities, type Verdict } from '../questions/finding.ts';
import { makeFinding } from '../questions/make.ts';
import { wayBackFindings } from '../questions/moves.ts';
import type { Care, Part, Question } from '../questions/question.ts';
import { inquire, type OpenInquiry } from './inquiry.ts';
import { ranked, verdictOf, weighs } from './verdict.ts';

/** @param others all questions but this one */
export const wayBackOf = (others: readonly Question<unknown>[]): Question<null> => ({
  id: 'wayBack',
  reads: [...new Set<Part>([...others.flatMap((o) => o.reads), 'direction', 'moves', 'turned', 'wayBack'])],
  findings: wayBackFindings,
  ask: ({ context: { written }, care, of }) => {
    const worse = worseOnTheWayBack(written, others, care, (q) => of(q).findings);
    const word = verdictOf(worse);
    if (word === 'go') return { findings: [], data: null };
    return { findings: [backFinding(written, word, worse)], data: null };
  },
});

/** What the way back finds that the way out does not, or not as bad. */
export function worseOnTheWayBack(
  written: Outing,
  others: readonly Question<unknown>[],
  care: Care,
  found: (question: Question<unknown>) => readonly Finding[],
): Finding[] {
  const outing = wayBack(written);
  if (!outing) return [];
  const back: OpenInquiry = inquire(outing, care);
  return ranked(
    others.flatMap((question) => {
      const out = found(question);
      return back.of(question).findings.filter((f) => !out.some((known) => noBetter(known, f)));
    }),
  );
}

/** Said of the same thing, as strongly, with no more to spare. */
const noBetter = (known: Finding, other: Finding): boolean =>
  known.code === other.code &&
  known.where.vehicle === other.where.vehicle &&
  known.measure === other.measure &&
  severities.indexOf(known.severity) <= severities.indexOf(other.severity) &&
  (known.margin ?? 0) <= (other.margin ?? 0);

/** Without a margin of its own: what this way itself finds is told before it. */
function backFinding(outing: Outing, word: Exclude<Verdict, 'go'>, worse: readonly Finding[]): Finding {
  const these = worse.filter(({ severity }) => severity === weighs[word]);
  const speeds = these.flatMap(({ found }) => (found?.kind === 'speed' ? [found.si] : []));
  return makeFinding('way-back', weighs[word], 'line', {
    facts: {
      word,
      reasons: amount(these.length, 'count'),
      run: outing.wayBack === 'pushed' ? 'pushed' : 'engine-leads',
    },
    ...(word === 'limits' && speeds.length > 0 ? { found: amount(Math.min(...speeds), 'speed') } : {}),
    source: 'the same questions, asked of the way back',
    measure: 'outing.wayBack',
  });
}
