/**
 * How the brakes come on along the train: one row per car, front car on top, time to the right. In each row
 * the force rises from its base line to full; a bar marks 10 % to 90 %.
 */
import type { GearFill, TrainFill } from '../engine/things/brake/fill.ts';
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

const WIDTH = 760;
const LEFT = 170;
const RIGHT = 96;
const TOP = 44;
const ROW = 38;
const BAND = 26;

export interface PlotNames {
  readonly title: string;
  readonly vehicle: (index: number) => string;
  readonly time: (seconds: number) => string;
}

/** Rows that a plot can show: those whose force changes. */
const shown = (fill: TrainFill): GearFill[] => fill.gears.filter((g) => Number.isFinite(g.full));

export function brakePlot(fill: TrainFill, names: PlotNames): Scene {
  const gears = shown(fill);
  const end = Math.max(0.1, ...gears.map((g) => g.full)) * 1.08;
  const x = scaleLinear([0, end], [LEFT, WIDTH - RIGHT]);
  const height = TOP + gears.length * ROW + 44;
  const floor = TOP + gears.length * ROW;
  return drawing(WIDTH, height, names.title, [
    rectShape('paper', 0, 0, WIDTH, height),
    textShape('strong', 16, 26, names.title, 16),
    ...axis(x, end, floor),
    ...gears.map((g, i) => row(g, TOP + i * ROW, x, end, names)),
  ]);
}

type Scale = (seconds: number) => number;

function axis(x: Scale, end: number, floor: number): Shape[] {
  const ticks = roundFigures(0, end, 6);
  return [
    lineShape('ink', LEFT, floor + 4, WIDTH - RIGHT, floor + 4),
    ...ticks.flatMap((t) => [
      lineShape('dotted', x(t), TOP, x(t), floor + 4),
      textShape('small', x(t), floor + 20, `${t}`, 12, 'middle'),
    ]),
    textShape('small', WIDTH - RIGHT + 8, floor + 20, 'seconds', 12),
    textShape('small', LEFT, floor + 36, 'line: force from nothing to full · bar: from 10 % to 90 %', 12),
  ];
}

function row(gear: GearFill, top: number, x: Scale, end: number, names: PlotNames): Shape {
  const base = top + BAND + 4;
  const points = gear.curve.time
    .map((t, i): [number, number] => [t, gear.curve.share[i]])
    .filter(([t]) => t <= end);
  const last = points[points.length - 1];
  if (last && last[0] < end) points.push([end, last[1]]);
  const curve = points.map(([t, share]): Point => [x(t), base - share * BAND]);
  return group({}, [
    textShape('word', LEFT - 12, base - 8, names.vehicle(gear.vehicle), 13, 'end'),
    lineShape('hair', LEFT, base, WIDTH - RIGHT, base),
    rectShape('cautious', x(gear.t10), base - 5, x(gear.t90) - x(gear.t10), 5),
    pathShape('bold', polyline(curve)),
    textShape('small', WIDTH - RIGHT + 8, base - 8, names.time(gear.t90), 12),
  ]);
}
