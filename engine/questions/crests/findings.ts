/** What this question can find, and the kinds of the facts. */
const apart = {
  other: 'name',
  lie: ['crest', 'sag'],
  higher: ['ahead', 'behind'],
  stated: 'length',
  line: 'length',
  springs: 'length',
  tilt: 'length',
  people: ['seated', 'empty', 'any'],
  others: 'number',
} as const;
const held: typeof apart & { readonly face: 'length' } = { ...apart, face: 'length' };
const unstated: typeof apart & {
  readonly even: 'length';
  readonly 'face?': 'length';
  readonly 'doubt?': 'length';
} = { ...apart, even: 'length', 'face?': 'length', 'doubt?': 'length' };

export const crestFindings = {
  'couplers-slip-by': held as typeof held,
  'coupler-face-unknown': unstated as typeof unstated,
  'coupler-sink-unknown': { other: 'name', lie: ['crest', 'sag'], sink: 'length', others: 'number' },
} as const;
