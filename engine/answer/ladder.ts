/**
 * The ladder: the set of changes that leads to the best word for the least that it asks of people, step by step, with
 * the word after each. A search over sets: down the cheapest way first, so that a good set is there soon; then every
 * other way that could be cheaper. Each set that is told was asked whole, and nothing in it can be left out.
 */
import type { Change } from '../outing/change.ts';
import type { Outing } from '../outing/types.ts';
import type { Family } from '../questions/family.ts';
import type { Finding, Severity, Verdict } from '../questions/finding.ts';
import { firstAnswer, told, wordOf } from './answer.ts';
import { effortOf, worth } from './effort.ts';
import { familiesFor } from './families.ts';
import type { OpenInquiry } from './inquiry.ts';
import { inPairs, smallestThatClears } from './remedies.ts';
import { trialsOn } from './trials.ts';
import { worse } from './verdict.ts';

export interface LadderStep {
  readonly change: Change;
  /** The word after this step and all before it. */
  readonly verdict: Verdict;
  /** The lowest limit of speed after it, m/s; absent: none, or it may not leave. */
  readonly slowest?: number;
}

export interface Ladder {
  readonly from: Verdict;
  /** None where nothing that people can do betters the word. */
  readonly steps: readonly LadderStep[];
  /** After the last step. */
  readonly verdict: Verdict;
  /** What keeps the word from being a better one then, worst first; in the line's own chainage. */
  readonly left: readonly Finding[];
  /** What is to be measured before any of it: nobody can tell without, or what forbids rests on a guess. Worst first. */
  readonly measure: readonly Finding[];
}

/** A set of changes, made one after the other on the outing as it is. */
interface Stand {
  readonly changes: readonly Change[];
  readonly effort: number;
  readonly inquiry: OpenInquiry;
  /** Word of the stand that it was reached from. */
  readonly before: Verdict;
  /** On the way down only what asks least was looked for: the rest is still to be looked at. */
  readonly again?: true;
}

/** No further set is looked at after so many changes tried: the search ends on every outing, and alike on every machine. */
const MOST_TRIED = 80;
const MOST_STEPS = 8;

/** What must go for a better word than this one. */
const inTheWay: Readonly<Record<Verdict, Severity | undefined>> = {
  hold: 'forbids',
  unknown: 'unknown',
  limits: 'limits',
  go: undefined,
};

/** Ladders, each better than the last: to a better word, or to the same with less. The first says at least how it stands. */
export function* ladders(
  inquiry: OpenInquiry,
  onTried: (changes: number) => void = () => {},
): Generator<Ladder> {
  let tried = 0;
  const trials = (from: OpenInquiry) => trialsOn(from, () => onTried(++tried));
  const fromStart = trials(inquiry);
  const asked = (changes: readonly Change[]): OpenInquiry =>
    changes.length === 0 ? inquiry : fromStart({ kind: 'together', changes });
  const from = wordOf(inquiry);
  let best: Stand = { changes: [], effort: 0, inquiry, before: from };
  let least = worth[from];
  let open: Stand[] = [best];
  // While it goes down there may be more within reach: only where it ends is it told.
  let diving = true;
  while (open.length > 0 && tried < MOST_TRIED) {
    const stand = diving ? open[open.length - 1] : leastOf(open);
    if (diving && stand.again) {
      diving = false;
      yield ladderOf(best, from, asked);
      continue;
    }
    open = open.filter((other) => other !== stand);
    if (stand.effort >= least) continue;
    const now = wordOf(stand.inquiry);
    if (worse(now, stand.before)) continue;
    const better = !stand.again && stand.effort + worth[now] < least;
    if (better) {
      best = withoutNeedless(stand, now, asked, inquiry.context.written);
      least = best.effort + worth[now];
    }
    const ends = now === 'go' || stand.changes.length >= MOST_STEPS;
    const next = ends ? [] : ways(stand, now, { spare: least - stand.effort, diving }, trials, asked);
    const arrived = diving && next.length === 0 && (now === 'go' || now === 'limits');
    if (arrived || (better && !diving)) yield ladderOf(best, from, asked);
    if (arrived) diving = false;
    if (diving && next.length > 0) open.push({ ...stand, again: true });
    // The cheapest last: where the dive goes on.
    open.push(...next.sort((a, b) => b.effort - a.effort));
  }
  if (diving) yield ladderOf(best, from, asked);
}

const leastOf = (open: readonly Stand[]): Stand => open.reduce((a, b) => (b.effort < a.effort ? b : a));

/**
 * Where one more change leads: the ways in which one thing that stands in the way is cleared.
 *
 * @param spare effort that is left: what asks as much is no way; on the way down not what asks more than another either
 */
function ways(
  stand: Stand,
  now: Verdict,
  { spare, diving }: { readonly spare: number; readonly diving: boolean },
  trials: (from: OpenInquiry) => (change: Change) => OpenInquiry,
  asked: (changes: readonly Change[]) => OpenInquiry,
): Stand[] {
  const { written } = stand.inquiry.context;
  const targets = firstAnswer(stand.inquiry)
    .findings.filter(({ severity }) => severity === inTheWay[now])
    .map((finding) => ({
      finding,
      families: familiesFor(written, finding).filter((f) => f.changes.length > 0),
    }));
  // Nothing is known against one of the limits: then clearing the others does not better the word.
  if (now === 'limits' && targets.some(({ families }) => families.length === 0)) return [];
  const run = trials(stand.inquiry);
  const effort = (change: Change): number => effortOf(written, change);
  const hardestFirst = [...targets].sort((a, b) => a.families.length - b.families.length);
  for (const { finding, families } of hardestFirst) {
    const clearing = (of: readonly Family[]): Change[] => {
      let most = spare;
      return byLast(of, effort).flatMap((family) => {
        const changes = family.changes.filter((c) => effort(c) < spare && effort(c) <= most);
        const i = smallestThatClears(finding, { ...family, changes }, run);
        if (i === undefined) return [];
        if (diving) most = Math.min(most, effort(changes[i]));
        return [changes[i]];
      });
    };
    const single = clearing(families);
    const found = single.length === 0 && now === 'hold' ? clearing(inPairs(families)) : single;
    if (found.length > 0)
      return found.map((change) => {
        const changes = joined(stand.changes, change);
        const plain = changes.length === stand.changes.length + 1;
        return {
          changes,
          effort: effortOfAll(changes, stand.inquiry.context.written),
          inquiry: plain ? run(change) : asked(changes),
          before: now,
        };
      });
  }
  return [];
}

/** Families that ask little at their most first. */
const byLast = (families: readonly Family[], effort: (change: Change) => number): Family[] => {
  const most = ({ changes }: Family): number => effort(changes[changes.length - 1]);
  return [...families].sort((a, b) => most(a) - most(b));
};

const effortOfAll = (changes: readonly Change[], outing: Outing): number =>
  changes.reduce((sum, change) => sum + effortOf(outing, change), 0);

/** Whatever counts gaps or puts vehicles in order is not the same before and after one is left. */
const byPlace: ReadonlySet<Change['kind']> = new Set(['order', 'chain-size', 'longer-coupling', 'together']);

/** With one change more: cars, or people, left in two steps are left in one, and of two speeds the lower counts. */
function joined(changes: readonly Change[], change: Change): Change[] {
  const at = changes.findLastIndex(({ kind }) => kind === change.kind);
  const past = changes.slice(at + 1);
  if (at < 0 || past.some(({ kind }) => byPlace.has(kind))) return [...changes, change];
  const one = inOne(changes[at], change);
  return one ? [...changes.slice(0, at), ...past, one] : [...changes, change];
}

function inOne(a: Change, b: Change): Change | undefined {
  if (a.kind === 'fewer-cars' && b.kind === 'fewer-cars')
    return { ...b, leave: [...new Set([...b.leave, ...a.leave])] };
  if (a.kind === 'fewer-riders' && b.kind === 'fewer-riders')
    return { ...b, leave: [...new Set([...a.leave, ...b.leave])] };
  if (a.kind === 'slower-everywhere' && b.kind === 'slower-everywhere')
    return { ...b, speed: Math.min(a.speed, b.speed) };
  return undefined;
}

/** Steps that a later one made needless go: the dearest first. */
function withoutNeedless(
  stand: Stand,
  now: Verdict,
  asked: (changes: readonly Change[]) => OpenInquiry,
  outing: Outing,
): Stand {
  let { changes } = stand;
  const dearest = [...changes].sort((a, b) => effortOf(outing, b) - effortOf(outing, a));
  for (const change of dearest) {
    const fewer = changes.filter((c) => c !== change);
    if (fewer.length > 0 && !worse(wordOf(asked(fewer)), now)) changes = fewer;
  }
  return changes === stand.changes
    ? stand
    : { ...stand, changes, effort: effortOfAll(changes, outing), inquiry: asked(changes) };
}

function ladderOf(
  { changes, inquiry }: Stand,
  from: Verdict,
  asked: (changes: readonly Change[]) => OpenInquiry,
): Ladder {
  const steps = changes.map((change, i) => {
    const after = asked(changes.slice(0, i + 1));
    const word = wordOf(after);
    return { change, verdict: word, ...(word === 'limits' ? slowestIn(firstAnswer(after).findings) : {}) };
  });
  const { verdict, findings } = told(inquiry, firstAnswer(inquiry));
  return {
    from,
    steps,
    verdict,
    left: findings.filter(({ severity }) => severity === inTheWay[verdict]),
    measure: measureFirst(asked([])),
  };
}

/** Limits of speed that a driver keeps. */
function slowestIn(findings: readonly Finding[]): Pick<LadderStep, 'slowest'> {
  const speeds = findings.flatMap(({ severity, found }) =>
    severity === 'limits' && found?.kind === 'speed' ? [found.si] : [],
  );
  return speeds.length > 0 ? { slowest: Math.min(...speeds) } : {};
}

/** Of the outing as it is: a change that makes up for a figure is no reason to leave it unknown. */
const measureFirst = (inquiry: OpenInquiry): Finding[] =>
  told(inquiry, firstAnswer(inquiry)).findings.filter(
    ({ severity, measure }) =>
      measure !== undefined && !isChosen(measure) && (severity === 'unknown' || severity === 'forbids'),
  );

/** Who sits where is said, not measured. */
const isChosen = (path: string): boolean => path.startsWith('riders.');

/** The first ladder: soon there. */
export const firstLadder = (inquiry: OpenInquiry, onTried?: (changes: number) => void): Ladder =>
  ladders(inquiry, onTried).next().value as Ladder;

/** The last: all ways that could be cheaper were looked at, as far as the search goes. */
export function bestLadder(inquiry: OpenInquiry, onTried?: (changes: number) => void): Ladder {
  let best: Ladder | undefined;
  for (const ladder of ladders(inquiry, onTried)) best = ladder;
  return best as Ladder;
}
