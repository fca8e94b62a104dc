/** The train that is being begun: its replies, kept on the device, and the answer that grows from them. */
import { batch, computed, effect, signal, untracked } from '@preact/signals';
import { type Asked, asking, telling } from '../../../desk/asked.ts';
import type { FieldKey, Replies } from '../../../desk/new/field.ts';
import { askedWith, type Brought, grow } from '../../../desk/new/make.ts';
import { type Question, questions } from '../../../desk/new/questions.ts';
import { newWord } from '../../../desk/new/say.ts';
import type { Answer } from '../../../engine/answer/types.ts';
import { type FileProblem, readOuting } from '../../../papers/index.ts';
import { keepDraft, keptDraft } from '../../parts/shelf.ts';
import { handWith } from '../../state/hand.ts';
import { settings } from '../../state/session.ts';

export const replies = signal<Replies>({});
export const brought = signal<Brought>({});
export const step = signal<Question>('engine');

export const growth = computed(() => grow(replies.value, settings.value.units, brought.value));
export const askedNow = computed(() => askedWith(step.value, replies.value, brought.value));

export function reply(key: FieldKey, text: string): void {
  replies.value = { ...replies.value, [key]: text };
}

export function clear(): void {
  batch(() => {
    replies.value = {};
    brought.value = {};
    step.value = 'engine';
  });
}

export const stepAfter = (): Question | undefined =>
  questions[questions.findIndex(({ id }) => id === step.value) + 1]?.id;

// ---- the answer that grows

const asked = signal<Asked | null>(null);
/** What the papers that were made cannot hold, as a weight beyond all bounds. */
export const refused = signal<readonly FileProblem[]>([]);
const held = signal<{ readonly id: string; readonly answer: Answer } | null>(null);
const settled = signal(true);

/** The answer to what is written now; null while there is none. */
export const told = computed(() => telling(asked.value, held.value));

/** The word as far as it has grown. */
export const growing = computed(() => ({
  verdict: newWord(growth.value, told.value?.answer.verdict),
  busy: !settled.value && !told.value,
}));

const hand = handWith({
  reply: (id, { answer, last }) =>
    batch(() => {
      if (answer) held.value = { id, answer };
      if (last) settled.value = true;
    }),
  silent: () => undefined,
  died: () => {
    settled.value = true;
  },
});

/** While somebody types, ms. */
const PAUSE = 250;
let pause: ReturnType<typeof setTimeout> | undefined;

async function reckon(paper: Record<string, unknown> | undefined): Promise<void> {
  if (!paper) {
    batch(() => {
      asked.value = null;
      refused.value = [];
      settled.value = true;
    });
    return;
  }
  const read = await readOuting({ path: 'outing', content: JSON.stringify(paper) }, async () => undefined);
  if (paper !== growth.value.paper) return;
  batch(() => {
    refused.value = read.ok ? [] : read.problems;
    asked.value = read.ok ? asking(paper, read.value) : null;
    settled.value = !read.ok;
  });
  if (asked.value) hand.ask(asked.value.id, asked.value.outing);
}

/** While the room is open. @returns what ends it */
export function live(): () => void {
  const ends = [
    effect(() => {
      const { paper } = growth.value;
      untracked(() => {
        clearTimeout(pause);
        // What was said before is of another train.
        asked.value = null;
        settled.value = paper === undefined;
        pause = setTimeout(() => void reckon(paper), PAUSE);
      });
    }),
    effect(() => void keepDraft({ replies: replies.value, brought: brought.value })),
  ];
  return () => {
    clearTimeout(pause);
    hand.stop();
    for (const end of ends) end();
  };
}

/** What was begun and not ended, from the device. */
export async function fromDevice(): Promise<void> {
  const kept = await keptDraft();
  if (kept && Object.keys(replies.value).length === 0)
    batch(() => {
      replies.value = kept.replies;
      brought.value = kept.brought;
    });
}
