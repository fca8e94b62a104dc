/** Does it fit: wheels, couplers and bodies of the train that is open, against its line. */
import { outingRoom } from '../../parts/outing-room.tsx';
import { FitRoom } from './fit-room.tsx';

export const Room = outingRoom(FitRoom, {
  title: 'Does it fit?',
  words: 'Without a vehicle and a line there is nothing to compare.',
});
