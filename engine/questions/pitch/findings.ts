/** What this question can find, and the kinds of the facts. */
const tips = {
  end: ['front', 'rear'],
  other: 'name',
  way: ['up', 'down'],
  lie: ['crest', 'sag', 'level'],
  bar: 'length',
  line: 'angle',
  stated: 'angle',
  springs: 'angle',
  cant: 'angle',
  others: 'number',
} as const;
const unstated: typeof tips & { readonly doubt: 'angle'; readonly even: 'angle' } = {
  ...tips,
  doubt: 'angle',
  even: 'angle',
};

export const pitchFindings = {
  'coupler-pitch-short': tips as typeof tips,
  'coupler-pitch-unknown': unstated as typeof unstated,
} as const;
