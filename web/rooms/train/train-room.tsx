/** Train and people, drawn to scale: the vehicles in their order on one side, who sits where on the other. */
import '../../look/rooms.css';
import './train.css';
import { useEffect } from 'preact/hooks';
import { place } from '../../doors.ts';
import { carried } from '../../parts/drag.ts';
import { Choices } from '../../parts/form/choices.ts';
import { Inks } from '../../parts/inks.tsx';
import { choicesFor } from '../../parts/outing-choices.ts';
import { openShed } from '../../parts/shed.ts';
import { TrainDoors } from '../../parts/train-doors.tsx';
import { problems, voice } from '../../state/session.ts';
import { chosen, lifted, told, train } from './state.ts';
import { ThePeople } from './the-people.tsx';
import { TheTrain } from './the-train.tsx';

export function Room() {
  useEffect(() => {
    void openShed();
    return () => {
      lifted.value = null;
      chosen.value = null;
    };
  }, []);
  if (!train.value || !voice.value) return null;
  const broken = problems.value.length > 0;
  const { part } = place.value;
  return (
    <div class="make-up">
      <Inks />
      <h1 class="unseen">Train and people</h1>
      <TrainDoors />
      {broken && <p>Mend the papers first, or undo: the make-up rests until they can be read.</p>}
      <Choices.Provider value={choicesFor}>
        {part === 'people' ? <ThePeople rests={broken} /> : <TheTrain rests={broken} />}
      </Choices.Provider>
      <p class="unseen" role="status">
        {told.value}
      </p>
      {carried.value && (
        <div
          class="ghost"
          style={{ left: `${carried.value.x}px`, top: `${carried.value.y}px` }}
          aria-hidden="true"
        >
          {carried.value.label}
        </div>
      )}
    </div>
  );
}
