/** The plan turned, as no north is surveyed, so that it fills its frame; never mirrored. */
import type { Point } from '../strip/scene.ts';
import { type Laid, spotOn } from './lay.ts';

export interface Frame {
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
}

export interface Fitted {
  /** px per metre */
  readonly scale: number;
  /** Where a chainage lies on the drawing, px, and a unit across the track to its left hand. */
  readonly at: (s: number) => { readonly x: number; readonly y: number; readonly left: Point };
  /** Middle of the track, px. */
  readonly middle: Point;
}

/** Tried every so many degrees. */
const TURN = 3;

export function fitPlan(laid: Laid, frame: Frame): Fitted {
  const [wide, high] = [frame.x1 - frame.x0, frame.y1 - frame.y0];
  const tried = Array.from({ length: 180 / TURN }, (_, i) => {
    const angle = (i * TURN * Math.PI) / 180 - Math.PI / 2;
    const [c, s] = [Math.cos(angle), Math.sin(angle)];
    let [left, right, low, top] = [Infinity, -Infinity, Infinity, -Infinity];
    for (let k = 0; k < laid.x.length; k += 3) {
      const x = laid.x[k] * c - laid.y[k] * s;
      const y = laid.x[k] * s + laid.y[k] * c;
      left = Math.min(left, x);
      right = Math.max(right, x);
      low = Math.min(low, y);
      top = Math.max(top, y);
    }
    const scale = Math.min(wide / Math.max(right - left, 1e-9), high / Math.max(top - low, 1e-9));
    return { c, s, scale, x: (left + right) / 2, y: (low + top) / 2 };
  });
  const { c, s, scale, x, y } = tried.reduce((best, one) => (one.scale > best.scale * 1.001 ? one : best));
  const middle: Point = [(frame.x0 + frame.x1) / 2, (frame.y0 + frame.y1) / 2];
  return {
    scale,
    middle,
    at: (chainage) => {
      const spot = spotOn(laid, chainage);
      const [cos, sin] = [spot.cos * c - spot.sin * s, spot.cos * s + spot.sin * c];
      return {
        x: middle[0] + (spot.x * c - spot.y * s - x) * scale,
        y: middle[1] - (spot.x * s + spot.y * c - y) * scale,
        left: [-sin, -cos],
      };
    },
  };
}
