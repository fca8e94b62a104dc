/** The rooms behind the door of the train, side by side in each of them. */
import { place } from '../doors.ts';

const rooms = [
  { at: 'train', word: 'The train' },
  { at: 'train/people', word: 'The people' },
  { at: 'crew', word: 'The crew' },
  { at: 'board', word: 'Riders’ board' },
] as const;

export function TrainDoors() {
  const { room, part } = place.value;
  const now = part === '' ? room : `${room}/${part}`;
  return (
    <nav class="within no-print" aria-label="Train and people">
      {rooms.map(({ at, word }) => (
        <a key={at} href={`#${at}`} aria-current={at === now ? 'page' : undefined}>
          {word}
        </a>
      ))}
    </nav>
  );
}
