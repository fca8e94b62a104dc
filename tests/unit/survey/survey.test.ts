/** Heights that cannot tell how steep the line is: it asks to be levelled. */
import { describe, expect, it } from 'vitest';
import { openOuting } from '../../../engine/outing/open.ts';
import { askSurvey } from '../../../engine/questions/survey/ask.ts';
import type { Line } from '../../../engine/things/line/types.ts';
import { plain } from '../../support/rules.ts';

const says = (heightQuality: Line['heightQuality']) => {
  const outing = plain(1);
  return askSurvey(openOuting({ ...outing, line: { ...outing.line, heightQuality } }));
};

describe('a line whose heights are', () => {
  it.each(['gps', 'assumed'] as const)('%s cannot be told: measure it', (quality) =>
    expect(says(quality)).toMatchObject([
      {
        code: 'heights-poor',
        severity: 'unknown',
        question: 'line',
        facts: { quality },
        measure: 'line.profile',
        sure: 'assumed',
        source: 'survey',
      },
    ]),
  );
  it.each(['levelled', 'taped', 'stated'] as const)('%s is asked nothing', (quality) =>
    expect(says(quality)).toEqual([]),
  );
});
