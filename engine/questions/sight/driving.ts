/** Who drives, and from where: at the front, or behind cars that hide the track. */

import { amount } from '../../base/quantity.ts';
import type { OutingContext } from '../../outing/open.ts';
import { brakeOf } from '../../things/brake/kinds/index.ts';
import { onlyParks } from '../../things/brake/system.ts';
import { carsAheadOfDriver, driverBehind, driverPlaces, placesOf } from '../../things/train/crew.ts';
import type { BrakeGear } from '../../things/vehicle/types.ts';
import type { Finding } from '../finding.ts';
import { makeFinding } from '../make.ts';

const PRACTICE = 'common practice, no source';

export const askDriving = (context: OutingContext): Finding[] => [
  ...driverMissing(context),
  ...propelled(context),
];

function driverMissing({ outing }: OutingContext): Finding[] {
  if (placesOf(outing, 'driver').length > 0) return [];
  const [taken] = driverPlaces(outing);
  return [
    makeFinding('driver-missing', 'unknown', 'stopping', {
      where: { vehicle: outing.train.vehicles[taken].id },
      measure: 'riders.duty',
      sure: 'assumed',
      source: PRACTICE,
    }),
  ];
}

function propelled({ outing, loaded }: OutingContext): Finding[] {
  const ahead = carsAheadOfDriver(outing);
  const { vehicles } = outing.train;
  const rides = placesOf(outing, 'guard').includes(0);
  if (ahead === 0 || (rides && vehicles[0].brakes.some(guardPutsOn))) return [];
  return [
    makeFinding('propelled-without-lookout', 'limits', 'stopping', {
      where: { vehicle: vehicles[0].id },
      found: amount(driverBehind(outing, loaded), 'length'),
      facts: { cars: ahead, lookout: rides ? 'no brake' : 'nobody' },
      source: PRACTICE,
    }),
  ];
}

/** Worked where the guard rides, or let go there: only an automatic brake has a valve that stops the train. */
const guardPutsOn = (gear: BrakeGear): boolean =>
  brakeOf(gear.kind).guardsValve === true || (gear.workedBy !== 'driver' && !onlyParks(gear));
