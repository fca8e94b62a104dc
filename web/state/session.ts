/**
 * The session: one outing as plain JSON with its history, the way it is shown, what is being tried, and what is
 * told of it.
 */

import { batch, computed, signal, untracked } from '@preact/signals';
import { type Asked, asking, type Told, type Trial, telling } from '../../desk/asked.ts';
import type { Answer } from '../../engine/answer/types.ts';
import type { Caution } from '../../engine/motion/scenario.ts';
import type { Change } from '../../engine/outing/change.ts';
import type { TimedOuting } from '../../engine/outing/open.ts';
import type { Outing } from '../../engine/outing/types.ts';
import type { FileProblem } from '../../papers/problem.ts';
import { readOuting } from '../../papers/read.ts';
import type { Voice } from '../../words/voice.ts';
import type { Reply } from '../reckoning.ts';
import { handWith } from './hand.ts';
import type { Settings } from './settings.ts';

export type Json = Record<string, unknown>;
export const paper = signal<Json>({});
const past = signal<readonly Json[]>([]);
const future = signal<readonly Json[]>([]);
/**
 * Which sheet a paper is, by the paper: what is written on it is the same sheet, undone or not. Of one that was opened
 * before sheets were told apart: none.
 */
const sheets = new WeakMap<Json, string>();
export const sheetOf = (json: Json): string => sheets.get(json) ?? '';

/** The paper is another sheet than whatever lies here. */
export function another(json: Json, sheet: string = Math.random().toString(36).slice(2)): void {
  sheets.set(json, sheet);
}
export const settings = signal<Settings>({
  units: 'imperial',
  wording: 'us',
  theme: 'auto',
  cautioned: false,
});
/** What the paper was last read as; of another paper than the one here until that one is read. */
const read = signal<{ readonly paper: Json | null; readonly problems: readonly FileProblem[] }>({
  paper: null,
  problems: [],
});
export const problems = computed(() => read.value.problems);
/** The paper here is not read yet: in a moment it is asked about, or cannot be. */
export const reading = computed(() => read.value.paper !== paper.value);
/** The outing of the last paper that could be read: for the rooms in which papers are written. */
export const outing = signal<Outing | null>(null);
export const trials = signal<readonly Trial[]>([]);

/** What the browser could not keep, and so would be lost. */
export const unkept = signal('');

/** A newer version lies ready to be taken. */
export const fresh = signal(false);

/** What was done in another tab, as far as it is to be said. */
export const elsewhere = signal('');

/** How everything is said. */
export const speech = computed<Omit<Voice, 'outing'>>(() => ({
  system: settings.value.units,
  wording: settings.value.wording,
}));
/** The last outing that could be read, as tried. */
export const tried = computed<Outing | null>(() => trials.value[trials.value.length - 1]?.to ?? outing.value);
export const voice = computed<Voice | null>(() =>
  tried.value ? { ...speech.value, outing: tried.value } : null,
);
/** The steps that can be undone: another list after each. */
export const steps = computed(() => past.value);
export const canUndo = computed(() => past.value.length > 0);
export const canRedo = computed(() => future.value.length > 0);

/** What makes changes is loaded with the first of them: the answer does not need it. */
export async function tryOut(change: Change): Promise<void> {
  const from = tried.value;
  const { trying } = await import('../../desk/trying.ts');
  if (from && from === tried.value) trials.value = [...trials.value, ...trying(from, [change])];
}

export const undoTrial = (): void => {
  trials.value = trials.value.slice(0, -1);
};

/** What is tried is written into the paper: one step to undo. */
export async function keepTrials(): Promise<void> {
  const now = asked.value;
  const from = now?.trials[0]?.from;
  if (!now || !from) return;
  const { changedPaper } = await import('../../papers/changed.ts');
  if (asked.value?.id === now.id) change(changedPaper(now.paper, from, now.outing) as Json);
}

const MOST_STEPS = 200;

/** The field in which somebody is typing: all that they type there is one step to undo. */
let typing = '';
export const typed = (): void => {
  typing = '';
};

/** Change the paper; the step can be undone. */
export function change(next: Json): void {
  typed();
  if (next === paper.value) return;
  put(next);
}

function put(next: Json, sameStep = false): void {
  if (!sheets.has(next)) sheets.set(next, sheetOf(paper.value));
  batch(() => {
    if (!sameStep) {
      past.value = [...past.value.slice(-MOST_STEPS), paper.value];
      future.value = [];
    }
    paper.value = next;
    trials.value = [];
    elsewhere.value = '';
  });
}

/** Put in by itself, as part of the step before: nothing takes it out. */
export const putUnasked = (next: Json): void => put(next, true);

export function undo(): void {
  const last = past.value[past.value.length - 1];
  if (!last) return;
  typed();
  future.value = [paper.value, ...future.value];
  past.value = past.value.slice(0, -1);
  paper.value = last;
  trials.value = [];
  elsewhere.value = '';
}

export function redo(): void {
  const [next, ...rest] = future.value;
  if (!next) return;
  typed();
  past.value = [...past.value, paper.value];
  future.value = rest;
  paper.value = next;
  trials.value = [];
  elsewhere.value = '';
}

/** A paper that another tab has kept, put together with what stood here. */
export function takeFromElsewhere(next: Json, theirs?: Json): void {
  for (const json of [next, theirs]) if (json) sheets.set(json, sheetOf(paper.value));
  batch(() => {
    past.value = [...past.value.slice(-MOST_STEPS), theirs ?? paper.value];
    future.value = [];
    paper.value = next;
    trials.value = [];
    elsewhere.value = theirs
      ? 'The same was changed in another tab: what you wrote here stands, Undo brings back the other.'
      : 'Changed in another tab: it is taken over here, with what you wrote.';
  });
}

/** Another sheet, opened in another tab: it lies here too. */
export function openedElsewhere(next: Json, sheet: string, wrote: boolean): void {
  another(next, sheet);
  put(next);
  elsewhere.value = `Another outing was opened in another tab, and lies here too.${wrote ? ' What you had written lies in Papers.' : ''}`;
}

/** The paper with the value at a path replaced; `undefined` removes it. */
export function edited(json: unknown, path: readonly (string | number)[], value: unknown): unknown {
  const [key, ...rest] = path;
  if (key === undefined) return value;
  if (Array.isArray(json)) {
    const copy = [...json];
    if (rest.length === 0 && value === undefined) copy.splice(Number(key), 1);
    else copy[Number(key)] = edited(copy[Number(key)], rest, value);
    return copy;
  }
  const copy: Json = { ...((json as Json | undefined) ?? {}) };
  const next = edited(copy[key], rest, value);
  if (next === undefined) delete copy[key];
  else copy[key] = next;
  return copy;
}

export const edit = (path: readonly (string | number)[], value: unknown): void =>
  change(edited(paper.value, path, value) as Json);

/** As `edit`, while it is being typed: kept at once, and one step with what was typed there before. */
export function editTyping(path: readonly (string | number)[], value: unknown): void {
  const here = path.join('/');
  put(edited(paper.value, path, value) as Json, here === typing);
  typing = here;
}

// ---- reading

/** Each paper is read once. */
export async function readPaper(): Promise<void> {
  const json = paper.value;
  if (json === untracked(() => read.value.paper)) return;
  const found = await readOuting({ path: 'outing', content: JSON.stringify(json) }, async () => undefined);
  if (paper.value !== json) return;
  batch(() => {
    if (found.ok) outing.value = found.value;
    read.value = { paper: json, problems: found.ok ? [] : found.problems };
  });
}

/** A paper that was read elsewhere, with what is tried on it. */
export function openTried(json: Json, as: Outing, tries: readonly Trial[]): void {
  batch(() => {
    change(json);
    outing.value = as;
    read.value = { paper: json, problems: [] };
    trials.value = tries;
  });
}

// ---- asking and telling

interface Held {
  readonly id: string;
  /** The outing with the times of its brakes, as the worker reckons them. */
  readonly timed: TimedOuting | undefined;
  /** What stands for one stop in a hundred, as the worker found it. */
  readonly caution: Caution | undefined;
  /** Absent until its first stage is there. */
  readonly answer: Answer | undefined;
  /** Everything is told: counts and remedies too. */
  readonly whole: boolean;
}

/** The outing on the screen as it is asked about; null until its paper is read, and while it cannot be. */
export const asked = computed<Asked | null>(() =>
  outing.value && read.value.paper === paper.value && read.value.problems.length === 0
    ? asking(paper.value, outing.value, trials.value)
    : null,
);
const untried = computed(() =>
  asked.value && outing.value && trials.value.length > 0 ? asking(paper.value, outing.value) : asked.value,
);

/** The newest answers, each under the identity of its outing: of the one asked about, and of it without trials. */
const held = signal<readonly Held[]>([]);
const heldOf = (id: string | undefined): Held | undefined => held.value.find((h) => h.id === id);
const tell = (of: Asked | null): Told | null => {
  const { id, answer } = heldOf(of?.id) ?? {};
  return telling(of, id !== undefined && answer ? { id, answer } : null);
};

/** The answer to the outing on the screen; null while there is none. All that is said of it is drawn from this. */
export const told = computed(() => tell(asked.value));
/** The same without what is tried. */
export const before = computed(() => tell(untried.value));
/** The outing on the screen with the times of its brakes. */
export const timed = computed(() => heldOf(asked.value?.id)?.timed ?? null);
export const caution = computed(() => heldOf(asked.value?.id)?.caution ?? null);

/** Why there is no answer, or no whole answer, to the outing of that identity. */
const halted = signal<{ readonly id: string; readonly why: string } | null>(null);
export const fault = computed(() =>
  halted.value && halted.value.id === asked.value?.id ? halted.value.why : '',
);
export const busy = computed(
  () => asked.value !== null && fault.value === '' && heldOf(asked.value?.id)?.whole !== true,
);
const quiet = signal(false);
/** Whoever reckons has said nothing for a while. */
export const silent = computed(() => quiet.value && busy.value);

const hand = handWith({
  reply: (id, reply) => batch(() => hear(id, reply)),
  silent: (is) => {
    quiet.value = is;
  },
  died: (id) =>
    halt(id, 'The check has stopped over this outing, and there is no answer. Your work is kept.'),
});

function hear(id: string, { timed, caution, answer, fault, last }: Reply): void {
  if (fault !== undefined) return halt(id, `The check met a fault, and there is no answer: ${fault}`);
  const old = heldOf(id);
  // The first stage of one that is reckoned again says less than what is known already.
  const best = answer && (answer.cars.length > 0 || !old?.answer) ? answer : old?.answer;
  const others = held.value.filter((h) => h.id !== id && h.id === untried.value?.id);
  held.value = [
    ...others,
    {
      id,
      timed: timed ?? old?.timed,
      caution: caution ?? old?.caution,
      answer: best,
      whole: last,
    },
  ];
}

/** What was said of it is taken back. */
function halt(id: string, why: string): void {
  batch(() => {
    held.value = held.value.filter((h) => h.id !== id);
    halted.value = { id, why };
  });
}

export function ask(now: Asked | null): void {
  if (!now || heldOf(now.id)?.whole) return;
  halted.value = null;
  hand.ask(now.id, now.outing);
}

export const askAgain = (): void => ask(asked.value);

/** Stopped by hand: what is told already of this outing stays, as far as it goes. */
export function stop(): void {
  const now = asked.value;
  hand.stop();
  if (now)
    halted.value = {
      id: now.id,
      why: told.value
        ? 'Stopped: remedies, and perhaps counts, were not looked for.'
        : 'Stopped: there is no answer to this outing.',
    };
}
