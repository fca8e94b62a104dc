/** Where the lanes of the strip lie, how chainage maps to x, and how heights are enlarged. */
import { heightAt } from '../../engine/things/line/geometry.ts';
import { textWidth } from './letters.ts';
import type { StripModel, StripView } from './model.ts';
import { scaleLinear } from './scale.ts';

/** Where the lanes lie, px, and how chainage maps to x. */
export interface Layout {
  readonly view: StripView;
  readonly x: (s: number) => number;
  readonly left: number;
  readonly right: number;
  readonly speed: Band;
  /** Findings by number, and where to brake. */
  readonly marks: Band;
  /** What is told of the train's reach. */
  readonly reach: Band;
  readonly profile: Band;
  readonly names: Band & { readonly rows: number };
  readonly wheels: Band;
  readonly axis: number;
  readonly size: number;
}

export interface Band {
  readonly top: number;
  readonly bottom: number;
}

const MARGIN = 12;
export const ROW = 1.3;
/** px; below, a drawing is a phone's. */
const NARROW = 600;

/** Lanes that a drawing has only where there is something to tell. */
export interface Lanes {
  /** A line over it all: that it is not to be run by. */
  readonly headed: boolean;
  /** How light wheels run: that alone which a phone's drawing does without. */
  readonly wheels: boolean;
}

export function layOut(view: StripView, { headed, wheels }: Lanes): Layout {
  const size = view.textSize;
  const narrow = view.width < NARROW;
  const rows = narrow ? 3 : 2;
  const [left, right] = [MARGIN, view.width - MARGIN];
  const axis = view.height - size * 1.7;
  const down = (from: number, tall: number): Band => ({ top: from, bottom: from + tall * size });
  const head = headed ? size * ROW : 0;
  const speed = down(head + size * 0.4, 5.4);
  const marks = down(speed.bottom, 2);
  const reach = down(marks.bottom, 1.5);
  const low = wheels || !narrow ? axis - size * 1.6 : axis - size * 0.6;
  const ribbon = { top: low - size * 0.6, bottom: low };
  const foot = wheels || !narrow ? ribbon.top - size * 1.3 : low;
  const names = { top: foot - size * rows * ROW, bottom: foot, rows };
  return {
    view,
    x: scaleLinear([view.from, view.to], [left, right]),
    left,
    right,
    speed,
    marks,
    reach,
    profile: { top: reach.bottom, bottom: names.top - size * 0.2 },
    names,
    wheels: ribbon,
    axis,
    size,
  };
}

/** Even samples of the window, at most one for each pixel. */
export function samples({ view, left, right }: Layout): number[] {
  const n = Math.max(2, Math.min(Math.round(right - left), 1600));
  return Array.from({ length: n + 1 }, (_, i) => view.from + ((view.to - view.from) * i) / n);
}

export interface Ground {
  readonly y: (height: number) => number;
  readonly times: number;
}

/** Heights are drawn enlarged so that the profile fills its band, never less than true; below lie the grades' words. */
export function groundOf(model: StripModel, layout: Layout): Ground {
  const heights = heightsIn(model.line, layout.view);
  const [low, high] = [Math.min(...heights), Math.max(...heights)];
  const { top, bottom } = layout.profile;
  const perMetre = (layout.right - layout.left) / (layout.view.to - layout.view.from);
  const room = Math.max(layout.size, bottom - top - layout.size * 5.6);
  const times = Math.max(1, Math.min(60, high > low ? room / ((high - low) * perMetre) : 1));
  return { y: (h) => bottom - layout.size * 2.6 - (h - low) * perMetre * times, times };
}

/** Where the profile bends within a window, and at its ends: nowhere is it higher or lower. */
function heightsIn(line: StripModel['line'], { from, to }: StripView): number[] {
  const laps = line.loop ? [-line.length, 0, line.length] : [0];
  const seen = (at: number): boolean => laps.some((lap) => at + lap > from && at + lap < to);
  const bends = line.heights.filter(({ at }) => seen(at)).map(({ height }) => height);
  return [heightAt(line, from), heightAt(line, to), ...bends];
}

/** A label that takes no more than its share of the drawing; what is cut off is marked, and stands in full in the tables. */
export function label(text: string, { left, right, size }: Layout, share = 0.5): string {
  const most = share * (right - left);
  let short = text;
  while (short.length > 4 && textWidth(short, size) > most)
    short = `${short.replace(/…$/, '').slice(0, -1)}…`;
  return short;
}
