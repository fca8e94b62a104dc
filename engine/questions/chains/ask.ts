/** Do the safety chains hold what parts? */

import type { OutingContext } from '../../outing/open.ts';
import { bestRail } from '../../outing/rails.ts';
import type { BrakedGroup } from '../../things/brake/force.ts';
import { gapLoads } from '../couplers/loads.ts';
import type { Findings } from '../question.ts';
import { type ChainRow, chainRow } from './row.ts';
import { chainFindings } from './say.ts';

export function askChains(context: OutingContext, brakes: readonly BrakedGroup[]): Findings<ChainRow[]> {
  const { outing } = context;
  const adhesion = outing.assumed.adhesion[bestRail(context, outing.conditions.railState)];
  const rows = gapLoads(context, brakes, adhesion).map(({ load, drawn }, gap) =>
    chainRow(context, load, drawn, gap),
  );
  return { findings: chainFindings(context, rows), data: rows };
}
