/** Runs of grid points at one level of speed, joined until each can be driven (see `zones.ts` for the rule). */
import type { SpeedMap } from './types.ts';

/** Points `first` … `first + count − 1`; on a loop they may run over its last point. */
export interface Run {
  readonly first: number;
  readonly count: number;
  /** In steps of speed. */
  readonly level: number;
}

/** A zone lasts at least so long at its own speed, s. */
export const LEAST_SECONDS = 5;
/** What a zone must save against its slower neighbour's speed to be worth a change of speed, s. */
export const LEAST_SAVED = 3;

/** Speeds are the same within this share: 7 mph through SI and back is 7 mph. */
export const SAME = 1e-9;

/** Runs of equal levels, from the one that holds the first point. */
export function runsOf(levels: Int32Array, loop: boolean): Run[] {
  const n = levels.length;
  let start = 0;
  if (loop) while (start > 1 - n && levels[(start - 1 + n) % n] === levels[0]) start--;
  const runs: Run[] = [];
  for (let j = start; j < start + n; ) {
    const level = levels[(j + n) % n];
    let count = 1;
    while (j + count < start + n && levels[(j + count + n) % n] === level) count++;
    runs.push({ first: (j + n) % n, count, level });
    j += count;
  }
  return runs;
}

/** Joins what is too short or saves too little; `levels` are lowered in place. */
export function joined(
  levels: Int32Array,
  map: SpeedMap,
  loop: boolean,
  trainLength: number,
  step: number,
): Run[] {
  for (;;) {
    const runs = runsOf(levels, loop);
    if (runs.length === 1) return runs;
    const looks = runs.map((_, i) => look(runs, i, map, loop, trainLength, step));
    const lacking = looks.filter((l) => l.length < l.required);
    const worst = least(lacking, (l) => l.length / l.required) ?? least(looks, (l) => l.saved);
    if (!worst || (lacking.length === 0 && worst.saved >= LEAST_SAVED)) return runs;
    const { run, slower } = worst;
    if (slower !== undefined) lower(levels, run.first, run.count, slower);
    else widen(levels, run, Math.ceil((worst.required - worst.length) / map.step), loop);
  }
}

interface Look {
  readonly run: Run;
  /** Level of the faster one of its slower neighbours; undefined: has none. */
  readonly slower: number | undefined;
  /** m */
  readonly length: number;
  readonly required: number;
  /** Seconds against running through it at that neighbour's speed. */
  readonly saved: number;
}

function look(
  runs: readonly Run[],
  i: number,
  map: SpeedMap,
  loop: boolean,
  trainLength: number,
  step: number,
): Look {
  const run = runs[i];
  const beside = [
    i > 0 ? runs[i - 1] : loop ? runs[runs.length - 1] : undefined,
    i < runs.length - 1 ? runs[i + 1] : loop ? runs[0] : undefined,
  ].filter((r) => r !== undefined);
  const slower = beside.filter((r) => r.level < run.level).map((r) => r.level);
  const level = slower.length > 0 ? Math.max(...slower) : undefined;
  // An arrival's way to its stand is not driven at the speed of the run.
  const stands = i === runs.length - 1 && endsStanding(map, loop);
  const driven = stands ? reached(map, run, step) : run.count;
  const length = (driven - 1 + beside.filter((r) => r.level > run.level).length) * map.step;
  return {
    run,
    slower: level,
    length,
    required: Math.max(trainLength, LEAST_SECONDS * run.level * step),
    saved: level === undefined ? Infinity : length / (level * step) - length / (run.level * step),
  };
}

/** The line ends and nothing else keeps the train from standing there. */
export const endsStanding = (map: SpeedMap, loop: boolean): boolean =>
  !loop && map.reasons[map.reason[map.reason.length - 1]].kind === 'stopping-end';

/** How many points of a line's last run permit its speed before the way to the stand begins. */
function reached(map: SpeedMap, run: Run, step: number): number {
  let count = 1;
  while (count < run.count && map.limit[run.first + count] >= run.level * step * (1 - SAME)) count++;
  return count;
}

const least = <T>(list: readonly T[], of: (item: T) => number): T | undefined =>
  list.reduce<T | undefined>((a, b) => (a === undefined || of(b) < of(a) ? b : a), undefined);

/** Lowers points, over a loop's last one too, to a level. */
export function lower(levels: Int32Array, first: number, count: number, to: number): void {
  const n = levels.length;
  for (let k = 0; k < count; k++) {
    const j = (((first + k) % n) + n) % n;
    levels[j] = Math.min(levels[j], to);
  }
}

/** Half of what it lacks before it and half behind it; at a line's end all on the side that is there. */
function widen(levels: Int32Array, run: Run, lacks: number, loop: boolean): void {
  const n = levels.length;
  const more = Math.max(1, lacks);
  let before = Math.ceil(more / 2);
  let behind = more - before;
  if (loop) {
    [before, behind] = [Math.min(before, n), Math.min(behind, n)];
  } else {
    const [room, after] = [run.first, n - run.first - run.count];
    [before, behind] = [
      Math.min(room, more - Math.min(behind, after)),
      Math.min(after, more - Math.min(before, room)),
    ];
  }
  lower(levels, run.first - before, before + run.count + behind, run.level);
}
