/** Pull and push in the couplings, and the chains, of the train that is open. */
import { outingRoom } from '../../parts/outing-room.tsx';
import { CouplersRoom } from './couplers-room.tsx';

export const Room = outingRoom(CouplersRoom, {
  title: 'Couplers and chains',
  words: 'One vehicle by itself has no coupling to ask about.',
});
