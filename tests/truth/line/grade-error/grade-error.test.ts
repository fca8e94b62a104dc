import { describe, expect, it } from 'vitest';
import { assumedValues } from '../../../../data/index.ts';
import { gradeError, levelledGradeError } from '../../../../engine/things/line/grade-error.ts';
import { printedIn } from '../../../support/measured.ts';

const { levelled, taped, stated, gps } = assumedValues.gradeSpread;

const survey = printedIn(import.meta.url, 'B');
const remembered = printedIn(import.meta.url, 'C');

describe('error of a grade', () => {
  it('a receiver: 7.0 m is 3.0 % over 330 m and 1.0 % over 1 km', () => {
    survey.figure('receiver over 330 m', gradeError(7, 330), 0.03, 0.0005);
    survey.figure('receiver over 1 km', gradeError(7, 1000), 0.01, 0.0005);
    survey.figure('row of a receiver', gps.high, gradeError(7, 330), 0.0005);
  });

  it('a line of levels, 12 mm per root km: 1.2 mm in 10 m', () => {
    survey.figure('levels over 10 m', levelledGradeError(0.012, 10), 0.00012, 5e-9);
    // With the staff read to 5 mm at both ends.
    survey.bound('row of levels', levelledGradeError(0.012, 10) + gradeError(0.005, 10), 0, levelled.high);
  });

  it('a hand level, 0.2 degrees, lies within the row of a taped survey', () => {
    remembered.bound('row of a taped survey', Math.tan((0.2 * Math.PI) / 180), 0, taped.high);
    expect(stated).toMatchObject({ low: taped.low, high: taped.high });
  });

  it('is laid alike to both sides', () => {
    for (const q of [levelled, taped, stated, gps]) expect(q.low).toBe(-q.high);
  });
});
