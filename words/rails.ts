/** The rail and the light today in words. Of rail: the rest of the line first, then each stretch that is not like it. */
import { railsToday } from '../engine/outing/rails.ts';
import type { RailState } from '../engine/things/rail.ts';
import { chainage, distance, type Voice } from './voice.ts';

const states: Readonly<Record<RailState, string>> = {
  dry: 'dry',
  damp: 'damp',
  wet: 'wet',
  greasy: 'greasy',
  sanded: 'dry, sanded',
  'damp-sanded': 'damp, sanded',
  'wet-sanded': 'wet, sanded',
  'greasy-sanded': 'greasy, sanded',
};
export const tellRail = (state: RailState): string => states[state];

export function tellRails(voice: Voice): string {
  const { outing } = voice;
  const stretches = railsToday(outing).map(
    ({ from, to, state }) => `${tellRail(state)} from ${chainage(voice, from)} to ${chainage(voice, to)}`,
  );
  return [tellRail(outing.conditions.railState), ...stretches].join('; ');
}

/** The light of the day that an answer is of: "by daylight", "after dark, 80 ft seen". */
export function tellLight(voice: Voice): string {
  const { night, visibility } = voice.outing.conditions;
  const seen = visibility === undefined ? '' : `, ${distance(voice, visibility, 'down')} seen`;
  return `${night ? 'after dark' : 'by daylight'}${seen}`;
}
