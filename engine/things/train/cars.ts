/** Which vehicles count as cars: all that are neither engine nor tender. */
import type { Vehicle } from '../vehicle/types.ts';

export const isCar = (vehicle: Vehicle): boolean => vehicle.role === 'car' || vehicle.role === 'guard';
