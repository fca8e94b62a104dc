/** Each value that was assumed while reading the papers, as a finding of lowest rank. */
import type { OutingContext } from '../../outing/open.ts';
import type { Finding } from '../finding.ts';
import { makeFinding } from '../make.ts';

export const askAssumptions = ({ outing }: OutingContext): Finding[] =>
  outing.assumptions.map((a) =>
    makeFinding('assumed', 'assumed', 'assumptions', {
      facts: { of: a.of, where: a.where, key: a.key },
      source: a.source,
      sure: 'assumed',
    }),
  );
