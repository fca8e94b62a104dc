/** Whether the cars of the train that is open stay up. */
import { outingRoom } from '../../parts/outing-room.tsx';
import { BalanceRoom } from './balance-room.tsx';

export const Room = outingRoom(BalanceRoom);
