/** Of heights from a receiver or by guess nobody can tell how steep the line is: it asks to be levelled. */
import type { OutingContext } from '../../outing/open.ts';
import type { Finding } from '../finding.ts';
import { makeFinding } from '../make.ts';

export function askSurvey({ outing: { line } }: OutingContext): Finding[] {
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
