/**
 * How much a run of the tests tries: the push tier on every push, the full tier before a merge and at night.
 * Both keep the same promises on the same seeds; the full tier tries more cases of each.
 *
 * Said once, by the variable TIER, which scripts/test.mjs sets.
 */
export const full = process.env['TIER'] === 'full';

/** Cases to try: so many on a push, so many in full. */
export const runs = (onPush: number, inFull: number): number => (full ? inFull : onPush);
