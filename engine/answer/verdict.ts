/** What findings add up to, and in which order they are told. */
import { type Finding, isSeverity, type Severity, severities, type Verdict } from '../questions/finding.ts';

const rank = ({ severity }: Finding): number => severities.indexOf(severity);

/** What makes the figures beside it idle: told before them, whatever their margins. */
const causes: readonly Finding['code'][] = ['line-closed', 'no-brake-answers'];

const cause = ({ code }: Finding): number => (causes.includes(code) ? 0 : 1);

/** Worst first; among equals a cause, then the thinner margin first; else in the order found. */
export function ranked(findings: readonly Finding[]): Finding[] {
  return findings
    .map((finding, order) => ({ finding, order }))
    .sort(
      (a, b) =>
        rank(a.finding) - rank(b.finding) ||
        cause(a.finding) - cause(b.finding) ||
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

/**
 * hold if anything forbids, cannot tell if something that could forbid is missing, then limits, else go. A finding
 * of no known severity is a fault, and then nothing can be told.
 */
export function verdictOf(findings: readonly Finding[]): Verdict {
  const has = (severity: Severity): boolean => findings.some((f) => f.severity === severity);
  if (has('forbids')) return 'hold';
  if (has('unknown') || !findings.every((f) => isSeverity(f.severity))) return 'unknown';
  return has('limits') ? 'limits' : 'go';
}

/** What makes a word, other than go: how weighty a finding is that tells of one. */
export const weighs = { hold: 'forbids', unknown: 'unknown', limits: 'limits' } as const;

const words: readonly Verdict[] = ['go', 'limits', 'unknown', 'hold'];

/** Whether one word is a worse one than another. */
export const worse = (a: Verdict, b: Verdict): boolean => words.indexOf(a) > words.indexOf(b);
