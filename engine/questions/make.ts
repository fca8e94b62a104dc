/** Making findings, ranking them, and the answer that they add up to. */
import type { Amount } from '../base/quantity.ts';
import { type FindingCode, findingCodes } from './codes.ts';
import type { Finding, Question, Severity, Verdict } from './finding.ts';

type Details = Partial<Omit<Finding, 'code' | 'severity' | 'question'>> & { readonly source: string };

const rank: Readonly<Record<Severity, number>> = { forbids: 0, unknown: 1, limits: 2, notes: 3, assumed: 4 };

const codes: ReadonlySet<string> = new Set(findingCodes);

/**
 * A finding. One without a code, a severity or finite figures would count as nothing, so it cannot be made.
 * @throws RangeError where code or severity is unknown, or a figure is not a number; a fact may be Infinity
 */
export function makeFinding(
  code: FindingCode,
  severity: Severity,
  question: Question,
  details: Details,
): Finding {
  if (!codes.has(code)) throw new RangeError(`no finding ${code}`);
  if (!isSeverity(severity)) throw new RangeError(`finding ${code}: no severity ${severity}`);
  const { found, required, margin, facts = {}, where = {}, sum } = details;
  const finite = [found?.si, required?.si, margin, where.from, where.to, where.gap];
  const odd = finite.find((figure) => figure !== undefined && !Number.isFinite(figure));
  if (odd !== undefined) throw new RangeError(`finding ${code}: a figure of ${odd}`);
  const known = [...Object.values(facts).map(figureOf), ...Object.values(sum?.inputs ?? {})];
  if (known.some(Number.isNaN)) throw new RangeError(`finding ${code}: a fact that is not a number`);
  return { where: {}, facts: {}, sure: 'stated', remedies: [], ...details, code, severity, question };
}

const figureOf = (fact: Amount | string | number): number =>
  typeof fact === 'object' ? fact.si : typeof fact === 'number' ? fact : 0;

const isSeverity = (severity: string): severity is Severity => Object.hasOwn(rank, severity);

/** Share of what is allowed that is left: 1 − found ÷ allowed. Whatever is over an allowance of nothing is −1. */
export const marginOf = (found: number, allowed: number): number =>
  allowed > 0 ? 1 - found / allowed : found > allowed ? -1 : 0;

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

const words: readonly Verdict[] = ['go', 'limits', 'unknown', 'hold'];

/** Whether one word is a worse one than another. */
export const worse = (a: Verdict, b: Verdict): boolean => words.indexOf(a) > words.indexOf(b);
