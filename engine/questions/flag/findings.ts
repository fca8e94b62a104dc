/** What this question can find, and the kinds of the facts. */
export const flagFindings = {
  'flag-farther-than-rule': { speed: 'speed', stop: 'length', share: 'ratio', enough: 'yes or no' },
  'flag-too-late': { way: 'length', enough: 'yes or no', share: 'ratio' },
} as const;
