import type { OutingContext } from '../../outing/open.ts';

/** The id of a vehicle by its place in the train. */
export const idOf = ({ outing }: OutingContext, vehicle: number): string => outing.train.vehicles[vehicle].id;
