/** Where the empty vehicle's weight lies along it. */
import type { Vehicle } from './types.ts';

/** Tare centre of gravity from the front end, m: measured, else the middle. */
export const tareAlong = ({ centreAt, length }: Pick<Vehicle, 'centreAt' | 'length'>): number =>
  centreAt ?? length / 2;
