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
}

/** undefined: its frame cannot stand somewhere between. */
export function laneOf(
  plan: Plan,
  poised: Poised,
  from: number,
  to: number,
  frame?: Frame,
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
  return { plan, poised, from, boxes, long: box.long, wide: box.wide, ...(frame ? { frame } : {}) };
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

/** The least between a standing box and all that passes; not `fine`: as the grid tells it, more by `COARSE` at the most. */
export function roomBeside(box: Boxed, lanes: readonly Lane[], fine: boolean): Room {
  let best: Room = { room: FAR, lane: -1, at: 0 };
  for (let lane = 0; lane < lanes.length; lane++) {
    const near = nearestOf(box, lanes[lane], fine ? best.room + COARSE : best.room);
    if (!near) continue;
    if (near.room < best.room) best = { ...near, lane };
    if (!fine) continue;
    const closer = refined(box, lanes[lane], near.at);
    if (closer.room < best.room) best = { ...closer, lane };
  }
  return best;
}

/** undefined: none as near as is asked. */
function nearestOf(
  box: Boxed,
  { boxes, from, long, wide }: Lane,
  asked: number,
): { readonly room: number; readonly at: number } | undefined {
  let room = Math.min(asked, FAR);
  let nearest = -1;
  const own = box.long + box.wide + long + wide;
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
    if (alongNormals(box, other) < room) {
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
