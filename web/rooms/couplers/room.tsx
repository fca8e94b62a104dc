/** Pull and push in the couplings, and the chains, of the train that is open. */
import { tried, voice } from '../../state/session.ts';
import { CouplersRoom } from './couplers-room.tsx';

export function Room() {
  const outing = tried.value;
  if (!outing || !voice.value) return null;
  if (outing.train.vehicles.length < 2) {
    return (
      <section>
        <h1>Couplers and chains</h1>
        <p>One vehicle by itself has no coupling to ask about.</p>
      </section>
    );
  }
  return <CouplersRoom outing={outing} voice={voice.value} />;
}
