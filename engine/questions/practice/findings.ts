/** What this question can find, and the kinds of the facts. */
export const practiceFindings = {
  'child-alone': { riders: 'name', company: ['youth', 'nobody'], 'age?': 'number' },
  'infant-aboard': { riders: 'name', age: 'number' },
  'more-people-than-seats': {},
  'seat-shared': { riders: 'name', seat: 'name', 'lap?': 'name' },
  'coupler-heights-differ': {
    other: 'name',
    front: 'length',
    rear: 'length',
    overrides: 'yes or no',
    others: 'number',
  },
  'coupler-height-unknown': { vehicles: 'name' },
  'coupler-kinds-differ': { other: 'name', front: 'name', rear: 'name', others: 'number' },
  'no-chain-on-grade': { gaps: 'number', at: 'place' },
  'dark-at-night': { light: ['headlight', 'taillight'], known: 'yes or no' },
  'brake-not-tried': { said: 'yes or no' },
} as const;
