/** What is always in sight: the word, undo, and the five doors. How things are shown lies behind one mark. */
import { useEffect, useRef } from 'preact/hooks';
import type { Asked } from '../../desk/asked.ts';
import { tellVerdict } from '../../words/verdict.ts';
import { doors, rooms } from '../doors.ts';
import { busy, canRedo, canUndo, paper, redo, settings, told, undo } from '../state/session.ts';
import { DoorMark, Mark } from './door-marks.tsx';
import { later } from './later.tsx';
import { noWord } from './no-word.ts';

interface Props {
  /** The room that is open. */
  readonly room: string;
}

export function Head({ room }: Props) {
  // Where a train is begun, neither the word nor its colour is that of the outing that is open.
  const verdict = (room !== 'new' && told.value?.answer.verdict) || 'none';
  return (
    <header class={`head is-${verdict}`}>
      <p class="who">
        <a class="name" href="#answer">
          Heedway
        </a>
        {/* Where a train is begun its own word grows: no other stands above it, nor whose it is. */}
        {room !== 'new' && (
          <>
            <span class="of">{String(paper.value['name'] ?? '')}</span>
            <Invented />
          </>
        )}
      </p>
      {room === 'new' ? <p class="verdict-away">A train of your own</p> : <Word />}
      <div class="tools">
        <button type="button" class="mark" onClick={undo} disabled={!canUndo.value}>
          <Mark of="undo" />
          <span class="unseen">Undo</span>
        </button>
        <button type="button" class="mark" onClick={redo} disabled={!canRedo.value}>
          <Mark of="redo" />
          <span class="unseen">Redo</span>
        </button>
        <Settings />
      </div>
      <Doors room={room} />
    </header>
  );
}

/** The word of the outing on the screen, and what is tried in it; while there is none, why. */
function Word() {
  const now = told.value;
  return (
    <p class={`verdict ${now?.answer.verdict ?? 'none'}`} role="status">
      {now ? tellVerdict(now.answer.verdict) : noWord()}
      {now && busy.value && <span class="busy"> looking for remedies</span>}
      {now && now.asked.trials.length > 0 && <Tried asked={now.asked} />}
    </p>
  );
}

/** Most days nothing is tried. */
const Tried = later<{ readonly asked: Asked }>(async () => (await import('./tried.tsx')).Tried);

function Doors({ room }: Props) {
  const door = rooms.find((r) => r.id === room)?.door;
  return (
    <nav class="doors" aria-label="Rooms">
      {doors.map(({ id, word }) => (
        <a key={id} href={`#${id}`} aria-current={room === id ? 'page' : door === id ? 'true' : undefined}>
          <DoorMark of={id} />
          {word}
        </a>
      ))}
    </nav>
  );
}

/** Units, words and light; shut again by Escape or by a tap elsewhere. */
function Settings() {
  const box = useRef<HTMLDetailsElement>(null);
  useEffect(() => {
    const elsewhere = (e: Event): void => {
      if (box.current?.open && !box.current.contains(e.target as Node)) box.current.open = false;
    };
    addEventListener('pointerdown', elsewhere);
    return () => removeEventListener('pointerdown', elsewhere);
  }, []);
  return (
    <details
      class="settings"
      ref={box}
      onKeyDown={(e) => {
        if (e.key !== 'Escape' || !box.current) return;
        box.current.open = false;
        box.current.querySelector('summary')?.focus();
      }}
    >
      <summary class="mark">
        <Mark of="settings" />
        <span class="unseen">Settings</span>
      </summary>
      <div class="choices-shown">
        <Choices />
      </div>
    </details>
  );
}

function Choices() {
  const set = (part: Partial<typeof settings.value>): void => {
    settings.value = { ...settings.value, ...part };
  };
  const { units, wording, theme } = settings.value;
  return (
    <>
      <label>
        Units{' '}
        <select value={units} onChange={(e) => set({ units: e.currentTarget.value as typeof units })}>
          <option value="imperial">imperial</option>
          <option value="metric">metric</option>
        </select>
      </label>
      <label>
        Words{' '}
        <select value={wording} onChange={(e) => set({ wording: e.currentTarget.value as typeof wording })}>
          <option value="us">US</option>
          <option value="uk">UK</option>
        </select>
      </label>
      <label>
        Light{' '}
        <select value={theme} onChange={(e) => set({ theme: e.currentTarget.value as typeof theme })}>
          <option value="auto">as the device</option>
          <option value="light">light</option>
          <option value="dark">dark</option>
        </select>
      </label>
    </>
  );
}

const Invented = later(async () => (await import('./invented.tsx')).Invented);
