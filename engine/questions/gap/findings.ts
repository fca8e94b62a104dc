/** What this question can find, and the kinds of the facts. */
export const gapFindings = {
  'gap-needed': { at: 'place', speed: 'speed' },
  'others-not-said': {},
  'all-out-first': {},
  'kept-apart-not-said': {},
  'kept-apart-by-sight': {},
  'one-train-only': {},
  'kept-apart': { by: ['staff', 'signals', 'word'] },
} as const;
