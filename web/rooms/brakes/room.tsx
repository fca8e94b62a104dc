/** The brakes of the outing that is open. */
import { outingRoom } from '../../parts/outing-room.tsx';
import { BrakesRoom } from './brakes-room.tsx';

export const Room = outingRoom(BrakesRoom);
