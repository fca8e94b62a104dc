/** Measuring what is assumed, for the outing that is open. */
import { outingRoom } from '../../parts/outing-room.tsx';
import { MeasureRoom } from './measure-room.tsx';

export const Room = outingRoom(MeasureRoom);
