/**
 * The map of partings: for each gap a band along the line whose height grows with the harm, over the profile
 * of the line with both halves of a parted train standing on it. Pure: data in, scene out.
 */

import {
  frontAt,
  type HalfPlay,
  type PartingGap,
  type PartingLook,
  type PartingPlay,
  stretchesOf,
} from '../desk/parting.ts';
import { senseOf } from '../engine/answer/chainage.ts';
import { openOuting } from '../engine/outing/open.ts';
import type { Outing } from '../engine/outing/types.ts';
import type { Outcome } from '../engine/questions/part/types.ts';
import { outcomes } from '../engine/questions/part/types.ts';
import { heightAt } from '../engine/things/line/geometry.ts';
import type { LoadedTrain } from '../engine/things/train/loaded.ts';
import { chainWords, outcomeWords } from '../words/parting.ts';
import { chainage, type Voice } from '../words/voice.ts';
import type { Ink } from './strip/ink.ts';
import { type Ground, groundOf, type Layout, samples } from './strip/layout.ts';
import { textWidth } from './strip/letters.ts';
import type { StripModel } from './strip/model.ts';
import { trainShapes } from './strip/moment.ts';
import { scaleLinear } from './strip/scale.ts';
import {
  drawing,
  filledTo,
  group,
  lineShape,
  type Point,
  pathShape,
  polyline,
  rectShape,
  type Scene,
  type Shape,
  textShape,
} from './strip/scene.ts';
import { stripWords } from './strip/words.ts';
import { gapName } from './tables/parting.ts';

export interface PartingView {
  /** px */
  readonly width: number;
  /** Window on the line, m. */
  readonly from: number;
  readonly to: number;
  /** px */
  readonly textSize: number;
}

/** One parting at a time since it happened, s. */
export interface Shown {
  readonly play: PartingPlay;
  readonly time: number;
}

/** Harm by height of the band, and by ink. */
const harm: Readonly<Record<Outcome, { readonly share: number; readonly ink: Ink }>> = {
  stands: { share: 0.18, ink: 'harmless' },
  rolls: { share: 0.5, ink: 'rollsoff' },
  'rolls-through-place': { share: 0.75, ink: 'runsaway' },
  'meets-following': { share: 1, ink: 'runsaway' },
  'runs-round': { share: 1, ink: 'runsaway' },
  'leaves-line': { share: 1, ink: 'runsaway' },
  overturns: { share: 1, ink: 'runsaway' },
};

const rowHeight = (size: number): number => size * 2.6;
const headRoom = (size: number): number => size * 1.2;
const profileHeight = (size: number): number => size * 11;

const heightFor = (gaps: number, size: number): number =>
  headRoom(size) + gaps * rowHeight(size) + size * 1.2 + profileHeight(size) + size * 3.2 + keyHeight(size);

const keyHeight = (size: number): number => size * 3.6;

/** A share of the lettering's size, and never below what can be read, px. */
const letter = (size: number, share: number): number => Math.max(12, size * share);

function layOut(view: PartingView, gaps: number): Layout {
  const size = view.textSize;
  const left = 12;
  const right = view.width - 12;
  const top = headRoom(size) + gaps * rowHeight(size) + size * 1.2;
  const profile = { top, bottom: top + profileHeight(size) };
  const none = { top: 0, bottom: 0 };
  const height = heightFor(gaps, size);
  return {
    view: { ...view, height },
    x: scaleLinear([view.from, view.to], [left, right]),
    left,
    right,
    speed: none,
    profile,
    marks: none,
    reach: none,
    names: { ...none, rows: 0 },
    wheels: none,
    axis: profile.bottom + size * 0.4,
    size,
  };
}

/** What every moment of a parting is drawn on: made once for an outing and a view, cheap to draw on again and again. */
export interface PartingStage {
  readonly outing: Outing;
  readonly gaps: number;
  readonly layout: Layout;
  /** Height of the drawing, px. */
  readonly height: number;
  readonly ground: Ground;
  readonly loaded: LoadedTrain;
}

export function partingStage(outing: Outing, gaps: number, view: PartingView): PartingStage {
  const layout = layOut(view, gaps);
  const ground = groundOf(modelOf(outing, null), layout);
  return { outing, gaps, layout, height: layout.view.height, ground, loaded: openOuting(outing).loaded };
}

/** Gap and chainage under a point of the drawing; gap −1 below the bands. */
export function partingAt({ gaps, layout }: PartingStage, x: number, y: number): { gap: number; at: number } {
  const { left, right, size, view } = layout;
  const share = Math.min(1, Math.max(0, (x - left) / (right - left)));
  const gap = Math.floor((y - headRoom(size)) / rowHeight(size));
  return { gap: gap >= 0 && gap < gaps ? gap : -1, at: view.from + share * (view.to - view.from) };
}

export function partingScene(stage: PartingStage, look: PartingLook, voice: Voice, shown?: Shown): Scene {
  const { outing, layout, height } = stage;
  const { width } = layout.view;
  return drawing(width, height, `What becomes of the tail if the train parts on ${outing.line.name}`, [
    rectShape('paper', 0, 0, width, height),
    ...look.gaps.map((gap, i) => band(gap, i, layout, voice)),
    profile(stage, voice),
    ...(shown ? [partingMoment(stage, shown)] : []),
    key(look, layout),
  ]);
}

function band(gap: PartingGap, row: number, layout: Layout, voice: Voice): Shape {
  const { size, left, right, view } = layout;
  const base = headRoom(size) + (row + 1) * rowHeight(size);
  const full = rowHeight(size) - size * 1.45;
  const bars = stretchesOf(gap).flatMap(({ from, to, outcome }) => {
    const [x0, x1] = [layout.x(Math.max(from, view.from)), layout.x(Math.min(to, view.to))];
    if (x1 <= x0) return [];
    const { share, ink } = harm[outcome];
    const words = outcomeWords[outcome];
    const bar = rectShape(ink, x0, base - share * full, Math.max(0.8, x1 - x0), share * full);
    if (ink !== 'runsaway' || share < 1 || x1 - x0 < words.length * size * 0.48) return [bar];
    return [bar, textShape('onmark', x0 + size * 0.5, base - share * full * 0.25, words, letter(size, 0.8))];
  });
  const chain = gap.chainHolds ? 'chain holds; drawn as if it did not' : `chain: ${chainWords[gap.chain]}`;
  return group({ class: gap.chainHolds ? 'held' : 'loose' }, [
    textShape('strong', left, base - full - size * 0.3, gapName(voice, gap.gap), letter(size, 0.95)),
    textShape('small', right, base - full - size * 0.3, chain, letter(size, 0.85), 'end'),
    lineShape('hair', left, base, right, base),
    group(gap.chainHolds ? { opacity: 0.55 } : {}, bars),
  ]);
}

function profile({ outing, layout, ground }: PartingStage, voice: Voice): Shape {
  const { line } = outing;
  const { size, left, right } = layout;
  const points = samples(layout).map((s): Point => [layout.x(s), ground.y(heightAt(line, s))]);
  const words = stripWords(voice);
  const ticks = words.chainageTicks(
    layout.view.from,
    layout.view.to,
    Math.max(2, Math.floor((right - left) / (size * 8))),
  );
  return group({}, [
    pathShape('earth', filledTo(layout.profile.bottom, points)),
    pathShape('rail', polyline(points)),
    ...places(outing, layout, ground),
    lineShape('fine', left, layout.profile.bottom, right, layout.profile.bottom),
    ...ticks.map((s) => {
      const edge = s <= layout.view.from ? 'start' : s >= layout.view.to ? 'end' : 'middle';
      const y = layout.profile.bottom + size * 2.4;
      return textShape('small', layout.x(s), y, chainage(voice, s), letter(size, 0.85), edge);
    }),
  ]);
}

function places({ line }: Outing, layout: Layout, ground: Ground): Shape[] {
  const { size, view } = layout;
  let last = -Infinity;
  return line.places
    .filter((p) => p.at >= view.from && p.at <= view.to && p.kind !== 'board' && p.kind !== 'summit')
    .sort((a, b) => a.at - b.at)
    .flatMap((place) => {
      const x = layout.x(place.at);
      const y = ground.y(heightAt(line, place.at));
      if (x < last) return [lineShape('stem', x, y, x, layout.profile.bottom)];
      last = x + 6 + textWidth(place.name, letter(size, 0.85));
      return [
        lineShape('stem', x, y, x, layout.profile.bottom + size),
        textShape('word', x + 3, layout.profile.bottom + size * 1.15, place.name, letter(size, 0.85)),
      ];
    });
}

const modelOf = (outing: Outing, train: LoadedTrain | null): StripModel => ({
  line: outing.line,
  facing: senseOf(outing),
  speeds: null,
  wheels: null,
  driven: null,
  marks: [],
  train,
});

/** Both halves where they are at a time, and a line where the train parted. */
export function partingMoment(
  { outing, layout, ground, loaded }: PartingStage,
  { play, time }: Shown,
): Shape {
  const half = (part: HalfPlay): Shape[] => {
    const vehicles = loaded.vehicles.slice(part.first, part.last + 1);
    const train: LoadedTrain = { ...loaded, vehicles };
    const front = onLine(outing, frontAt(part, time));
    const head = front + play.sense * vehicles[0].behind;
    return trainShapes(modelOf(outing, train), layout, ground, { head, speed: 0 });
  };
  const x = layout.x(play.at);
  const top = headRoom(layout.size) + play.gap * rowHeight(layout.size);
  return group({ class: 'moment' }, [
    lineShape('cursor', x, top, x, layout.profile.bottom),
    ...(play.chained || play.together ? [] : half(play.head)),
    ...half(play.tail),
  ]);
}

/** Laps that were counted on are taken off again. */
function onLine({ line }: Outing, s: number): number {
  return line.loop ? s - Math.floor(s / line.length) * line.length : s;
}

function key({ gaps }: PartingLook, layout: Layout): Shape {
  const { size, left } = layout;
  let y = layout.view.height - keyHeight(size) + size * 1.2;
  const seen = outcomes.filter((o) => gaps.some((g) => g.shares[o] > 0));
  let x = left;
  return group(
    { class: 'key' },
    seen.flatMap((o) => {
      const words = outcomeWords[o];
      const { share, ink } = harm[o];
      const tall = share * size;
      const long = size * 2.6 + textWidth(words, letter(size, 0.85));
      if (x > left && x + long > layout.right) {
        x = left;
        y += size * 1.6;
      }
      const shapes = [
        rectShape(ink, x, y - tall, size * 1.4, tall),
        textShape('small', x + size * 1.8, y, words, letter(size, 0.85)),
      ];
      x += long;
      return shapes;
    }),
  );
}
