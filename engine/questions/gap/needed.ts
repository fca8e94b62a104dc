/**
 * Gap that a train needs to the train ahead, m: its cautious stop and the margin kept, never less than the host's.
 *
 * @param stop cautious stop, m; Infinity: the brake does not hold
 * @param margin kept to whatever it must stop short of, m
 * @param least the host's rule, m; absent: it has none
 */
export const gapNeeded = (stop: number, margin: number, least = 0): number => Math.max(least, stop + margin);
