/** Every vehicle's section within the host's profile, from the front, to one scale. Pure: data in, scene out. */
import { type Corner, wholeFigure } from '../../engine/base/numerics/polygon.ts';
import type { SectionFit } from '../../engine/questions/standards/profile.ts';
import { tape } from '../../words/calliper.ts';
import type { Voice } from '../../words/voice.ts';
import { SIDE, SIZE, titled } from '../plot.ts';
import { wrapped } from '../strip/letters.ts';
import {
  lineShape,
  type Point,
  pathShape,
  polyline,
  type Scene,
  type Shape,
  textShape,
} from '../strip/scene.ts';

const HIGH = 260;
const MOST = 3;

/** undefined: nothing to draw. The vehicles with the least left, three beside each other. */
export function sectionPlot(sections: readonly SectionFit[], voice: Voice, wide = 760): Scene | undefined {
  const drawn = sections
    .flatMap((s) => (s.section && s.room ? [{ ...s, section: s.section, room: s.room }] : []))
    .sort((a, b) => a.room.left - b.room.left)
    .slice(0, wide < 560 ? 1 : MOST);
  if (drawn.length === 0) return undefined;
  const title = 'Within the host’s profile';
  const each = (wide - 2 * SIDE) / drawn.length;
  const all = drawn.flatMap((s) => [...wholeFigure(s.profile.points), ...s.section]);
  const [top, half] = [Math.max(...all.map((p) => p.y)), Math.max(...all.map((p) => Math.abs(p.x)))];
  const foot = Math.min(0, ...all.map((p) => p.y));
  const scale = Math.min(HIGH / (top - foot), (each - 24) / (2 * half));
  const base = 40 + (top - foot) * scale;
  const parts = drawn.flatMap((s, i): Shape[] => {
    const middle = SIDE + each * (i + 0.5);
    const at = ({ x, y }: Corner): Point => [middle - x * scale, base + (foot - y) * scale];
    const round = (of: readonly Corner[]): string => `${polyline(of.map(at))}Z`;
    const rail = at({ x: 0, y: 0 })[1];
    const [x, y] = at(s.room.at);
    return [
      pathShape('body', round(s.section)),
      pathShape('pencil', round(wholeFigure(s.profile.points))),
      lineShape('rail', middle - half * scale, rail, middle + half * scale, rail),
      lineShape('bold', x - 7, y, x + 7, y),
      lineShape('bold', x, y - 7, x, y + 7),
      ...wrapped(
        `${s.name}: ${s.room.left < 0 ? `${tape(-s.room.left, voice, 'up')} out` : `${tape(s.room.left, voice, 'down')} left`}`,
        SIZE,
        each - 12,
      ).map((text, k) => textShape('small', middle, base + 20 + k * SIZE * 1.4, text, SIZE, 'middle')),
    ];
  });
  const height = base + 64;
  return titled(wide, height, title, [...parts]);
}
