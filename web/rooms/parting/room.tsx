/** What happens if the train that is open parts. */
import { tried, voice } from '../../state/session.ts';
import { PartingRoom } from './parting-room.tsx';

export function Room() {
  const outing = tried.value;
  if (!outing || !voice.value) return null;
  if (outing.train.vehicles.length < 2) {
    return (
      <section>
        <h1>If it parts</h1>
        <p>One vehicle by itself cannot part.</p>
      </section>
    );
  }
  return <PartingRoom outing={outing} voice={voice.value} />;
}
