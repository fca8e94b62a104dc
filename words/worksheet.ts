/** Words of a worksheet: what is measured, and how. */
export const measuredNames = {
  backToBack: 'Back to back',
  flangeThickness: 'Flange thickness',
  flangeHeight: 'Flange height',
  hollow: 'Hollow of the tread',
  couplerHeight: 'Coupler: height and face',
  lowPart: 'Low parts',
  outline: 'Outline',
} as const;

export const measuredHow: Readonly<Record<keyof typeof measuredNames, string>> = {
  backToBack:
    'Inside calliper between the backs, level with the axle; roll it on a quarter turn and read again, four times. They may differ little: more is a bent axle or a loose wheel.',
  flangeThickness:
    'Calliper from the back to the front of the flange where it meets the side of the rail; both wheels.',
  flangeHeight: 'Depth gauge from the tread to the tip of the flange; the deeper of the two.',
  hollow: 'Straight edge along the tread from fillet to outer edge, feeler under it; the deeper of the two.',
  couplerHeight:
    'Rule from the top of the rail to the middle of the coupler, empty on level track; again with every seat taken. Face: from top to bottom of what holds the other one.',
  lowPart:
    'Straight edge across both rails, rule from it up to the lowest part: in the middle between the wheels and under both ends.',
  outline:
    'Plumb line beside the vehicle at a known distance from the middle of the track; from it level to the side at each height where it changes.',
};
