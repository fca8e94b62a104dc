/** What this question can find, and the kinds of the facts. */
export const clearanceFindings = {
  'strikes-structure': {
    structure: 'name',
    side: ['left', 'right', 'over'],
    beyond: 'length',
    'sway?': 'length',
    others: 'number',
  },
  'rider-strikes-structure': { structure: 'name', side: ['left', 'right', 'over'], others: 'number' },
  'little-room-beside': {
    structure: 'name',
    side: ['left', 'right', 'over'],
    'sway?': 'length',
    others: 'number',
  },
  'within-arms-reach': { structure: 'name', others: 'number' },
  'platform-gap': { platform: 'name', side: ['left', 'right'], others: 'number' },
  'platform-step': { platform: 'name', way: ['up', 'down'], others: 'number' },
  'platform-not-measured': { vehicles: 'name' },
  'frame-too-long-for-curve': {},
  'siding-too-short': { siding: 'name', length: 'length' },
  'siding-not-measured': { siding: 'name', vehicles: 'name' },
  'track-not-measured': { track: 'name', lacks: ['frogNumber', 'lead', 'width', 'curve'], vehicles: 'name' },
  'trains-do-not-pass': { track: 'name', along: 'length', stands: 'name', passes: 'name' },
  'reach-between-trains': { track: 'name' },
  'body-not-measured': { vehicles: 'name' },
  'structures-not-measured': { places: 'number' },
} as const;
