/** What this question can find, and the kinds of the facts. */
export const speedFindings = {
  'speed-limited': { reason: 'speed reason', what: 'name', at: 'place' },
  'cannot-stop': { reason: 'speed reason', what: 'name' },
  'too-slow-to-drive': { reason: 'speed reason', what: 'name' },
  'brake-does-not-hold-fall': { at: 'place', ratio: 'grade', grade: 'grade' },
} as const;
