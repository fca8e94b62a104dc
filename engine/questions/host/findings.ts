/** What this question can find, and the kinds of the facts. */
export const hostFindings = {
  'gauge-differs': {},
  'too-many-cars': {},
  'too-many-riders': {},
  'too-many-riders-on-car': {},
  'too-many-riders-per-axle': {},
  'chains-missing': {},
  'too-few-cars-braked': { braked: 'number', cars: 'number' },
  'guard-missing': { of: ['cars', 'riders'] },
  'lights-missing': { light: ['headlight', 'taillight'] },
  'seat-too-high': {},
  'rider-too-young': { rider: 'name', age: 'number' },
  'lightning-about': {},
  'too-windy': {},
  'too-hot': {},
  'no-running-at-night': {},
  'weather-not-said': { sign: ['lightning', 'wind', 'heat'] },
} as const;
