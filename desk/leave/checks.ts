/** What is seen to before a train leaves: as much of it as this train, these people and this hour ask for. */
import type { Outing } from '../../engine/outing/types.ts';
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
