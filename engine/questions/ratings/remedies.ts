/** What helps where a vehicle is loaded, or led round a curve, beyond what it is rated for. */
import { fewerCars, leaveOne } from '../changes.ts';
import type { Remedies } from '../family.ts';
import { fewerOnBoard } from '../host/remedies.ts';

export const ratingsRemedies: Remedies = {
  'train-longer-than-line': (outing) => [fewerCars(outing, 4)],
  'car-overloaded': fewerOnBoard,
  'axle-overloaded': fewerOnBoard,
  'seat-overloaded': fewerOnBoard,
  'curve-too-tight': (outing, finding) => [leaveOne(outing, finding, 4)],
};
