/** What this question can find, and the kinds of the facts. */
export const humpFindings = {
  'part-strikes-track': {
    part: 'name',
    lie: ['crest', 'sag'],
    height: 'length',
    rise: 'length',
    sink: 'length',
    others: 'number',
  },
  'low-parts-not-measured': { lie: ['crest', 'sag'], others: 'number' },
  'wheel-lifts-on-hump': { group: 'name', lie: ['crest', 'sag'], versine: 'length', others: 'number' },
} as const;
