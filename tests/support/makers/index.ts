/**
 * Outings that together make every finding. Most are made by random outings; what is rare has an outing of its own
 * in a room beside: a new code that chance does not make gets one line there. Runs by itself in a bundle
 * (tests/support/bundled.ts).
 */

import { familiesFor } from '../../../engine/answer/families.ts';
import { remembered } from '../../../engine/base/remember.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import { trackFindings } from '../../../engine/questions/clearance/tracks.ts';
import type { Finding } from '../../../engine/questions/finding.ts';
import type { FindingCode } from '../../../engine/questions/findings.ts';
import { dressed, firstAnswer, quickInquiry } from '../dressed-outings.ts';
import { furnished, unequalTrains } from '../finding-sums.ts';
import { brakes } from './brakes.ts';
import { clearance } from './clearance.ts';
import { couplings } from './couplings.ts';
import { line } from './line.ts';
import { loads } from './loads.ts';
import { people } from './people.ts';
import { wheels } from './wheels.ts';

/** By code the outing that makes it. */
export type Makers = Partial<Record<FindingCode, () => Outing>>;

const own: Makers = { ...people, ...line, ...brakes, ...loads, ...couplings, ...wheels, ...clearance };

/** Codes that have an outing of their own. */
export const ownCodes: readonly string[] = Object.keys(own);

const figure = (n: number): string => String(Number(n.toPrecision(3)));
const flat = (value: unknown): string =>
  typeof value === 'number'
    ? figure(value)
    : typeof value === 'object' && value !== null
      ? Object.values(value).map(flat).join(' ')
      : String(value);

/** Changes that are tried for it: size of the family, how many, and the first of them. */
const tried = (outing: Outing, finding: Finding): string =>
  familiesFor(outing, finding)
    .filter(({ changes }) => changes.length > 0)
    .map(({ size, changes }) => `${size}: ${changes.length} × ${flat(changes[0])}`)
    .join(', ');

/**
 * What is found of a code in its own outing: weight, found of required, margin, where, facts, sum, what to measure, changes
 * tried.
 */
export const found: (code: string) => string[] = remembered(findingsOf);

function findingsOf(code: string): string[] {
  const outing = own[code as FindingCode]?.();
  if (!outing) throw new Error(`no outing of its own: ${code}`);
  return answered(outing)
    .filter((f) => f.code === code)
    .map((f) => {
      const amounts = [f.found, f.required].map((a) => (a === undefined ? '' : figure(a.si)));
      const facts = Object.entries(f.facts).map(([key, fact]) => `${key} ${flat(factOf(fact))}`);
      return [
        code,
        f.severity,
        amounts.join(' of '),
        f.margin === undefined ? '' : figure(f.margin),
        Object.values(f.where).map(flat).join(' '),
        facts.join(', '),
        f.sum?.id ?? '',
        f.measure ?? '',
        tried(outing, f),
      ].join(' | ');
    });
}

/** Of an amount its figure. */
const factOf = (fact: unknown): unknown =>
  typeof fact === 'object' && fact !== null && 'si' in fact ? fact.si : fact;

const made = new Set<string>();
/** What a question finds that its table does not have. */
const undeclared = new Set<string>();

function answered(outing: Outing): readonly Finding[] {
  const inquiry = quickInquiry(outing);
  // What is found by who looks at tracks stands in no answer.
  const all = [...firstAnswer(inquiry).findings, ...trackFindings(inquiry.context)];
  for (const [{ id, findings }, { said }] of inquiry.asked)
    for (const { code } of said.findings) if (!(code in findings)) undeclared.add(`${id}: ${code}`);
  for (const { code } of all) made.add(code);
  return all;
}

/** As many random outings as make all that is common. */
const RANDOM = 40;

interface Made {
  readonly made: ReadonlySet<string>;
  readonly undeclared: ReadonlySet<string>;
}

/**
 * Every code that outings of their own make, and random ones.
 *
 * @param enough when all of these are made, no more random outings are drawn
 */
export function codesMade(enough?: readonly string[]): Made {
  for (const code of ownCodes) found(code);
  for (const outing of unequalTrains(0)) answered(outing);
  const drawn = [dressed, furnished];
  for (let seed = 1; seed <= RANDOM && !enough?.every((code) => made.has(code)); seed++)
    for (const of of drawn) answered(of(seed));
  return { made, undeclared };
}
