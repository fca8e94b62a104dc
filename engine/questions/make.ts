/** Making findings, ranking them, and the answer that they add up to. */
import type { FindingCode } from './codes.ts';
import type { Finding, Question, Severity, Verdict } from './finding.ts';

type Details = Partial<Omit<Finding, 'code' | 'severity' | 'question'>> & { readonly source: string };

export function makeFinding(
  code: FindingCode,
  severity: Severity,
  question: Question,
  details: Details,
): Finding {
  return { where: {}, facts: {}, sure: 'stated', remedies: [], ...details, code, severity, question };
}

const rank: Readonly<Record<Severity, number>> = { forbids: 0, unknown: 1, limits: 2, notes: 3, assumed: 4 };

/** Worst first; among equals the thinner margin first; else in the order found. */
export function ranked(findings: readonly Finding[]): Finding[] {
  return findings
    .map((finding, order) => ({ finding, order }))
    .sort(
      (a, b) =>
        rank[a.finding.severity] - rank[b.finding.severity] ||
        thinner(a.finding, b.finding) ||
        a.order - b.order,
    )
    .map(({ finding }) => finding);
}

function thinner(a: Finding, b: Finding): number {
  if (a.margin === b.margin) return 0;
  if (a.margin === undefined) return 1;
  if (b.margin === undefined) return -1;
  return a.margin - b.margin;
}

/** hold if anything forbids, cannot tell if something that could forbid is missing, then limits, else go. */
export function verdictOf(findings: readonly Finding[]): Verdict {
  const has = (severity: Severity): boolean => findings.some((f) => f.severity === severity);
  if (has('forbids')) return 'hold';
  if (has('unknown')) return 'unknown';
  return has('limits') ? 'limits' : 'go';
}
