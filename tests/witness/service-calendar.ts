/**
 * Service days by a calendar on the wall: somebody goes from the day of the test to today, a square at a time, and says of
 * each whether it ran, stood, or nobody knows. Days are numbers on that calendar; names are compared by their letters and digits.
 */

/** What is written down of a test. */
export interface Card {
  readonly of: string;
  readonly by: string;
  readonly done: number;
  /** So many days of service. */
  readonly service: number;
  /** So many days of the calendar as well, and so many of grace behind them. */
  readonly days?: number;
  readonly grace?: number;
  /** Somebody signs that all runs since are here. */
  readonly allSince?: number;
}

/** A run in somebody's log. */
export interface Run {
  readonly of: readonly string[];
  readonly on: number;
  readonly by: string;
  /** On which day it was written into the log. */
  readonly written: number;
}

export interface Standing {
  readonly word: 'not-yet' | 'stands' | 'grace' | 'unknown' | 'out';
  /** Service days left; absent: nobody can tell. */
  readonly left?: number;
  /** Whether there may be more left: a square of which nobody knows was taken for one on which it ran. */
  readonly more: boolean;
}

const plain = (name: string): string => name.toLowerCase().replace(/[^a-z0-9]/g, '');

export function onCalendar(card: Card, log: readonly Run[], today: number): Standing {
  if (today < card.done) return { word: 'not-yet', more: false };
  const mine = log.filter((run) => run.of.some((name) => plain(name) === plain(card.of)));
  let begun = Number.POSITIVE_INFINITY;
  for (const run of mine) if (run.by === card.by) begun = Math.min(begun, run.written);
  if (card.allSince !== undefined) begun = card.allSince;
  // Whoever signs that all runs are here from a day on that has not come says nothing; nor does a log without a run.
  const silent = mine.length === 0 && (card.allSince === undefined || card.allSince > today);
  let [red, grey] = [0, 0];
  for (let square = card.done; square < today; square++) {
    if (mine.some((run) => run.on === square)) red++;
    else if (silent || square < begun) grey++;
  }
  const late = card.days === undefined ? 0 : today - (card.done + card.days);
  if (red >= card.service) return { word: 'out', left: 0, more: false };
  if (late > (card.grace ?? 0)) return { word: 'out', more: false };
  if (red + grey >= card.service) return { word: 'unknown', more: false };
  return { word: late > 0 ? 'grace' : 'stands', left: card.service - red - grey, more: grey > 0 };
}

const bestFirst = ['stands', 'grace', 'unknown', 'out', 'not-yet'];

/** Of several cards of one test the best counts: by its word, then by the last day that the calendar gives it, then by what is left. */
export function bestOf(cards: readonly Card[], log: readonly Run[], today: number): Standing {
  const ends = ({ done, days }: Card): number =>
    days === undefined ? Number.POSITIVE_INFINITY : done + days;
  const all = cards.map((card) => ({ card, told: onCalendar(card, log, today) }));
  all.sort(
    (a, b) =>
      bestFirst.indexOf(a.told.word) - bestFirst.indexOf(b.told.word) ||
      (ends(a.card) === ends(b.card) ? 0 : ends(b.card) - ends(a.card)) ||
      (b.told.left ?? 0) - (a.told.left ?? 0),
  );
  return all[0].told;
}
