/**
 * How the brakes come on along the train: one row per car, front car on top, time to the right. In each row
 * the force rises from its base line to full; a bar marks 10 % to 90 %.
 */
import type { GearFill, TrainFill } from '../engine/things/brake/fill.ts';
import { wrapped } from './strip/letters.ts';
import { roundFigures, scaleLinear } from './strip/scale.ts';
import {
  drawing,
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

const BAND = 26;
/** px; below, names stand over their rows, and nothing is smaller for it. */
const NARROW = 600;

interface Sheet {
  readonly width: number;
  readonly left: number;
  readonly right: number;
  readonly row: number;
  readonly top: number;
  readonly title: readonly string[];
  readonly key: readonly string[];
  readonly narrow: boolean;
}

const KEY = 'line: force from nothing to full · bar: from 10 % to 90 %';

function sheetFor(width: number, title: string): Sheet {
  const narrow = width < NARROW;
  const lines = wrapped(title, 16, width - 24);
  return {
    width,
    narrow,
    left: narrow ? 12 : 170,
    right: width - (narrow ? 62 : 96),
    row: narrow ? 56 : 38,
    top: 24 + 20 * lines.length,
    title: lines,
    key: wrapped(KEY, 12, narrow ? width - 24 : width - 266),
  };
}

export interface PlotNames {
  readonly title: string;
  readonly vehicle: (index: number) => string;
  readonly time: (seconds: number) => string;
}

/** Rows that a plot can show: those whose force changes. */
const shown = (fill: TrainFill): GearFill[] => fill.gears.filter((g) => Number.isFinite(g.full));

export function brakePlot(fill: TrainFill, names: PlotNames, width = 760): Scene {
  const gears = shown(fill);
  const end = Math.max(0.1, ...gears.map((g) => g.full)) * 1.08;
  const sheet = sheetFor(width, names.title);
  const x = scaleLinear([0, end], [sheet.left, sheet.right]);
  const floor = sheet.top + gears.length * sheet.row;
  const height = floor + 28 + 16 * sheet.key.length;
  return drawing(width, height, names.title, [
    rectShape('paper', 0, 0, width, height),
    ...sheet.title.map((text, i) => textShape('strong', sheet.narrow ? 12 : 16, 26 + 20 * i, text, 16)),
    ...axis(x, end, floor, sheet),
    ...gears.map((g, i) => row(g, sheet.top + i * sheet.row, x, end, names, sheet)),
  ]);
}

type Scale = (seconds: number) => number;

function axis(x: Scale, end: number, floor: number, { left, right, top, key, narrow }: Sheet): Shape[] {
  const ticks = roundFigures(0, end, narrow ? 3 : 6);
  return [
    lineShape('ink', left, floor + 4, right, floor + 4),
    ...ticks.flatMap((t) => [
      lineShape('dotted', x(t), top, x(t), floor + 4),
      textShape('small', x(t), floor + 20, `${t}`, 12, t === 0 && narrow ? 'start' : 'middle'),
    ]),
    textShape('small', right + 8, floor + 20, 'seconds', 12),
    ...key.map((text, i) => textShape('small', left, floor + 36 + 16 * i, text, 12)),
  ];
}

function row(
  gear: GearFill,
  top: number,
  x: Scale,
  end: number,
  names: PlotNames,
  { left, right, narrow, row: tall }: Sheet,
): Shape {
  const base = top + tall - 8;
  const points = gear.curve.time
    .map((t, i): [number, number] => [t, gear.curve.share[i]])
    .filter(([t]) => t <= end);
  const last = points[points.length - 1];
  if (last && last[0] < end) points.push([end, last[1]]);
  const curve = points.map(([t, share]): Point => [x(t), base - share * BAND]);
  const name = names.vehicle(gear.vehicle);
  return group({}, [
    narrow
      ? textShape('word', left, base - BAND - 6, name, 13)
      : textShape('word', left - 12, base - 8, name, 13, 'end'),
    lineShape('hair', left, base, right, base),
    rectShape('cautious', x(gear.t10), base - 5, x(gear.t90) - x(gear.t10), 5),
    pathShape('bold', polyline(curve)),
    textShape('small', right + 8, base - 8, names.time(gear.t90), 12),
  ]);
}
