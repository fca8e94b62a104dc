/** What becomes of what rolls, after a parting or a failure. */
export const rollFacts = {
  outcome: 'outcome',
  speed: 'speed',
  met: 'speed',
  time: 'time',
  way: 'length',
  side: ['back', 'on'],
  share: 'ratio',
  leaks: 'yes or no',
  'place?': 'name',
  /** It goes over only if the weight of these lies as high as it may: nobody measured it. */
  'unmeasured?': 'name',
} as const;

const roll: typeof rollFacts & { readonly gaps: 'number' } = { ...rollFacts, gaps: 'number' };

/** What this question can find, and the kinds of the facts. */
export const partFindings = {
  'tail-runs-away': roll as typeof roll,
  'tail-rolls-back': roll as typeof roll,
  'tail-stands': roll as typeof roll,
  'head-unmanned': {},
  'parting-held-by-chains': { gaps: 'number', way: ['steady', 'stretch', 'snatch'] },
  'held-train-runs-away': roll as typeof roll,
  'held-train-rolls-back': roll as typeof roll,
} as const;
