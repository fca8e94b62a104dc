/** What to build, for the outing that is open. */
import { outingRoom } from '../../parts/outing-room.tsx';
import { BuilderRoom } from './builder-room.tsx';

export const Room = outingRoom(BuilderRoom);
