/** The figures of a sentence stand out of it, each with its unit and nothing else. */
import { expect, it } from 'vitest';
import { figured } from '../../../web/parts/figured.ts';

const bold = (words: string): string[] => figured(words).filter((_, i) => i % 2 === 1);

it('speeds, places, counts and forces stand out, with their units', () => {
  const words =
    'No faster than 7 mph, and 4.5 mph from 540 ft to 1,794 ft; at most 5 cars (with 6, at 659 ft the fall pulls 89 lbf), slower with more than 1; 95 ft behind the train ahead; brake no harder than 75 % of full brake.';
  expect(bold(words)).toEqual([
    '7 mph',
    '4.5 mph',
    '540 ft',
    '1,794 ft',
    '5 cars',
    '6',
    '659 ft',
    '89 lbf',
    '1',
    '95 ft',
    '75 %',
  ]);
  expect(figured(words).join('')).toBe(words);
});

it('in metric and in inches with fractions too', () => {
  expect(bold('no faster than 12.5 km/h; lean 3-11/16 in at 20 m; 1 car, 30 kg and 400 N.')).toEqual([
    '12.5 km/h',
    '3-11/16 in',
    '20 m',
    '1 car',
    '30 kg',
    '400 N',
  ]);
});

it('before a colon, a semicolon, a bracket and at the end, and no part of a word', () => {
  expect(bold('keeps 3 mph: cannot tell')).toEqual(['3 mph']);
  expect(bold('(5 mph); 6 ft')).toEqual(['5 mph', '6 ft']);
  expect(bold('the 4th car, 2nd truck, 7in')).toEqual(['7in']);
});
