/** What helps where a vehicle is loaded, or led round a curve, beyond what it is rated for. */
import type { Outing } from '../../outing/types.ts';
import { fewerCars, leaveOne } from '../changes.ts';
import type { Family, Remedies } from '../family.ts';
import { fewerOnBoard } from '../host/remedies.ts';

/** Whoever has no seat stays on the platform for the next trip: all of them, for one alone clears nothing. */
const nextTrip = ({ riders }: Outing): Family[] => {
  const leave = riders.filter((r) => r.vehicle === undefined || r.seat === undefined).map((r) => r.id);
  return leave.length === 0 ? [] : [{ size: 1, changes: [{ kind: 'fewer-riders', leave }] }];
};

export const ratingsRemedies: Remedies = {
  'rider-not-seated': nextTrip,
  'train-longer-than-line': (outing) => [fewerCars(outing, 4)],
  'car-overloaded': fewerOnBoard,
  'axle-overloaded': fewerOnBoard,
  'seat-overloaded': fewerOnBoard,
  'curve-too-tight': (outing, finding) => [leaveOne(outing, finding, 4)],
};
