/** Heights that were not levelled limit what can be said of grades. */
import type { OutingContext } from '../../outing/open.ts';
import type { Finding } from '../finding.ts';
import { makeFinding } from '../make.ts';

export function askSurvey({ outing: { line } }: OutingContext): Finding[] {
  if (line.heightQuality !== 'gps' && line.heightQuality !== 'assumed') return [];
  return [
    makeFinding('heights-poor', 'limits', 'line', {
      facts: { quality: line.heightQuality },
      source: 'survey',
      sure: 'assumed',
      measure: 'line.profile',
    }),
  ];
}
