/**
 * The engine and the witness over many random outings. Runs by itself in a bundle (tests/support/bundled.ts),
 * where the inner loops run at their own speed.
 */
import { compareBalance, leanToldTooGreat, type Odds } from './balance.ts';
import { checkBraking } from './braking.ts';
import { engineWord, stopWord } from './engine.ts';
import { randomOuting, WIDE, withTwoGears } from './outings.ts';
import { checkRooms, type Hands, type Overrun } from './rooms.ts';
import { apart, compareStops, tooShort } from './stops.ts';
import { compareTails, tailApart } from './tails.ts';

/** Something to be repeated: the seed of the outing, and what was found. */
export interface Repeat {
  readonly seed: number;
  readonly what: string;
}

type Tally = { -readonly [K in keyof Odds]: Odds[K] };

export interface Survey {
  outings: number;
  /** Outings that may leave: go, or go within limits. */
  mayLeave: number;
  stops: {
    compared: number;
    never: number;
    apart: Repeat[];
    errors: number[];
    twoGears: number;
    twoGearsApart: Repeat[];
    twoGearsShort: Repeat[];
  };
  rooms: { places: number; aboveCeiling: Repeat[] };
  /** Places where too many hands overrun, of outings that may leave, by what they overrun. */
  overruns: Record<Overrun['of'], Repeat[]>;
  /** The same where the outing holds, but nothing said of stopping or brakes forbids. */
  overrunsElsewhere: Record<Overrun['of'], Repeat[]>;
  braking: {
    stops: number;
    stopsLate: Repeat[];
    stopsBeyondMargin: Repeat[];
    slows: number;
    slowsLate: Repeat[];
  };
  /** Errors in m, of those that both have come to rest. */
  tails: { compared: number; near: number; apart: Repeat[]; errors: number[] };
  balance: {
    checks: number;
    /** Worst of each outing. */
    wheels: number[];
    leans: number[];
    along: Tally;
    over: Tally;
  };
}

const none = (): Survey['overruns'] => ({ limit: [], room: [], gap: [], unstated: [], 'speeds up': [] });

/** @param wide besides so many of the wider outings */
export function survey(first: number, last: number, hands: Hands = {}, wide = 0): Survey {
  const all: Survey = {
    outings: 0,
    mayLeave: 0,
    stops: {
      compared: 0,
      never: 0,
      apart: [],
      errors: [],
      twoGears: 0,
      twoGearsApart: [],
      twoGearsShort: [],
    },
    rooms: { places: 0, aboveCeiling: [] },
    overruns: none(),
    overrunsElsewhere: none(),
    braking: { stops: 0, stopsLate: [], stopsBeyondMargin: [], slows: 0, slowsLate: [] },
    tails: { compared: 0, near: 0, apart: [], errors: [] },
    balance: {
      checks: 0,
      wheels: [],
      leans: [],
      along: { draws: 0, worse: 0 },
      over: { draws: 0, worse: 0 },
    },
  };
  for (let seed = first; seed <= last; seed++) look(seed, all, hands);
  for (let seed = WIDE + 1; seed <= WIDE + wide; seed++) look(seed, all, hands);
  return all;
}

function count(into: Tally, more: Odds): void {
  into.draws += more.draws;
  into.worse += more.worse;
}

function look(seed: number, all: Survey, hands: Hands): void {
  const word = engineWord(randomOuting(seed));
  const repeat = (found: object): Repeat => ({ seed, what: JSON.stringify(found) });
  all.outings++;
  const leaves = word.answer.verdict === 'go' || word.answer.verdict === 'limits';
  if (leaves) all.mayLeave++;
  for (const c of compareStops(seed, word, 12)) {
    all.stops.compared++;
    if (apart(c)) all.stops.apart.push(repeat(c));
    if (c.witness === Infinity) all.stops.never++;
    else if (c.engine < Infinity) all.stops.errors.push(Math.abs(c.engine / c.witness - 1));
  }
  if (seed % 10 === 7) {
    for (const c of compareStops(seed, stopWord(withTwoGears(word.outing)), 6)) {
      all.stops.twoGears++;
      if (apart(c)) all.stops.twoGearsApart.push(repeat(c));
    }
    // of blocks that speed does not change beside others that it does: shared as at a stand they are mostly told too long.
    for (const c of compareStops(seed, stopWord(withTwoGears(word.outing, 'composition')), 6))
      if (tooShort(c)) all.stops.twoGearsShort.push(repeat(c));
  }
  if (seed % 3 === 0) count(all.balance.over, leanToldTooGreat(seed, word));
  const forbids = word.answer.findings.some(
    ({ severity, question }) =>
      (severity === 'forbids' || severity === 'unknown') &&
      (question === 'stopping' || question === 'brakes'),
  );
  const rooms = checkRooms(seed, word, hands);
  all.rooms.places += rooms.places;
  if (rooms.aboveCeiling.length > 0) all.rooms.aboveCeiling.push(repeat(rooms.aboveCeiling));
  const into = leaves ? all.overruns : forbids ? undefined : all.overrunsElsewhere;
  for (const o of rooms.overruns) into?.[o.of].push(repeat(o));
  for (const b of checkBraking(seed, word, hands)) {
    const { braking } = all;
    if (b.kind === 'stop') braking.stops++;
    else braking.slows++;
    if (b.beyondMargin) braking.stopsBeyondMargin.push(repeat(b));
    if (b.late) (b.kind === 'stop' ? braking.stopsLate : braking.slowsLate).push(repeat(b));
  }
  for (const c of compareTails(seed, word, 2)) {
    all.tails.compared++;
    if (c.near) all.tails.near++;
    else {
      if (tailApart(c, seed)) all.tails.apart.push(repeat(c));
      const { engine, witness } = c;
      if (engine.ends === 'rests' && witness.ends === 'rests')
        all.tails.errors.push(Math.abs(engine.way - witness.way));
    }
  }
  const { checks, wheel, lean, along } = compareBalance(seed, word);
  all.balance.checks += checks;
  all.balance.wheels.push(wheel);
  all.balance.leans.push(lean);
  count(all.balance.along, along);
}
