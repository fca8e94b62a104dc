/** What is told of the other moves of a route that sets back. */
export const moveFindings = {
  'other-move': { move: 'number', word: ['hold', 'unknown', 'limits'], findings: 'number' },
} as const;
