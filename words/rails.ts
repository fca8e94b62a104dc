/** The rail today in words: the rest of the line first, then each stretch that is not like it. */
import { railsToday } from '../engine/outing/rails.ts';
import { tellRail } from './finding.ts';
import { chainage, type Voice } from './voice.ts';

export function tellRails(voice: Voice): string {
  const { outing } = voice;
  const stretches = railsToday(outing).map(
    ({ from, to, state }) => `${tellRail(state)} from ${chainage(voice, from)} to ${chainage(voice, to)}`,
  );
  return [tellRail(outing.conditions.railState), ...stretches].join('; ');
}
