/** What is seen to before a train leaves: as much of it as this train, these people and this hour ask for. */
import type { Outing } from '../../engine/outing/types.ts';
import { askWeather } from '../../engine/questions/host/weather.ts';
import { brakeOf } from '../../engine/things/brake/kinds/index.ts';
import { type Check, checks } from '../../papers/record/fields.ts';

/** Comes on by itself on what breaks away: what a hose-off test shows. */
const comesOn = ({ train }: Outing): boolean =>
  train.vehicles.some((v) =>
    v.brakes.some((gear) => brakeOf(gear.kind).supplyLost(gear).parted === 'applies'),
  );

const asked: Readonly<Record<Check, (outing: Outing) => boolean>> = {
  // On making up or changing a train, or after four hours without air, for a whole railway by law (49 CFR 232.205).
  'brake-test': () => true,
  'hose-off': comesOn,
  signals: ({ riders }) => riders.some(({ duty }) => duty === 'guard'),
  lights: ({ conditions }) => conditions.night,
  briefed: ({ riders }) => riders.some(({ duty }) => duty === 'rider'),
};

export const askedChecks = (outing: Outing): readonly Check[] =>
  checks.filter((check) => asked[check](outing));

/** What of weather and night a host may have a rule for. */
export type Sky = 'lightning' | 'wind' | 'heat' | 'night';

/** What of them nobody has said although the host has a rule: a note on an answer for another day, and asked of who leaves now. */
export const unsaidSky = (outing: Outing, nightSaid: boolean): readonly Sky[] => [
  ...askWeather(outing).flatMap((f): Sky[] => (f.code === 'weather-not-said' ? [f.facts.sign] : [])),
  ...(nightSaid || !hasNightRule(outing) ? [] : (['night'] as const)),
];

/** Rules by which what runs by day may not run by night. */
const hasNightRule = ({ host: { runsAtNight, guardAtNight, mostDrivingAtNight } }: Outing): boolean =>
  runsAtNight?.value === false || guardAtNight?.value === true || mostDrivingAtNight !== undefined;
