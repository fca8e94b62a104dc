/** The frame: the answer's word, the rooms, and how everything is shown. */
import { computed, useSignal } from '@preact/signals';
import type { ComponentType } from 'preact';
import { useEffect } from 'preact/hooks';
import { inkSheet } from '../views/strip/ink.ts';
import { arrive, linked, place, rooms } from './doors.ts';
import { Cautions } from './parts/cautions.tsx';
import { Head } from './parts/head.tsx';
import { later } from './parts/later.tsx';
import { AnswerRoom } from './rooms/answer/answer-room.tsx';
import { elsewhere, fault, fresh, problems, silent, unkept } from './state/session.ts';

type Load = () => Promise<{ readonly Room: ComponentType }>;

/** The answer's own is there at once. */
const views: Readonly<Record<string, Load>> = {
  card: () => import('./rooms/card/card-room.tsx'),
  train: () => import('./rooms/train/train-room.tsx'),
  line: () => import('./rooms/line/line-room.tsx'),
  tools: () => import('./rooms/tools/tools-room.tsx'),
  brakes: () => import('./rooms/brakes/room.tsx'),
  balance: () => import('./rooms/balance/room.tsx'),
  couplers: () => import('./rooms/couplers/room.tsx'),
  parting: () => import('./rooms/parting/room.tsx'),
  sums: () => import('./rooms/sums/sums-room.tsx'),
  mine: () => import('./rooms/mine/mine-room.tsx'),
  new: () => import('./rooms/new/new-room.tsx'),
};

/** An outing in the address; what opens it is loaded then. */
function openLinked(): void {
  const link = linked.value;
  if (link === '') return;
  linked.value = '';
  void import('./parts/door.ts').then(({ openLink }) => openLink(link));
}

/** Files may be dropped anywhere: the papers open, and say what they are. */
const carry = (e: DragEvent): void => {
  if (e.dataTransfer?.types.includes('Files')) e.preventDefault();
};
function dropped(e: DragEvent): void {
  const files = [...(e.dataTransfer?.files ?? [])];
  if (files.length === 0) return;
  e.preventDefault();
  location.hash = '#mine';
  void import('./parts/door.ts').then(({ openFiles }) => openFiles(files));
}

export function App() {
  useEffect(() => {
    openLinked();
    const moved = (): void => {
      arrive();
      openLinked();
      document.getElementById('main')?.focus({ preventScroll: true });
      // The word first, whichever room it is.
      scrollTo(0, 0);
    };
    addEventListener('hashchange', moved);
    addEventListener('dragover', carry);
    addEventListener('drop', dropped);
    return () => {
      removeEventListener('hashchange', moved);
      removeEventListener('dragover', carry);
      removeEventListener('drop', dropped);
    };
  }, []);
  const { id, door, title } = rooms.find((r) => r.id === place.value.room) ?? rooms[0];
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
      <Head room={id} />
      <main id="main" tabIndex={-1}>
        {amiss.value && <Notices />}
        {door === 'tools' && id !== 'tools' && <ToolDoors room={id} />}
        <Room id={id} title={title} />
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

function Room({ id, title }: { readonly id: string; readonly title: string }) {
  const loaded = useSignal<{ id: string; Room: ComponentType } | null>(null);
  const load = views[id];
  useEffect(() => {
    if (load)
      void load().then(({ Room: View }) => {
        loaded.value = { id, Room: View };
      });
  }, [id]);
  if (!load) return <AnswerRoom />;
  const View = loaded.value?.id === id ? loaded.value.Room : undefined;
  if (View) return <View />;
  return (
    <section>
      <h1>{title}</h1>
      <p>Opening …</p>
    </section>
  );
}

/** Most days nothing is amiss. */
const Notices = later(async () => (await import('./parts/notices.tsx')).Notices);
const ToolDoors = later<{ readonly room: string }>(
  async () => (await import('./parts/tool-doors.tsx')).ToolDoors,
);

/** What does not wait for the answer must not delay it. */
const Version = later(async () => (await import('./parts/version.tsx')).Version);
