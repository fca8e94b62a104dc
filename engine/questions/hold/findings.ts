/** What this question can find, and the kinds of the facts. */
const standing = { everybody: 'force', riders: ['hold', 'do not hold'] } as const;

export const holdFindings = {
  'does-not-hold': standing as typeof standing,
  'holds-only-while-brake-is-tight': standing as typeof standing,
  'no-parking-brake': {},
} as const;
