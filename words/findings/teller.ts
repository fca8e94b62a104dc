/** What a finding's words are made of: each code has a function that gives `what` and `why`. */

import type { Amount } from '../../engine/base/quantity.ts';
import type { Finding, FindingOf } from '../../engine/questions/finding.ts';
import type { FactsOf, FindingCode } from '../../engine/questions/findings.ts';
import type { Toward } from '../../units/index.ts';
import { readBy } from '../calliper.ts';
import { chainage, distance, say, trade, type Voice, vehicleName } from '../voice.ts';

export interface Told {
  /** One sentence. */
  readonly what: string;
  /** The reason behind it, one or two sentences. */
  readonly why: string;
}

export type Teller<C extends FindingCode> = (finding: FindingOf<C>, tools: Tools<C>) => Told;

/** Words for every finding: the compiler misses none, and knows the facts of each. */
export type Tellers = { readonly [C in FindingCode]: Teller<C> };

export interface Tools<C extends FindingCode = FindingCode> {
  readonly voice: Voice;
  /** Found and required, rounded to the safe side. */
  readonly found: (toward?: Toward) => string;
  readonly required: (toward?: Toward) => string;
  readonly fact: (name: keyof FactsOf<C>, toward?: Toward) => string;
  readonly vehicle: string;
  readonly where: string;
  readonly at: (metres: number) => string;
  readonly word: (us: Parameters<typeof trade>[1]) => string;
}

export function toolsFor<C extends FindingCode>(finding: FindingOf<C>, voice: Voice): Tools<C> {
  const read = readBy(finding);
  const print = (amount: Amount | undefined, toward: Toward): string =>
    amount === undefined
      ? 'not known'
      : amount.kind === 'length' && read
        ? read(amount.si, voice, toward)
        : amount.kind === 'length' && amount.si >= 1.5
          ? distance(voice, amount.si, toward)
          : say(voice, amount, toward);
  return {
    voice,
    found: (toward = 'nearest') => print(finding.found, toward),
    required: (toward = 'nearest') => print(finding.required, toward),
    fact: (name, toward = 'nearest') => {
      const fact: unknown = finding.facts[name];
      return typeof fact === 'object' ? print(fact as Amount, toward) : String(fact ?? '');
    },
    vehicle: vehicleName(voice, finding.where.vehicle),
    where: whereWords(finding, voice),
    at: (metres) => chainage(voice, metres),
    word: (us) => trade(voice.wording, us),
  };
}

/** The other gaps of a finding that is told of the worst one. */
export const others = ({ facts }: { readonly facts: { readonly others: number } }, are: string): string =>
  facts.others === 0 ? '' : ` ${facts.others} more: ${are}.`;

/** The speed that a limit stays below: one that somebody means to run at, or the highest looked at. */
export const wanted = ({ voice: { outing }, required }: Pick<Tools, 'voice' | 'required'>): string =>
  `${required()} was ${(outing.plannedSpeed ?? outing.host.speed) ? 'wanted' : 'looked at'}`;

/** "Larkfield (40 ft)", "from 620 ft to 810 ft", "car 2". */
export function whereWords({ where }: Pick<Finding, 'where'>, voice: Voice): string {
  const parts: string[] = [];
  if (where.vehicle !== undefined) parts.push(vehicleName(voice, where.vehicle));
  if (where.gap !== undefined) parts.push(`the coupling behind vehicle ${where.gap + 1}`);
  if (where.place !== undefined) parts.push(where.place);
  if (where.from !== undefined && where.to !== undefined) {
    // What holds over a stretch begins early and ends late.
    parts.push(
      where.from === where.to
        ? `at ${chainage(voice, where.from)}`
        : `from ${chainage(voice, where.from, 'down')} to ${chainage(voice, where.to, 'up')}`,
    );
  }
  return parts.join(', ');
}

/** "7 years old", "18 months old": months below two years, as parents say it. @param years ≥ 0 */
export function age(years: number): string {
  const months = Math.floor(years * 12 + 1e-6);
  const [count, unit] = years < 2 ? [months, 'month'] : [Math.floor(years + 1e-9), 'year'];
  return `${count} ${unit}${count === 1 ? '' : 's'} old`;
}
