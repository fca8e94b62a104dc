/** What is true of most of the way is said first. */
import { describe, expect, it } from 'vitest';
import { sentenceParts } from '../../../desk/sentence.ts';
import { answerOnly } from '../../../engine/answer/answer.ts';
import type { Answer } from '../../../engine/answer/types.ts';
import type { DrivenZone } from '../../../engine/questions/speed/types.ts';
import { plain } from '../../support/rules.ts';

const MPH = 0.44704;
const outing = plain(2);
const { length } = outing.line;
const told = answerOnly(outing);

/** The same answer with two zones, on a loop of the line's length: slow between two places, fast on the rest. */
function speeds(from: number, to: number, loop: boolean, planned?: number): string {
  const zone = told.driven?.imperial?.zones.find(({ kind }) => kind === 'run') as DrivenZone;
  const slow = { ...zone, from, to, speed: 4 * MPH };
  const fast = { ...zone, from: to, to: loop ? from : length, speed: 6 * MPH };
  const { metric, imperial } = told.driven as NonNullable<Answer['driven']>;
  const driven = { metric, imperial: { ...imperial, zones: [slow, fast] } } as Answer['driven'];
  const here = { ...outing, plannedSpeed: planned, line: { ...outing.line, loop } } as typeof outing;
  return sentenceParts(
    { ...told, verdict: 'limits', driven },
    { system: 'imperial', wording: 'us', outing: here },
  ).speed;
}

describe('two speeds', () => {
  it('a slow stretch is told after the speed of the rest', () => {
    expect(speeds(100, 130, true)).toMatch(/^no faster than 6 mph, and 4 mph from \d+ ft to \d+ ft$/);
  });
  it('a line that is slow nearly everywhere is told as slow, and where it may be faster', () => {
    expect(speeds(length - 30, length - 60, true)).toMatch(
      /^no faster than 4 mph, but 6 mph from \d+ ft to \d+ ft$/,
    );
    expect(speeds(0, length * 0.6, false)).toMatch(/^no faster than 4 mph, but 6 mph from/);
    expect(speeds(0, length * 0.4, false)).toMatch(/^no faster than 6 mph, and 4 mph from/);
  });
  it('over the origin of a loop it goes round', () => {
    expect(speeds(length - 30, 20, true)).toMatch(
      /^no faster than 6 mph, and 4 mph from \d+ ft round to \d+ ft$/,
    );
  });
});
