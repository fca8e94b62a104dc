/** The builder's questions beside the page, as they are written: what cannot be read, or what to build. */
import { readDesign, type WrittenDesign } from '../desk/brake-design.ts';
import { askChain } from '../desk/builder/chain.ts';
import { askCylinder, usualDesign } from '../desk/builder/cylinder.ts';
import { askSeat, readSeat, type WrittenSeat } from '../desk/builder/seat-height.ts';
import type { Task } from '../desk/builder/task.ts';
import type { Outing } from '../engine/outing/types.ts';
import type { Voice } from '../words/voice.ts';

export type BuildQuestion =
  | { readonly kind: 'chain' }
  | { readonly kind: 'seat'; readonly written: WrittenSeat }
  | { readonly kind: 'cylinder'; readonly written: WrittenDesign }
  /** What stands in the cylinder's fields at first. */
  | { readonly kind: 'usual' };

export interface BuildAsk {
  readonly build: BuildQuestion;
  readonly outing: Outing;
  readonly speech: Omit<Voice, 'outing'>;
}

/** What to build, or what cannot be read. */
export type Reckoned = Task | readonly string[];

export interface BuildReply {
  readonly made?: Reckoned;
  readonly usual?: WrittenDesign;
  readonly fault?: string;
  readonly last: true;
}

export function build(ask: BuildAsk): BuildReply {
  try {
    if (ask.build.kind === 'usual') return { usual: usualDesign(ask.outing, ask.speech.system), last: true };
    const made = reckon(ask.build, { ...ask.speech, outing: ask.outing });
    return { made: 'said' in made ? { said: made.said, tables: made.tables } : made, last: true };
  } catch (error) {
    return { fault: error instanceof Error ? error.message : String(error), last: true };
  }
}

function reckon(question: Exclude<BuildQuestion, { kind: 'usual' }>, voice: Voice): Reckoned {
  const { outing } = voice;
  if (question.kind === 'chain') return askChain(outing, voice);
  if (question.kind === 'seat') {
    const read = readSeat(question.written, outing);
    return read.ok ? askSeat(read.outing, read.ask, voice) : read.problems.map((p) => p.message);
  }
  const { reaction, ...rest } = question.written;
  const asked = reaction === undefined || reaction.trim() === '' ? rest : question.written;
  const read = readDesign(asked, outing.conditions.reaction);
  if (!read.ok) return read.problems.map((p) => p.message);
  return askCylinder(outing, read.request, voice, { vacuum: question.written.vacuum !== undefined });
}
