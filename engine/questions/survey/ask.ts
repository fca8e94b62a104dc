/**
 * Of heights from a receiver or by guess nobody can tell how steep the line is: it asks to be levelled. Of a track that a route
 * runs over is asked what the rest of the line tells and it does not: that nothing is told is not that nothing stands there.
 */
import type { OutingContext } from '../../outing/open.ts';
import type { Outing } from '../../outing/types.ts';
import type { Line, Unstated } from '../../things/line/types.ts';
import type { Finding } from '../finding.ts';
import { makeFinding } from '../make.ts';

export const askSurvey = ({ outing, line }: OutingContext): Finding[] => [
  ...poor(outing),
  ...untold(line, outing.whole?.name),
];

function poor({ line }: Outing): Finding[] {
  if (line.heightQuality !== 'gps' && line.heightQuality !== 'assumed') return [];
  return [
    makeFinding('heights-poor', 'unknown', 'line', {
      facts: { quality: line.heightQuality },
      source: 'survey',
      sure: 'assumed',
      measure: 'line.profile',
    }),
  ];
}

/** Its field: of the line itself, or of a track. */
const fieldOf = (main: boolean, lacks: Unstated['lacks']): string => `line.${main ? '' : 'tracks.'}${lacks}`;

/** Each once, however often the route comes over the track. */
function untold({ unstated = [] }: Line, whole: string | undefined): Finding[] {
  const first = unstated.filter(
    (u, i) =>
      unstated.findIndex((o) => o.track === u.track && o.lacks === u.lacks && o.near === u.near) === i,
  );
  return first.map(({ track, lacks, near, from, to }) => {
    const asked = {
      where: { from, to },
      source: 'survey',
      measure: fieldOf(track === whole, lacks),
    } as const;
    return near === undefined
      ? // A rail that nobody calls worse counts as the day's, as everywhere.
        makeFinding('track-not-told', lacks === 'railStretches' ? 'notes' : 'unknown', 'line', {
          ...asked,
          facts: { track, lacks },
        })
      : makeFinding('structure-beside-track', 'unknown', 'line', {
          ...asked,
          facts: { track, structure: near },
        });
  });
}
