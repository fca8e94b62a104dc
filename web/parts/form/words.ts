/** What the fields of files are called on the page, where the key alone would not say it. */
import { trade, type Wording } from '../../../words/voice.ts';

const called: Readonly<Record<string, string>> = {
  across: 'across, left is positive',
  agreedLimits: 'speed limits agreed for today',
  axleLoad: 'most on one axle',
  brakedShare: 'least share of the weight braked',
  centreAt: 'centre of gravity from the front',
  centreHeight: 'centre of gravity above rail',
  chainLoad: 'least working load of chains',
  following: 'train that follows',
  frictionHigh: 'highest friction of flange on rail',
  guardFromCars: 'guard rides from this many cars',
  guardFromRiders: 'guard rides from this many riders',
  hand: 'hand',
  high: 'at most',
  how: 'how it is known',
  leastRadius: 'sharpest curve it takes',
  leastWheelShare: 'least share left on a wheel',
  leverRatio: 'lever ratio',
  low: 'at least',
  most: 'most weight',
  mostRidersPerCar: 'most riders on a car',
  on: 'works on',
  onSupplyLoss: 'when its supply is lost',
  pipeBrokenAfter: 'pipe parted behind',
  sightReverse: 'sight in reverse',
  sights: 'sight distances',
  supplies: 'train brakes it works',
  throughPipe: 'pipes that pass through',
  twist: 'most twist of the track',
  typical: 'typical',
  youngestRider: 'youngest rider, years',
};

/** Camel case to words, trade words as on the reader's shore. */
export function fieldWords(key: string, wording: Wording): string {
  const text = called[key] ?? key.replace(/([A-Z])/g, ' $1').toLowerCase();
  return wording === 'us' ? text : text.replace(/\bgrade\b/g, trade('uk', 'grade'));
}

/** A value of a list of choices, as words. */
export const choiceWords = (value: string | number, wording: Wording): string =>
  value === 'switch' ? trade(wording, 'switch') : String(value).replace(/-/g, ' ');
