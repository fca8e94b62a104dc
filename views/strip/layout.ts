/** Where the bands of the strip lie, how chainage maps to x, and how heights are enlarged. */
import { heightAt } from '../../engine/things/line/geometry.ts';
import type { StripModel, StripView } from './model.ts';
import { scaleLinear } from './scale.ts';

/** Where the bands lie, px, and how chainage maps to x. */
export interface Layout {
  readonly view: StripView;
  readonly x: (s: number) => number;
  readonly left: number;
  readonly right: number;
  readonly speed: Band;
  readonly profile: Band;
  readonly wheels: Band;
  readonly curve: Band;
  readonly axis: number;
  readonly size: number;
}

export interface Band {
  readonly top: number;
  readonly bottom: number;
}

const MARGIN = 12;

export function layOut(view: StripView): Layout {
  const size = view.textSize;
  const left = MARGIN + size * 2.4;
  const right = view.width - MARGIN;
  const axis = view.height - size * 1.6;
  const inner = axis - size;
  const at = (share: number): number => size * 0.8 + share * (inner - size * 0.8);
  return {
    view,
    x: scaleLinear([view.from, view.to], [left, right]),
    left,
    right,
    speed: { top: at(0.04), bottom: at(0.3) },
    profile: { top: at(0.4), bottom: at(0.7) },
    wheels: { top: at(0.78), bottom: at(0.835) },
    curve: { top: at(0.87), bottom: at(1) },
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

/** Heights are drawn enlarged so that the profile fills its band, never less than true. */
export function groundOf(model: StripModel, layout: Layout): Ground {
  const heights = samples(layout).map((s) => heightAt(model.line, s));
  const [low, high] = [Math.min(...heights), Math.max(...heights)];
  const { top, bottom } = layout.profile;
  const perMetre = (layout.right - layout.left) / (layout.view.to - layout.view.from);
  const room = bottom - top - layout.size * 3.4;
  const times = Math.max(1, Math.min(20, high > low ? room / ((high - low) * perMetre) : 1));
  return { y: (h) => bottom - layout.size * 0.6 - (h - low) * perMetre * times, times };
}

/** A label that takes no more than its share of the drawing; what is cut off is marked, and stands in full in the tables. */
export function label(text: string, { left, right, size }: Layout, share = 0.5): string {
  const most = Math.max(8, Math.floor((share * (right - left)) / (size * 0.6)));
  return text.length <= most ? text : `${text.slice(0, most - 1)}…`;
}
