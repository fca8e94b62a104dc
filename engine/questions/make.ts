/** Making findings. */
import type { Amount } from '../base/quantity.ts';
import { type FindingOf, isSeverity, type Question, type Severity } from './finding.ts';
import { type FactsOf, type FindingCode, isFindingCode } from './findings.ts';

type Details = Partial<Omit<FindingOf<FindingCode>, 'code' | 'severity' | 'question' | 'facts'>> & {
  readonly source: string;
};
/** The facts that its code asks for; where it asks for none they need not be said. */
type WithFacts<C extends FindingCode> =
  Record<never, never> extends FactsOf<C> ? { readonly facts?: FactsOf<C> } : { readonly facts: FactsOf<C> };
/** One of several codes may be made with the same facts. */
type Made<C extends FindingCode> = C extends FindingCode ? FindingOf<C> : never;

/**
 * A finding. One without a code, a severity or finite figures would count as nothing, so it cannot be made.
 * @throws RangeError where code or severity is unknown, or a figure is not a number; a fact may be Infinity
 */
export function makeFinding<C extends FindingCode>(
  code: C,
  severity: Severity,
  question: Question,
  details: Details & WithFacts<C>,
): Made<C> {
  if (!isFindingCode(code)) throw new RangeError(`no finding ${code}`);
  if (!isSeverity(severity)) throw new RangeError(`finding ${code}: no severity ${severity}`);
  const { found, required, margin, facts = {}, where = {}, sum } = details;
  const finite = [found?.si, required?.si, margin, where.from, where.to, where.gap];
  const odd = finite.find((figure) => figure !== undefined && !Number.isFinite(figure));
  if (odd !== undefined) throw new RangeError(`finding ${code}: a figure of ${odd}`);
  const known = [...Object.values<unknown>(facts).map(figureOf), ...Object.values(sum?.inputs ?? {})];
  if (known.some(Number.isNaN)) throw new RangeError(`finding ${code}: a fact that is not a number`);
  // The compiler does not see that facts of the code's own kinds make a finding of it.
  return {
    where: {},
    facts: {},
    sure: 'stated',
    remedies: [],
    ...details,
    code,
    severity,
    question,
  } as unknown as Made<C>;
}

const figureOf = (fact: unknown): number =>
  typeof fact === 'number' ? fact : typeof fact === 'object' ? (fact as Amount).si : 0;

/** Share of what is allowed that is left: 1 − found ÷ allowed. Whatever is over an allowance of nothing is −1. */
export const marginOf = (found: number, allowed: number): number =>
  allowed > 0 ? 1 - found / allowed : found > allowed ? -1 : 0;
