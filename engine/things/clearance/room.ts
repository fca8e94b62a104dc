/**
 * How much room is left between a vehicle that stands on one track and whatever passes on another.
 *
 * Both stand with two guides on the middle of their track, so that each is a box along a chord. Between two boxes
 *
 *   d = the least from a corner of one to the other;  where they overlap  d = max over the four sides' normals of what lies
 *   between them along it, which is below nothing
 *
 * The room at a place is the least d over all places of the one that passes. Looked for every tenth of a metre, then by
 * golden section about the least. Source: common engineering geometry (separating axes; convex outlines are nearest at a corner).
 */
import { highest } from '../../base/numerics/highest.ts';
import type { Frame } from '../line/frames.ts';
import type { Plan } from '../line/plan.ts';
import { type Aside, type Stand, type SweptShape, standing, standOn } from './swept.ts';

/** Between the places of the one that passes, m. */
const STEP = 0.1;
const CUTS = 16;
/** The room between two places of the grid is less than at them by no more than this, m. */
export const COARSE = 5e-4;
/** What stands farther off is not looked at: out of anybody's reach, m. */
export const FAR = 1;
/** The middle of a vehicle moves by no more than this for each metre along the track, its swing in a curve included. */
const FASTEST = 2;

/** A vehicle with one way of standing in the play of its wheels. */
export interface Poised {
  readonly shape: SweptShape;
  readonly aside: Aside;
}

/** A box as it stands: its middle, its way, half its length and width; m. */
export interface Boxed {
  x: number;
  y: number;
  ux: number;
  uy: number;
  long: number;
  wide: number;
}

const boxed = (): Boxed => ({ x: 0, y: 0, ux: 1, uy: 0, long: 0, wide: 0 });

/** Into `box`; false where the frame cannot stand with its rear guide at this chainage. */
export function boxAt(plan: Plan, { shape, aside }: Poised, rear: number, stand: Stand, box: Boxed): boolean {
  if (!standOn(plan, shape.guides, rear, aside, stand)) return false;
  const { rear: back, front, left, right } = shape.box;
  const [along, across] = [(back + front) / 2, (left + right) / 2];
  box.ux = stand.ux;
  box.uy = stand.uy;
  box.x = stand.x + along * stand.ux - across * stand.uy;
  box.y = stand.y + along * stand.uy + across * stand.ux;
  box.long = (front - back) / 2;
  box.wide = (left - right) / 2;
  return true;
}

/** What lies between two boxes, m. */
export function between(a: Boxed, b: Boxed): number {
  const along = alongNormals(a, b);
  return along <= 0 ? along : Math.min(cornersTo(a, b), cornersTo(b, a));
}

/** The most along a side's normal: below nothing where they overlap, else no more than their distance. */
function alongNormals(a: Boxed, b: Boxed): number {
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const cos = Math.abs(a.ux * b.ux + a.uy * b.uy);
  const sin = Math.abs(a.ux * b.uy - a.uy * b.ux);
  return Math.max(
    Math.abs(dx * a.ux + dy * a.uy) - a.long - b.long * cos - b.wide * sin,
    Math.abs(dy * a.ux - dx * a.uy) - a.wide - b.long * sin - b.wide * cos,
    Math.abs(dx * b.ux + dy * b.uy) - b.long - a.long * cos - a.wide * sin,
    Math.abs(dy * b.ux - dx * b.uy) - b.wide - a.long * sin - a.wide * cos,
  );
}

/** The least from a corner of b to the box a. */
function cornersTo(a: Boxed, b: Boxed): number {
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const along = dx * a.ux + dy * a.uy;
  const across = dy * a.ux - dx * a.uy;
  const cos = a.ux * b.ux + a.uy * b.uy;
  const sin = a.ux * b.uy - a.uy * b.ux;
  let least = Infinity;
  for (let i = 0; i < 4; i++) {
    const long = i & 1 ? b.long : -b.long;
    const wide = i & 2 ? b.wide : -b.wide;
    const x = Math.max(0, Math.abs(along + long * cos - wide * sin) - a.long);
    const y = Math.max(0, Math.abs(across + long * sin + wide * cos) - a.wide);
    least = Math.min(least, x * x + y * y);
  }
  return Math.sqrt(least);
}

/** Steps of the grid that a vehicle is looked for about where one was nearest. */
const AROUND = 3;

/** Of each box: its middle, its way. */
const FIGURES = 4;

/** Whatever passes on a track between two chainages: boxes at every tenth of a metre. */
export interface Lane {
  readonly plan: Plan;
  readonly poised: Poised;
  /** Where the plan's own start lies; absent: as that of what stands. */
  readonly frame?: Frame;
  readonly from: number;
  /** Box after box, as one run of figures: thousands of them are kept. */
  readonly boxes: Float64Array;
  /** All are as long and as wide: half of each, m. */
  readonly long: number;
  readonly wide: number;
  /** Lanes of one family differ by how the flanges stand: where one of them stands off, no other comes nearer than this, m. */
  readonly family?: Family;
}

/** One vehicle on one track, however its flanges stand. */
export interface Family {
  readonly loose: number;
}

/**
 * How far any corner of a vehicle moves, at most, from one way of standing in the play of its wheels to another, m: its guides by all of the
 * play, what overhangs by its share more, and a tenth for the bend of the track under it.
 */
export function looseOf({ guides, box }: SweptShape, play: number): number {
  const over = Math.max(0, -box.rear, box.front - guides);
  const wide = Math.max(box.left, -box.right);
  return 1.1 * play * (guides > 0 ? 1 + (2 * (over + wide)) / guides : 1);
}

/** undefined: its frame cannot stand somewhere between. */
export function laneOf(
  plan: Plan,
  poised: Poised,
  from: number,
  to: number,
  { frame, family }: Pick<Lane, 'frame' | 'family'> = {},
): Lane | undefined {
  const stand = standing(poised.shape.guides);
  const box = boxed();
  let count = 0;
  while (from + (count - 1) * STEP < to) count++;
  const boxes = new Float64Array(count * FIGURES);
  for (let i = 0; i < count; i++) {
    if (!boxAt(plan, poised, from + i * STEP, stand, box)) return undefined;
    if (frame) move(box, frame);
    const k = i * FIGURES;
    boxes[k] = box.x;
    boxes[k + 1] = box.y;
    boxes[k + 2] = box.ux;
    boxes[k + 3] = box.uy;
  }
  return {
    plan,
    poised,
    from,
    boxes,
    long: box.long,
    wide: box.wide,
    ...(frame ? { frame } : {}),
    ...(family ? { family } : {}),
  };
}

/** From the frame of a plan of its own into that of what stands. */
function move(box: Boxed, { x, y, cos, sin }: Frame): void {
  const { x: bx, y: by, ux, uy } = box;
  box.x = x + bx * cos - by * sin;
  box.y = y + bx * sin + by * cos;
  box.ux = ux * cos - uy * sin;
  box.uy = ux * sin + uy * cos;
}

export interface Room {
  /** m; `FAR` where nothing comes near. */
  readonly room: number;
  /** Which of the lanes, and where its rear guide stands; −1: none. */
  readonly lane: number;
  readonly at: number;
}

/**
 * The least between a standing box and all that passes; not `fine`: as the grid tells it, more by `COARSE` at the most.
 *
 * @param beside what was nearest to a box that stood near this one: nothing farther off than that is looked at
 */
export function roomBeside(box: Boxed, lanes: readonly Lane[], fine: boolean, beside?: Room): Room {
  let best: Room = { room: FAR, lane: -1, at: 0 };
  const bound = beside && beside.lane >= 0 ? aroundOf(box, lanes[beside.lane], beside.at) : FAR;
  let [family, off]: [Family | undefined, boolean] = [undefined, false];
  for (let lane = 0; lane < lanes.length; lane++) {
    const first = lanes[lane].family !== family;
    if (!first && off) continue;
    const asked = Math.min(best.room, bound) + (fine ? COARSE : 0);
    family = lanes[lane].family;
    const near = nearestOf(box, lanes[lane], asked + (first ? (family?.loose ?? 0) : 0));
    if (first) off = family !== undefined && !near;
    if (!near || near.room >= asked) continue;
    if (near.room < best.room) best = { ...near, lane };
    if (!fine) continue;
    const closer = refined(box, lanes[lane], near.at);
    if (closer.room < best.room) best = { ...closer, lane };
  }
  return best;
}

/** Of the grid about a place of what passes, m, and a hair: as near or nearer is something of it. */
function aroundOf(box: Boxed, { boxes, from, long, wide }: Lane, at: number): number {
  const middle = Math.round((at - from) / STEP);
  let least = FAR;
  for (let i = middle - AROUND; i <= middle + AROUND; i += AROUND) {
    const k = i * FIGURES;
    if (k < 0 || k >= boxes.length) continue;
    const other = { x: boxes[k], y: boxes[k + 1], ux: boxes[k + 2], uy: boxes[k + 3], long, wide };
    least = Math.min(least, between(box, other) + 1e-9);
  }
  return least;
}

/** undefined: none as near as is asked. */
function nearestOf(
  box: Boxed,
  { boxes, from, long, wide }: Lane,
  asked: number,
): { readonly room: number; readonly at: number } | undefined {
  let room = asked;
  let nearest = -1;
  const own = Math.hypot(box.long, box.wide) + Math.hypot(long, wide);
  const other: Boxed = { x: 0, y: 0, ux: 1, uy: 0, long, wide };
  const count = boxes.length / FIGURES;
  for (let i = 0; i < count; ) {
    const k = i * FIGURES;
    const dx = boxes[k] - box.x;
    const dy = boxes[k + 1] - box.y;
    const reach = room + own;
    const square = dx * dx + dy * dy;
    if (square > reach * reach) {
      // None of those before it can come so near.
      i += Math.max(1, Math.floor((Math.sqrt(square) - reach) / (FASTEST * STEP)));
      continue;
    }
    other.x = boxes[k];
    other.y = boxes[k + 1];
    other.ux = boxes[k + 2];
    other.uy = boxes[k + 3];
    // Mostly two stand side by side, and this alone tells that they are farther apart.
    const aside =
      Math.abs(dy * box.ux - dx * box.uy) -
      box.wide -
      long * Math.abs(box.ux * other.uy - box.uy * other.ux) -
      wide * Math.abs(box.ux * other.ux + box.uy * other.uy);
    if (aside < room && alongNormals(box, other) < room) {
      const here = between(box, other);
      if (here < room) {
        room = here;
        nearest = i;
      }
    }
    i++;
  }
  return nearest < 0 ? undefined : { room, at: from + nearest * STEP };
}

function refined(box: Boxed, { plan, poised, frame }: Lane, at: number): { room: number; at: number } {
  const stand = standing(poised.shape.guides);
  const other = boxed();
  const less = (rear: number): number => {
    if (!boxAt(plan, poised, rear, stand, other)) return -FAR;
    if (frame) move(other, frame);
    return -between(box, other);
  };
  const found = highest(less, at - STEP, at + STEP, CUTS);
  return { room: -found.value, at: found.at };
}

/** A vehicle that faces the other way. */
export const turned = ({ guides, box }: SweptShape): SweptShape => ({
  guides,
  box: { ...box, rear: guides - box.front, front: guides - box.rear },
});
