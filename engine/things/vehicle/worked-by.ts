/** Who works a brake of which nobody has said so. */
import { type BrakeKind, brakeOf } from '../brake/kinds/index.ts';
import type { BrakeGear, Vehicle } from './types.ts';

/**
 * Brakes through the train and surge brakes answer the driver's handle; a brake worked by arm, or of one vehicle
 * alone, answers whoever rides there: the driver on an engine, a tender or beside a driver's seat, the guard on a
 * guard's car, else a rider (common practice, no source).
 */
export function usualWorker(
  kind: BrakeKind,
  role: Vehicle['role'],
  driverSeat: boolean,
): BrakeGear['workedBy'] {
  const { worked } = brakeOf(kind);
  if (worked === 'through' || worked === 'push') return 'driver';
  if (role === 'engine' || role === 'tender' || driverSeat) return 'driver';
  return role === 'guard' ? 'guard' : 'rider';
}
