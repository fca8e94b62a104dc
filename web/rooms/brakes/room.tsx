/** The brakes of the outing that is open. */
import { tried, voice } from '../../state/session.ts';
import { BrakesRoom } from './brakes-room.tsx';

export function Room() {
  return tried.value && voice.value ? <BrakesRoom outing={tried.value} voice={voice.value} /> : null;
}
