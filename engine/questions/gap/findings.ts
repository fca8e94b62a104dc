/** What this question can find, and the kinds of the facts. */
export const gapFindings = {
  'gap-needed': { at: 'place', speed: 'speed' },
} as const;
