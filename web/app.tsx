/** The frame: the answer's word, the rooms, and how everything is shown. */
import { computed, useSignal } from '@preact/signals';
import type { ComponentType } from 'preact';
import { useEffect } from 'preact/hooks';
import { tellTrials } from '../desk/asked.ts';
import { inkSheet } from '../views/strip/ink.ts';
import { tellVerdict } from '../words/finding.ts';
import { Cautions } from './parts/cautions.tsx';
import { later } from './parts/later.tsx';
import { noWord } from './parts/no-word.ts';
import { AnswerRoom } from './rooms/answer/answer-room.tsx';
import {
  busy,
  canRedo,
  canUndo,
  elsewhere,
  fault,
  fresh,
  problems,
  redo,
  settings,
  silent,
  speech,
  told,
  undo,
  unkept,
} from './state/session.ts';

type Load = () => Promise<{ readonly Room: ComponentType }>;

/** The first has a door of its own. */
const rooms: readonly { readonly id: string; readonly title: string; readonly load?: Load }[] = [
  { id: 'new', title: 'New', load: () => import('./rooms/new/new-room.tsx') },
  { id: 'answer', title: 'May it leave?' },
  { id: 'train', title: 'Train and riders', load: () => import('./rooms/train/train-room.tsx') },
  { id: 'papers', title: 'Line, rules, day', load: () => import('./rooms/papers/papers-room.tsx') },
  { id: 'brakes', title: 'Brakes', load: () => import('./rooms/brakes/room.tsx') },
  { id: 'balance', title: 'Balance', load: () => import('./rooms/balance/room.tsx') },
  { id: 'couplers', title: 'Couplers', load: () => import('./rooms/couplers/room.tsx') },
  { id: 'parting', title: 'If it parts', load: () => import('./rooms/parting/room.tsx') },
  { id: 'sums', title: 'Sums', load: () => import('./rooms/sums/sums-room.tsx') },
  { id: 'card', title: 'Running card', load: () => import('./rooms/card/card-room.tsx') },
  { id: 'files', title: 'Files', load: () => import('./rooms/files/files-room.tsx') },
];

const here = (): string => location.hash.slice(1).split('/')[0] || 'answer';

export function App() {
  const room = useSignal(here());
  useEffect(() => {
    const moved = (): void => {
      room.value = here();
      document.getElementById('main')?.focus({ preventScroll: true });
      // The word first, whichever room it is.
      scrollTo(0, 0);
    };
    addEventListener('hashchange', moved);
    return () => removeEventListener('hashchange', moved);
  }, []);
  return (
    <>
      <style>{inkSheet('.strip')}</style>
      <a
        class="skip"
        href="#main"
        onClick={(e) => {
          e.preventDefault();
          document.getElementById('main')?.focus();
        }}
      >
        To the answer
      </a>
      <Head room={room.value} />
      <main id="main" tabIndex={-1}>
        {amiss.value && <Notices />}
        <Room id={room.value} />
      </main>
      <footer>
        Heedway reckons; it does not license. The host's rules, boiler and local codes and the person in
        charge come first.
        <Version />
      </footer>
      <Cautions />
    </>
  );
}

/** Most days nothing is. */
const amiss = computed(
  () =>
    [fault, unkept, elsewhere].some((said) => said.value !== '') ||
    silent.value ||
    fresh.value ||
    problems.value.length > 0,
);

/** The word of the outing on the screen, and what is tried in it; while there is none, why. */
function Word() {
  const now = told.value;
  const tries = now ? tellTrials(now.asked, speech.value) : [];
  return (
    <p class={`verdict ${now?.answer.verdict ?? 'none'}`} role="status">
      {now ? tellVerdict(now.answer.verdict) : noWord()}
      {now && busy.value && <span class="busy"> looking for remedies</span>}
      {tries.length > 0 && <span class="tried"> tried: {tries.join('; ')}</span>}
    </p>
  );
}

function Head({ room }: { readonly room: string }) {
  return (
    <header>
      <div class="top">
        <a class="name" href="#answer">
          Heedway
        </a>
        <a href="#new">New</a>
        <Word />
        <Invented />
        <div class="tools">
          <button type="button" onClick={undo} disabled={!canUndo.value}>
            Undo
          </button>
          <button type="button" onClick={redo} disabled={!canRedo.value}>
            Redo
          </button>
          <Choices />
        </div>
      </div>
      <nav aria-label="Rooms">
        {rooms.slice(1).map((r) => (
          <a key={r.id} href={`#${r.id}`} aria-current={room === r.id ? 'page' : undefined}>
            {r.title}
          </a>
        ))}
      </nav>
    </header>
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

function Room({ id }: { readonly id: string }) {
  const loaded = useSignal<{ id: string; Room: ComponentType } | null>(null);
  const known = rooms.find((r) => r.id === id);
  useEffect(() => {
    if (known?.load)
      void known.load().then(({ Room: View }) => {
        loaded.value = { id, Room: View };
      });
  }, [id]);
  if (!known?.load) return <AnswerRoom />;
  const View = loaded.value?.id === id ? loaded.value.Room : undefined;
  if (View) return <View />;
  return (
    <section>
      <h1>{known.title}</h1>
      <p>Opening …</p>
    </section>
  );
}

const Invented = later(async () => (await import('./parts/invented.tsx')).Invented);
/** Most days nothing is amiss. */
const Notices = later(async () => (await import('./parts/notices.tsx')).Notices);

/** What does not wait for the answer must not delay it. */
const Version = later(async () => (await import('./parts/version.tsx')).Version);
