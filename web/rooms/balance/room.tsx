/** Whether the cars of the train that is open stay up. */
import { tried, voice } from '../../state/session.ts';
import { BalanceRoom } from './balance-room.tsx';

export function Room() {
  return tried.value && voice.value ? <BalanceRoom outing={tried.value} voice={voice.value} /> : null;
}
