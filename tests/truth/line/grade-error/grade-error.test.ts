import { describe, expect, it } from 'vitest';
import { assumedValues } from '../../../../data/index.ts';
import { gradeError, levelledGradeError } from '../../../../engine/things/line/grade-error.ts';

const { levelled, taped, stated, gps } = assumedValues.gradeSpread;

describe('error of a grade', () => {
  it('a receiver: 7.0 m is 3.0 % over 330 m and 1.0 % over 1 km', () => {
    expect(Math.abs(gradeError(7, 330) - 0.03)).toBeLessThan(0.0005);
    expect(Math.abs(gradeError(7, 1000) - 0.01)).toBeLessThan(0.0005);
    expect(gps.high).toBeCloseTo(gradeError(7, 330), 3);
  });

  it('a line of levels, 12 mm per root km: 1.2 mm in 10 m', () => {
    expect(levelledGradeError(0.012, 10)).toBeCloseTo(0.00012, 8);
    // With the staff read to 5 mm at both ends.
    expect(levelledGradeError(0.012, 10) + gradeError(0.005, 10)).toBeLessThan(levelled.high);
  });

  it('a hand level, 0.2 degrees, lies within the row of a taped survey', () => {
    expect(Math.tan((0.2 * Math.PI) / 180)).toBeLessThan(taped.high);
    expect(stated).toMatchObject({ low: taped.low, high: taped.high });
  });

  it('is laid alike to both sides', () => {
    for (const q of [levelled, taped, stated, gps]) expect(q.low).toBe(-q.high);
  });
});
