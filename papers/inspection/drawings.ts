/** Drawings that an item of a list may name: how it is looked at or measured. */
export const drawings = [
  'track-gauge',
  'water-glass',
  'back-to-back',
  'flange-thickness',
  'flange-height',
  'tread-hollow',
  'coupler-height',
  'low-part',
  'outline',
  'stop',
  'pull',
  'pressure-gauge',
  'tilt',
  'blocks',
  'scales',
  'rule',
] as const;
export type DrawingName = (typeof drawings)[number];
