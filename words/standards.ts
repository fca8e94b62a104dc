/** What a host's sheet speaks of, by name. */
import type { StandardKey } from '../engine/outing/types.ts';

export const standardNames: Readonly<Record<StandardKey, string>> = {
  backToBack: 'back to back',
  backVariation: 'variation of back to back',
  wheelCheck: 'wheel check',
  flangeThickness: 'flange thickness',
  flangeHeight: 'flange height',
  treadHollow: 'hollow of the tread',
  wheelWidth: 'wheel width',
  flangeAngle: 'flange angle',
  treadTaper: 'taper of the tread',
  couplerHeight: 'coupler height',
  couplerHeightLoaded: 'coupler height as loaded',
  couplerSwing: 'swing of the coupler',
  couplerHold: 'hold of the coupler',
  bodyWidth: 'width',
  bodyHeight: 'height',
  vehicleLength: 'length',
  trainLength: 'length of the train',
  axleLoad: 'axle load',
  leastRadius: 'least radius',
};
