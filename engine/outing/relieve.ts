/** People who take over from each other. */
import type { Rider } from '../things/train/types.ts';
import type { Outing } from './types.ts';

/**
 * Somebody who is listed takes the place and duty of a rider. One who rides already changes places; else whoever is
 * relieved leaves the train. Of a new driver nobody has said that he or she tried this engine's brake.
 */
export function relieve(outing: Outing, rider: string, by: string): Outing {
  const leaves = outing.riders.find(({ id }) => id === rider);
  const comes = outing.crew?.find(({ id }) => id === by);
  if (!leaves || !comes) return outing;
  const aboard = outing.riders.find(({ id }) => id === by);
  const { brakeTried: _tried, ...conditions } = outing.conditions;
  return {
    ...outing,
    riders: outing.riders.flatMap((r): Rider[] => {
      if (r.id === rider) return [{ ...(aboard ?? fromCrew(comes)), ...placeOf(leaves), duty: leaves.duty }];
      return r.id === by ? [{ ...leaves, ...placeOf(r), duty: r.duty }] : [r];
    }),
    conditions: leaves.duty === 'driver' ? conditions : outing.conditions,
  };
}

const placeOf = ({ vehicle, seat }: Rider): Pick<Rider, 'vehicle' | 'seat'> => ({
  ...(vehicle === undefined ? {} : { vehicle }),
  ...(seat === undefined ? {} : { seat }),
});

const fromCrew = ({ id, name, mass, age }: NonNullable<Outing['crew']>[number]): Omit<Rider, 'duty'> => ({
  id,
  name,
  mass,
  ageGroup: age === undefined || age >= 18 ? 'adult' : 'youth',
  ...(age === undefined ? {} : { age }),
});

export const lookOut = (outing: Outing, at: string, by: string): Outing => ({
  ...outing,
  crew: (outing.crew ?? []).map(({ looksOutAt, ...one }) =>
    one.id === by
      ? { ...one, looksOutAt: at }
      : looksOutAt === undefined || looksOutAt === at
        ? one
        : { ...one, looksOutAt },
  ),
});
