/** Do the safety chains hold what parts? */

import type { OutingContext } from '../../outing/open.ts';
import { bestRail } from '../../outing/rails.ts';
import type { BrakedGroup } from '../../things/brake/force.ts';
import { gapLoads } from '../couplers/loads.ts';
import type { Findings } from '../question.ts';
import { type ChainRow, chainRow } from './row.ts';
import { chainFindings } from './say.ts';

export function askChains(context: OutingContext, brakes: readonly BrakedGroup[]): Findings<ChainRow[]> {
  const { outing, line, loaded } = context;
  const adhesion = outing.assumed.adhesion[bestRail(context, outing.conditions.railState)];
  const rows = gapLoads(line, loaded, brakes, adhesion, outing.assumed.engineHeight).map((load, gap) =>
    chainRow(context, load, gap),
  );
  return { findings: chainFindings(context, rows), data: rows };
}
