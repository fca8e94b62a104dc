/** Heights of a loop may fail to close by this much per root of its length, m/√m (a taped hand-level survey). */
export const MISCLOSURE = 0.02;
