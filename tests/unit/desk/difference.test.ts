/** What changed, in a line: only what is told of both. */
import { describe, expect, it } from 'vitest';
import { type Standing, tellDifference } from '../../../desk/figures.ts';

const limits: Standing = {
  verdict: 'limits',
  word: 'go within limits',
  speed: '7 mph, 4 mph',
  cars: '6 cars',
  gap: '120 ft',
};
const hold: Standing = { verdict: 'hold', word: 'hold', speed: 'none', cars: '4 cars', gap: 'none' };

describe('what changed', () => {
  it('says the word first, and no speed or gap of a train that may not leave', () => {
    expect(tellDifference(limits, hold)).toBe('go within limits → hold; 6 cars → 4 cars');
    expect(tellDifference(hold, limits)).toBe('hold → go within limits; 4 cars → 6 cars');
  });
  it('says what is otherwise under the same word, and that nothing is', () => {
    expect(tellDifference(limits, { ...limits, speed: '6 mph, 4 mph', gap: '130 ft' })).toBe(
      'go within limits, as before; 7 mph, 4 mph → 6 mph, 4 mph; 120 ft → 130 ft behind',
    );
    expect(tellDifference(limits, { ...limits })).toBe('go within limits, as before');
  });
  it('says nothing of counts that are still reckoned', () => {
    expect(tellDifference(limits, { ...limits, cars: undefined })).toBe('go within limits, as before');
  });
});
