/**
 * Profile gauge: each wheelset's flange and tread as measured, drawn over what the host's sheet takes. True to scale, cut through the
 * wheel; between what was measured the shape is a likeness. Pure: data in, scene out.
 */
import type { Standards } from '../../engine/outing/types.ts';
import type { Vehicle } from '../../engine/things/vehicle/types.ts';
import type { Wheelset } from '../../engine/things/wheel/types.ts';
import { calliper } from '../../words/calliper.ts';
import type { Voice } from '../../words/voice.ts';
import { SIZE, titled } from '../plot.ts';
import {
  group,
  lineShape,
  type Point,
  pathShape,
  polyline,
  type Scene,
  type Shape,
  textShape,
} from '../strip/scene.ts';

const COLUMN = 250;
const ROW = 190;
const TOP = 36;
/** Of the tread outward, rise ÷ run: a likeness, no wheel's own. */
const TAPER = 0.05;

/** What a wheel's section is drawn from, m. */
interface Section {
  readonly flange: number;
  readonly height: number;
  readonly width: number;
  /** Flat where it is not measured. */
  readonly hollow: number;
}

interface Drawn {
  readonly name: string;
  readonly section: Section;
}

/** Wheelsets of which flange thickness, height and width are measured. */
function drawnOf(vehicles: readonly Vehicle[]): Drawn[] {
  return vehicles.flatMap((v) =>
    (v.wheelsets ?? []).flatMap((w: Wheelset): Drawn[] =>
      w.flangeThickness && w.flangeHeight !== undefined && w.width !== undefined
        ? [
            {
              name: `${v.name}, ${w.name}`,
              section: {
                flange: w.flangeThickness.low,
                height: w.flangeHeight,
                width: w.width,
                hollow: w.hollow ?? 0,
              },
            },
          ]
        : [],
    ),
  );
}

/** From the back of the wheel outward; y down from the tread at the flange's root, m. */
function outline({ flange, height, width, hollow }: Section): Point[] {
  const tread = width - flange;
  const y = (share: number): number => -TAPER * tread * share - 4 * hollow * share * (1 - share);
  return [
    [0, -height * 2],
    [0, height * 0.6],
    [flange * 0.3, height],
    [flange * 0.6, height],
    [flange, 0],
    ...[0.1, 0.25, 0.5, 0.75, 0.9, 1].map((s): Point => [flange + tread * s, y(s)]),
    [width, -height * 2],
  ];
}

/** The thinnest flanges first. undefined: no wheelset has flange and width measured. @param most so many, all if nothing is said */
export function wheelPlot(
  vehicles: readonly Vehicle[],
  standards: Standards | undefined,
  voice: Voice,
  wide = 760,
  most = Number.POSITIVE_INFINITY,
): Scene | undefined {
  const all = drawnOf(vehicles)
    .sort((a, b) => a.section.flange - b.section.flange)
    .slice(0, most);
  if (all.length === 0) return undefined;
  const columns = Math.max(1, Math.floor(wide / COLUMN));
  const each = wide / columns;
  const unit = Math.min(
    ...all.map(({ section: s }) => Math.min((each - 60) / s.width, (ROW - 60) / (3.4 * s.height))),
  );
  const title = 'Wheels as measured, over the sheet';
  const high = TOP + Math.ceil(all.length / columns) * ROW;
  return titled(wide, high, title, [
    ...all.map(({ name, section }, i): Shape => {
      const x0 = each * (i % columns) + (each - section.width * unit) / 2;
      const y0 = TOP + Math.floor(i / columns) * ROW + 2.1 * section.height * unit + 8;
      const at = ([x, y]: Point): Point => [x0 + x * unit, y0 + y * unit];
      return group({}, [
        pathShape('body', `${polyline(outline(section).map(at))}Z`),
        ...limits(standards, section, at, voice),
        textShape(
          'small',
          each * ((i % columns) + 0.5),
          TOP + (Math.floor(i / columns) + 1) * ROW - 8,
          name,
          SIZE,
          'middle',
        ),
      ]);
    }),
  ]);
}

/** Lines that the flange must reach, and must not. */
function limits(
  standards: Standards | undefined,
  { height, width }: Section,
  at: (p: Point) => Point,
  voice: Voice,
): Shape[] {
  const thin = standards?.flangeThickness;
  const upright = (x: number): Shape =>
    lineShape('pencil', ...at([x, -0.4 * height]), ...at([x, 1.15 * height]));
  const level = (y: number): Shape => lineShape('pencil', ...at([-0.04 * width, y]), ...at([0.5 * width, y]));
  const told = (p: Point, down: number, text: string): Shape => {
    const [x, y] = at(p);
    return textShape('pencilword', x, y + down, text, 11);
  };
  const bounds = [thin?.least, thin?.slowBelow, thin?.most].flatMap((x) => x ?? []);
  const depth = standards?.flangeHeight?.most;
  return [
    ...bounds.map(upright),
    ...(thin?.least === undefined
      ? []
      : [
          told(
            [thin.least, Math.max(height, depth ?? height)],
            18,
            `least ${calliper(thin.least, voice, 'up')}`,
          ),
        ]),
    ...(depth === undefined
      ? []
      : [level(depth), told([0.52 * width, depth], 2, `most ${calliper(depth, voice, 'down')}`)]),
  ];
}
