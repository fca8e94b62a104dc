/** On the plan: where ends of a train may stand, a stroke across the track; where least is left beside it, a cross. */
import { MAIN } from '../../engine/things/line/types.ts';
import type { Sheet, Spot } from '../strip/letters.ts';
import { group, lineShape, type Point, type Shape, shape } from '../strip/scene.ts';
import type { Plan } from './draw.ts';
import type { DrawnTrack } from './tracks.ts';
import type { PlanWords } from './words.ts';

export interface MarkOnPlan {
  readonly kind: 'end' | 'near';
  readonly track: string;
  /** By the track's own distances, m. */
  readonly at: number;
  readonly name: string;
  readonly left?: number;
}

interface Crossed {
  readonly x: number;
  readonly y: number;
  /** Across the track. */
  readonly left: Point;
}

function placeOf({ fitted }: Plan, tracks: readonly DrawnTrack[], mark: MarkOnPlan): Crossed | undefined {
  if (mark.track === MAIN) return fitted.at(mark.at);
  const at = tracks.find(({ id }) => id === mark.track)?.at(mark.at);
  return at && { x: at.x, y: at.y, left: [at.along[1], -at.along[0]] };
}

/** Of a track that is not drawn, none. Names stand where they leave room; every mark tells itself when pointed at. */
export function drawMarks(
  plan: Plan,
  tracks: readonly DrawnTrack[],
  words: PlanWords,
  sheet: Sheet,
): Shape[] {
  const size = plan.view.textSize;
  return plan.marks.flatMap((mark) => {
    const place = placeOf(plan, tracks, mark);
    if (!place) return [];
    const { x, y, left } = place;
    const tip = (along: number, across: number): Point => [
      x + (left[1] * -along + left[0] * across) * size * 0.55,
      y + (left[0] * along + left[1] * across) * size * 0.55,
    ];
    const stroke = (a: Point, b: Point): Shape =>
      lineShape(mark.kind === 'near' ? 'nearest' : 'bold', ...a, ...b);
    const strokes =
      mark.kind === 'end'
        ? [stroke(tip(0, -1), tip(0, 1))]
        : [stroke(tip(-0.8, -0.8), tip(0.8, 0.8)), stroke(tip(-0.8, 0.8), tip(0.8, -0.8))];
    const spots = [1.3, 2.2, 3.3].flatMap((off) =>
      [1, -1].map((side): Spot => {
        const dx = left[0] * side;
        return {
          x: x + dx * off * size,
          y: y + left[1] * side * off * size + size * 0.35,
          anchor: dx > 0.35 ? 'start' : dx < -0.35 ? 'end' : 'middle',
        };
      }),
    );
    const put = sheet.put('small', words.mark(mark), size, spots);
    return [
      group({ class: 'mark' }, [shape('title', {}, [words.markFully(mark)]), ...strokes]),
      ...(put ? [put.shape] : []),
    ];
  });
}
