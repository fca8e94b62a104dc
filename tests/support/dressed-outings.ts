/**
 * Random outings with host's rules, places, sights and conditions laid on, and their answers. Runs by itself in
 * a bundle too (tests/support/bundled.ts), where thousands of whole answers are quick.
 */

import { screenText } from '../../cli/check-text.ts';
import { sentenceParts } from '../../desk/sentence.ts';
import { firstAnswer, told } from '../../engine/answer/answer.ts';
import { answerOuting } from '../../engine/answer/complete.ts';
import { countCars } from '../../engine/answer/counts.ts';
import { inquire, type OpenInquiry } from '../../engine/answer/inquiry.ts';
import { isCleared, withRemedies } from '../../engine/answer/remedies.ts';
import type { Answer } from '../../engine/answer/types.ts';
import type { Outing } from '../../engine/outing/types.ts';
import type { RailState } from '../../engine/things/rail.ts';
import { drawer, randomLine, randomOuting } from './random-outings.ts';

const states: RailState[] = ['dry', 'damp', 'wet', 'greasy', 'sanded'];

export function dressed(seed: number): Outing {
  const draw = drawer(seed + 77);
  // Short lines, so that thousands of whole answers are quick.
  const base = { ...randomOuting(seed), line: randomLine(draw, draw(0.005, 0.06), draw(0, 1) < 0.5, 450) };
  const { length } = base.line;
  const at = (): number => draw(0, length);
  const a = draw(0, length * 0.8);
  return {
    ...base,
    line: {
      ...base.line,
      places: [
        { id: 'st', name: 'Station', kind: 'station', at: at(), stop: true },
        { id: 'si', name: 'Signal', kind: 'signal', at: at(), sight: draw(5, 80), stop: false },
      ],
      sights: [{ from: a, to: a + draw(5, length * 0.2), distance: draw(5, 90), direction: 'both' }],
      speedLimits: [
        { from: a, to: Math.min(length, a + 20), speed: draw(0.5, 3), why: 'curve', source: 'made up' },
      ],
    },
    host: {
      name: 'made up',
      speed: { value: draw(1, 6), source: 'made up' },
      leastGap: { value: draw(5, 60), source: 'made up' },
      mostCars: { value: Math.floor(draw(1, 12)), source: 'made up' },
    },
    conditions: { ...base.conditions, railState: states[Math.floor(draw(0, 5))] },
    ...(draw(0, 1) < 0.5 ? { plannedSpeed: draw(0.5, 6) } : {}),
  };
}

/** Few samples and a coarse grid: for laws about the shape of an answer, not its last digit. */
const quick = { step: 1, samples: 40, couplerRuns: 3 };

export const quickInquiry = (outing: Outing): OpenInquiry => inquire(outing, quick);

export const quickAnswer = (outing: Outing): Answer => firstAnswer(quickInquiry(outing));

/** With all counts and remedies. */
export const wholeAnswer = (outing: Outing): Answer => answerOuting(outing, quick);

/** With the counts of today's rail. */
export const countedAnswer = (outing: Outing): Answer => {
  const inquiry = quickInquiry(outing);
  return told(inquiry, { ...firstAnswer(inquiry), cars: countCars(inquiry, [outing.conditions.railState]) });
};

export { firstAnswer, isCleared, screenText, sentenceParts, withRemedies };
