/** What may be in date or out of it, by its name. */
import type { InDateKind } from '../engine/things/in-date.ts';

export const inDateWords: Readonly<Record<InDateKind, string>> = {
  'boiler-hydraulic': 'boiler, hydraulic test',
  'boiler-steam': 'boiler, steam test',
  'boiler-external': 'boiler, looked at outside',
  'air-reservoir': 'air reservoir',
  'brake-test': 'brake test',
  chains: 'chains',
  'lifting-gear': 'lifting gear',
  'measuring-tool': 'measuring tool',
  track: 'track inspection',
  'first-aid': 'first aid',
  insurance: 'insurance',
  driver: 'driver’s competence',
  guard: 'guard’s competence',
  medical: 'fit for duty, by a doctor',
};
