/** The five doors of the house and the rooms behind each, by the task that brings somebody there. */

import { signal } from '@preact/signals';

export type Door = 'answer' | 'train' | 'line' | 'tools' | 'mine';

export interface RoomAt {
  readonly id: string;
  readonly door: Door;
  readonly title: string;
}

export const doors: readonly { readonly id: Door; readonly word: string }[] = [
  { id: 'answer', word: 'Answer' },
  { id: 'train', word: 'Train' },
  { id: 'line', word: 'Line' },
  { id: 'tools', word: 'Tools' },
  { id: 'mine', word: 'Papers' },
];

export const rooms: readonly RoomAt[] = [
  { id: 'answer', door: 'answer', title: 'May it leave?' },
  { id: 'card', door: 'answer', title: 'Running card' },
  { id: 'leave', door: 'answer', title: 'Leave' },
  { id: 'train', door: 'train', title: 'Train and people' },
  { id: 'line', door: 'line', title: 'Line and rules' },
  { id: 'tools', door: 'tools', title: 'Tools' },
  { id: 'measure', door: 'tools', title: 'Measure' },
  { id: 'builder', door: 'tools', title: 'Build' },
  { id: 'brakes', door: 'tools', title: 'Brakes' },
  { id: 'balance', door: 'tools', title: 'Balance' },
  { id: 'couplers', door: 'tools', title: 'Couplers' },
  { id: 'fit', door: 'tools', title: 'Does it fit?' },
  { id: 'parting', door: 'tools', title: 'If it parts' },
  { id: 'sums', door: 'tools', title: 'Sums' },
  { id: 'mine', door: 'mine', title: 'My papers' },
  { id: 'inspect', door: 'train', title: 'Inspect' },
  { id: 'incident', door: 'line', title: 'Incidents' },
  { id: 'crew', door: 'train', title: 'Crew' },
  { id: 'board', door: 'train', title: 'Riders’ board' },
  { id: 'due', door: 'mine', title: 'Due' },
  { id: 'records', door: 'mine', title: 'Records' },
  { id: 'evidence', door: 'mine', title: 'Evidence pack' },
  { id: 'new', door: 'mine', title: 'New train and line' },
];

/** Addresses of before, which stand in links and bookmarks. */
const moved: ReadonlyMap<string, string> = new Map([
  ['papers', 'line'],
  ['files', 'mine'],
]);

export interface Place {
  readonly room: string;
  /** What follows the room in the address: `people` of `#train/people`. */
  readonly part: string;
}

/** A link that carries an outing, until it is opened. */
export const linked = signal('');

/** Where the address leads; from one that has moved on to the new one. */
function read(): Place {
  if (location.hash.startsWith('#code=')) {
    linked.value = location.hash;
    // Not to be opened again with the page, nor left in its history.
    history.replaceState(null, '', '#answer');
  }
  const [id = '', ...rest] = location.hash.slice(1).split('/');
  const now = moved.get(id);
  if (now !== undefined) history.replaceState(null, '', `#${[now, ...rest].join('/')}`);
  return { room: now ?? (id || 'answer'), part: rest[0] ?? '' };
}

export const place = signal<Place>(read());
export const arrive = (): void => {
  place.value = read();
};
