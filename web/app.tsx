/** The frame: the answer's word, the rooms, and how everything is shown. */
import { computed, useSignal } from '@preact/signals';
import type { ComponentType } from 'preact';
import { useEffect } from 'preact/hooks';
import { arrive, linked, place, rooms } from './doors.ts';
import { Cautions } from './parts/cautions.tsx';
import { Head } from './parts/head.tsx';
import { later } from './parts/later.tsx';
import { noWord, RECKONING } from './parts/no-word.ts';
import { elsewhere, fault, fresh, problems, silent, told, unkept } from './state/session.ts';

type Load = () => Promise<{ readonly Room: ComponentType }>;

const views: Readonly<Record<string, Load>> = {
  answer: () => import('./rooms/answer/answer-room.tsx'),
  card: () => import('./rooms/card/card-room.tsx'),
  leave: () => import('./rooms/leave/room.tsx'),
  train: () => import('./rooms/train/train-room.tsx'),
  line: () => import('./rooms/line/line-room.tsx'),
  tools: () => import('./rooms/tools/tools-room.tsx'),
  measure: () => import('./rooms/measure/room.tsx'),
  builder: () => import('./rooms/builder/room.tsx'),
  brakes: () => import('./rooms/brakes/room.tsx'),
  balance: () => import('./rooms/balance/room.tsx'),
  couplers: () => import('./rooms/couplers/room.tsx'),
  fit: () => import('./rooms/fit/room.tsx'),
  parting: () => import('./rooms/parting/room.tsx'),
  sums: () => import('./rooms/sums/sums-room.tsx'),
  mine: () => import('./rooms/mine/mine-room.tsx'),
  inspect: () => import('./rooms/inspect/inspect-room.tsx'),
  incident: () => import('./rooms/incident/incident-room.tsx'),
  crew: () => import('./rooms/crew/crew-room.tsx'),
  board: () => import('./rooms/board/board-room.tsx'),
  due: () => import('./rooms/due/room.tsx'),
  evidence: () => import('./rooms/evidence/packing-room.tsx'),
  records: () => import('./rooms/records/room.tsx'),
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
      if (place.value.part !== 'find') document.getElementById('main')?.focus({ preventScroll: true });
      // The word first, whichever room it is.
      scrollTo(0, 0);
    };
    addEventListener('hashchange', moved);
    addEventListener('keydown', toFind);
    addEventListener('dragover', carry);
    addEventListener('drop', dropped);
    return () => {
      removeEventListener('hashchange', moved);
      removeEventListener('keydown', toFind);
      removeEventListener('dragover', carry);
      removeEventListener('drop', dropped);
    };
  }, []);
  const { id, door, title } = rooms.find((r) => r.id === place.value.room) ?? rooms[0];
  return (
    <>
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
        {amiss.value && <Notices room={id} />}
        {wordKnown.value && <Recorded />}
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

/** A stroke of `/` where nothing is written leads to the search. */
function toFind(event: KeyboardEvent): void {
  if (event.key !== '/' || event.ctrlKey || event.metaKey || event.altKey) return;
  if ((event.target as Element).closest('input, textarea, select, dialog, [contenteditable]')) return;
  event.preventDefault();
  if (place.value.room !== 'tools' || place.value.part !== 'find') location.hash = '#tools/find';
  else document.querySelector<HTMLElement>('.find input')?.focus();
}

/** Most days nothing is. */
const amiss = computed(
  () =>
    [fault, unkept, elsewhere].some((said) => said.value !== '') ||
    silent.value ||
    fresh.value ||
    problems.value.length > 0,
);

let spoken = false;
/** There has been a word, or it is plain that there is none: what explains it does not hold up the first one. */
const wordKnown = computed(() => {
  spoken ||= Boolean(told.value) || noWord() !== RECKONING;
  return spoken;
});

function Room({ id, title }: { readonly id: string; readonly title: string }) {
  // All that have come, since one that is left before it comes must not take the place of the next.
  const loaded = useSignal<Readonly<Record<string, ComponentType>>>({});
  const known = wordKnown.value;
  const ready = id !== 'answer' || known;
  useEffect(() => {
    if (ready)
      void views[id]?.().then(({ Room: View }) => {
        loaded.value = { ...loaded.value, [id]: View };
      });
  }, [id, ready]);
  const View = loaded.value[id];
  if (View) return <View />;
  return (
    <section class="title">
      <h1>{title}</h1>
      <p>{ready ? 'Opening …' : noWord()}</p>
    </section>
  );
}

/** Most days nothing is amiss. */
const Notices = later<{ readonly room: string }>(async () => (await import('./parts/notices.tsx')).Notices);
const ToolDoors = later<{ readonly room: string }>(
  async () => (await import('./parts/tool-doors.tsx')).ToolDoors,
);

/** Looked for once the word is there. */
const Recorded = later(async () => (await import('./parts/recorded.tsx')).Recorded);

/** What does not wait for the answer must not delay it. */
const Version = later(async () => (await import('./parts/version.tsx')).Version);
