/**
 * What is recorded, put into the outing on the screen by itself: what stands, and what is slow, shut or not mended. Nobody
 * has to press for it, and no undoing takes it out: a limit that one forgot to ask for is a train on a shut line.
 */
import { effect } from '@preact/signals';
import { type Recorded, recorded, withShown } from '../../desk/due/shown.ts';
import { clock, type Kept, kept } from './kept.ts';
import { type Json, paper, putUnasked } from './session.ts';

const DAY = /^\d{4}-\d\d-\d\d$/;

/** Made once for a day, not with every letter that somebody writes. */
let made: { readonly of: Kept; readonly day: string; readonly recorded: Recorded } | undefined;

/** As the records have it; the same paper where they say nothing else. */
export function withRecorded(written: Json): Json {
  const of = kept.value;
  if (!of) return written;
  const { date } = written;
  const day = typeof date === 'string' && DAY.test(date) ? date : clock.now().slice(0, 10);
  if (made?.of !== of || made.day !== day) made = { of, day, recorded: recorded(of.entries, of.names, day) };
  return withShown(written, made.recorded) as Json;
}

let heeding = false;

/** From now on, whatever is opened, undone or recorded. */
export function heed(): void {
  if (heeding) return;
  heeding = true;
  let put: { readonly paper: Json; readonly by: Kept | null } | undefined;
  effect(() => {
    const now = paper.value;
    const next = withRecorded(now);
    // Once by the same records: what would never be done is left as it is.
    if (next === now || (put?.paper === now && put.by === kept.value)) return;
    put = { paper: next, by: kept.value };
    putUnasked(next);
  });
}
