/** What this question can find, and the kinds of the facts. */
export const sightFindings = {
  'sight-unknown': { sight: 'length', behind: 'length', 'at?': 'place', 'stop?': 'length' },
  'night-sight-unknown': { sight: 'length', behind: 'length', 'at?': 'place', 'stop?': 'length' },
  'sight-taken-as-open': { at: 'place', stop: 'length', others: 'number' },
  'driver-missing': {},
  'propelled-without-lookout': { cars: 'number', lookout: ['nobody', 'no brake'] },
} as const;
