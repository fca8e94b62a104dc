/** What this question can find, and the kinds of the facts. */
export const ratingFindings = {
  'car-overloaded': {},
  'axle-overloaded': { group: 'name' },
  'seat-overloaded': { rider: 'name', seat: 'name' },
  'rider-not-seated': { rider: 'name' },
  'curve-too-tight': {},
  'grade-beyond-range': {},
  'train-longer-than-line': { loop: 'yes or no' },
} as const;
