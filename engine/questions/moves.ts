/** What is told of the other moves of a route that sets back. */
export const moveFindings = {
  'other-move': { move: 'number', word: ['hold', 'unknown', 'limits'], findings: 'number' },
} as const;

/** What is worse on the way back than on the way out. */
export const wayBackFindings = {
  'way-back': { word: ['hold', 'unknown', 'limits'], reasons: 'count', run: ['engine-leads', 'pushed'] },
} as const;
