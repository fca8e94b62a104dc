/**
 * The middle of the track on the level, as chords of one length. A loop whose curves, as written, do not lead back to
 * its start is bent to close: by the least change of curvature that does, the sum of its squares over the line.
 *
 *   κ → κ + a − b·(Y − y) + c·(X − x)      (X, Y): where it ends
 *
 * which is the step of Gauss and Newton; some few lead from any survey worth the name. What it missed is told with it.
 */
import { layPlan, spotAt } from '../../engine/things/line/plan.ts';
import type { Line } from '../../engine/things/line/types.ts';

export interface Misclosure {
  /** From its end to its start, as written, m. */
  readonly away: number;
  /** All that it turns, as written, rad; left positive. */
  readonly turned: number;
  /** What it has to turn. */
  readonly whole: number;
}

export interface Laid {
  readonly length: number;
  /** m, at chainages i · length / (count − 1). */
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** Absent: no loop, or one that is as near as it is drawn. */
  readonly misses?: Misclosure;
  /** A loop that no small change closes is drawn open. */
  readonly open: boolean;
}

const CHORDS = 900;
/** Share of the line below which a loop closes as written. */
const CLOSED = 0.002;
/** rad */
const TRUE = 0.02;
const STEPS = 30;

/** undefined: no curve is written, so that there is nothing to draw but a stroke. */
export function layLine(line: Line): Laid | undefined {
  if (!line.curves.some((c) => c.startCurvature !== 0 || c.endCurvature !== 0)) return undefined;
  const turns = turnsOf(line);
  const written = walk(turns, line.length);
  if (!line.loop) return { ...pathOf(written, line.length), open: false };
  const whole = wholeTurn(turns);
  const away = Math.hypot(written.x[CHORDS], written.y[CHORDS]);
  const turned = written.way[CHORDS];
  const near = away <= CLOSED * line.length && Math.abs(turned - whole) <= TRUE;
  const closed = close(turns, line.length, whole);
  return {
    ...pathOf(closed ?? written, line.length),
    open: !closed,
    ...(near && closed ? {} : { misses: { away, turned, whole } }),
  };
}

/** Where the track lies at a chainage and which way it points, m; over the seam of a loop. */
export function spotOn(
  { x, y, length }: Laid,
  s: number,
): { x: number; y: number; cos: number; sin: number } {
  const t = Math.min(CHORDS, Math.max(0, (s / length) * CHORDS));
  const i = Math.min(CHORDS - 1, Math.floor(t));
  const [dx, dy] = [x[i + 1] - x[i], y[i + 1] - y[i]];
  const size = Math.hypot(dx, dy) || 1;
  return { x: x[i] + dx * (t - i), y: y[i] + dy * (t - i), cos: dx / size, sin: dy / size };
}

interface Walk {
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly way: Float64Array;
}

const pathOf = ({ x, y }: Walk, length: number) => ({ x, y, length });

/** What each chord turns, rad: the plan's own ways, so that none of a curve is lost between two chords. */
function turnsOf(line: Line): Float64Array {
  const plan = layPlan(line, 0, line.length);
  const spot = { x: 0, y: 0, cos: 1, sin: 0 };
  let before = 0;
  const turns = new Float64Array(CHORDS);
  for (let i = 0; i < CHORDS; i++) {
    spotAt(plan, ((i + 1) / CHORDS) * line.length, spot);
    const now = Math.atan2(spot.sin, spot.cos);
    turns[i] = Math.atan2(Math.sin(now - before), Math.cos(now - before));
    before = now;
  }
  return turns;
}

function walk(turns: Float64Array, length: number): Walk {
  const [x, y, way] = [0, 1, 2].map(() => new Float64Array(CHORDS + 1));
  const step = length / CHORDS;
  for (let i = 0; i < CHORDS; i++) {
    const middle = way[i] + turns[i] / 2;
    x[i + 1] = x[i] + step * Math.cos(middle);
    y[i + 1] = y[i] + step * Math.sin(middle);
    way[i + 1] = way[i] + turns[i];
  }
  return { x, y, way };
}

/** Once round, in the hand in which it turns more; none for a figure of eight, which turns as much in either. */
function wholeTurn(turns: Float64Array): number {
  const left = turns.reduce((sum, t) => sum + Math.max(0, t), 0);
  const right = turns.reduce((sum, t) => sum + Math.max(0, -t), 0);
  const rounds = Math.round((left - right) / (2 * Math.PI));
  if (rounds !== 0 || Math.min(left, right) > 0.8 * Math.PI) return rounds * 2 * Math.PI;
  return left >= right ? 2 * Math.PI : -2 * Math.PI;
}

function close(written: Float64Array, length: number, whole: number): Walk | undefined {
  const turns = Float64Array.from(written);
  for (let n = 0; n < STEPS; n++) {
    const at = walk(turns, length);
    const [X, Y] = [at.x[CHORDS], at.y[CHORDS]];
    const miss = [(whole - at.way[CHORDS]) * length, -X, -Y];
    if (miss.every((m) => Math.abs(m) < 1e-6 * length)) return at;
    // By how much each chord's turn moves the end: its way (times the length, to be of a kind), X and Y.
    const rows = [
      turns.map(() => length),
      turns.map((_, i) => -(Y - (at.y[i] + at.y[i + 1]) / 2)),
      turns.map((_, i) => X - (at.x[i] + at.x[i + 1]) / 2),
    ];
    const shares = solve(
      rows.map((a) => rows.map((b) => a.reduce((sum, v, i) => sum + v * b[i], 0))),
      miss,
    );
    if (!shares) return undefined;
    for (let i = 0; i < CHORDS; i++) turns[i] += rows.reduce((sum, row, k) => sum + row[i] * shares[k], 0);
  }
  return undefined;
}

/** Three unknowns by Cramer; undefined: they do not determine one another. */
function solve(m: readonly (readonly number[])[], r: readonly number[]): number[] | undefined {
  const det = (a: readonly (readonly number[])[]): number =>
    a[0][0] * (a[1][1] * a[2][2] - a[1][2] * a[2][1]) -
    a[0][1] * (a[1][0] * a[2][2] - a[1][2] * a[2][0]) +
    a[0][2] * (a[1][0] * a[2][1] - a[1][1] * a[2][0]);
  const whole = det(m);
  if (!(Math.abs(whole) > 1e-12 * Math.abs(m[0][0] * m[1][1] * m[2][2]))) return undefined;
  return [0, 1, 2].map((k) => det(m.map((row, i) => row.map((v, j) => (j === k ? r[i] : v)))) / whole);
}
