/** What happens if the train that is open parts. */
import { outingRoom } from '../../parts/outing-room.tsx';
import { PartingRoom } from './parting-room.tsx';

export const Room = outingRoom(PartingRoom, {
  title: 'If it parts',
  words: 'One vehicle by itself cannot part.',
});
