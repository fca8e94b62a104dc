/** A value that a question took for what nobody stated, said where it acts. */
import type { Quantity } from '../../base/quantity.ts';
import type { FindingOf } from '../finding.ts';
import { makeFinding } from '../make.ts';

/** @param key of its row in data/defaults.json; @param where names of what it stands in for: of none nothing is said */
export function taken(
  key: string,
  of: string,
  { source }: Pick<Quantity, 'source'>,
  where: readonly string[],
): FindingOf<'assumed'>[] {
  if (where.length === 0) return [];
  return [
    makeFinding('assumed', 'assumed', 'assumptions', {
      facts: { of, where: [...new Set(where)].join(', '), key },
      source: source ?? 'common practice, no source',
      sure: 'assumed',
    }),
  ];
}
