/** What of hours a host may limit. */
export const hourLimits = [
  'mostOnDuty',
  'mostDriving',
  'mostDrivingAtNight',
  'mostWithoutBreak',
  'leastRest',
  'restAfterFullTurn',
  'mostInDay',
  'mostInWeek',
  'mostDays',
] as const;

/** What this question can find, and the kinds of the facts. */
export const crewFindings = {
  'out-of-hours': { who: 'name', limit: hourLimits as typeof hourLimits },
  'hours-not-said': { who: 'name', limit: hourLimits as typeof hourLimits },
  'not-fit-to-work': { who: 'name', says: ['sober', 'fit'] },
  'not-declared': { who: 'name', says: ['sober', 'fit'] },
  'crew-too-young': { who: 'name', duty: ['driver', 'guard', 'lookout'], age: 'number' },
  'crew-age-not-said': { who: 'name', duty: ['driver', 'guard', 'lookout'] },
  'nobody-beside': { who: 'name', age: 'number' },
  'no-lookout': { posts: 'name' },
  'signals-not-said': {},
  'drivers-signals-not-said': { least: 'time', most: 'time' },
} as const;
