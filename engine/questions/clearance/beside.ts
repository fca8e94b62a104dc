/** What of a train stands at a place beside a track on which another passes, and the room between the two. */
import {
  type Boxed,
  boxAt,
  type Lane,
  laneOf,
  type Poised,
  roomBeside,
  turned,
} from '../../things/clearance/room.ts';
import { type Side, type SweptShape, standing } from '../../things/clearance/swept.ts';
import type { Plan } from '../../things/line/plan.ts';
import type { Line } from '../../things/line/types.ts';
import { type Body, leanToward } from './bodies.ts';

export interface Least {
  readonly room: number;
  /** Nearer end of what stands, beyond the tips of the first points, m. */
  readonly at: number;
  /** Names of the two vehicles; nothing passes near: no name. */
  readonly stands: string;
  readonly passes: string;
}

/** Vehicles alike, one way round. */
interface Kind {
  readonly body: Body;
  readonly shape: SweptShape;
  readonly long: number;
}

export interface Beside {
  readonly kinds: readonly Kind[];
  /** @param at nearer end, beyond the tips · fine: to a hundredth of a millimetre, else as far as the grid tells */
  readonly roomAt: (kind: number, at: number, fine: boolean) => Least;
}

interface Two {
  readonly stand: Line;
  readonly pass: Line;
  readonly standPlan: Plan;
  readonly passPlan: Plan;
  readonly tips: number;
  readonly side: Side;
}

const OPPOSITE = { left: 'right', right: 'left' } as const;

/** undefined: a frame of what passes cannot stand somewhere; where one of what stands cannot, there is no room. */
export function besideFor(
  { stand, pass, standPlan, passPlan, tips, side }: Two,
  standingBodies: readonly Body[],
  passingBodies: readonly Body[],
): Beside | undefined {
  const kinds = kindsOf(standingBodies);
  const passers = kindsOf(passingBodies).flatMap((kind) =>
    poisedOf(leaned(kind, pass, OPPOSITE[side]), pass, OPPOSITE[side], kind.body.play.high).map((poised) => ({
      kind,
      poised,
    })),
  );
  const lanes: Lane[] = [];
  for (const { kind, poised } of passers) {
    const lane = laneOf(passPlan, poised, -kind.long, pass.length);
    if (!lane) return undefined;
    lanes.push(lane);
  }
  const box: Boxed = { x: 0, y: 0, ux: 1, uy: 0, long: 0, wide: 0 };
  const poised = kinds.map((kind) => poisedOf(kind.shape, stand, side, kind.body.play.high));
  const roomAt = (kind: number, at: number, fine: boolean): Least => {
    const { body, shape } = kinds[kind];
    const rear = tips + at - shape.box.rear;
    const lean = leanToward(stand, side, rear, { low: body.underside, high: body.top });
    let least: Least = { room: Infinity, at, stands: body.of.vehicle.name, passes: '' };
    for (const p of poised[kind]) {
      if (!boxAt(standPlan, p, rear, standing(shape.guides), box)) {
        return { ...least, room: -Infinity };
      }
      const { room, lane } = roomBeside(box, lanes, fine);
      const left = room - lean;
      if (left < least.room)
        least = { ...least, room: left, passes: lane < 0 ? '' : passers[lane].kind.body.of.vehicle.name };
    }
    return least;
  };
  return { kinds, roomAt };
}

/** Each once, and once more turned round where that makes a difference. */
function kindsOf(bodies: readonly Body[]): Kind[] {
  const known = new Map<string, Kind>();
  for (const body of bodies)
    for (const shape of [body.shape, turned(body.shape)]) {
      const key = JSON.stringify([rounded(shape), body.play.high, body.underside, body.top]);
      if (!known.has(key)) known.set(key, { body, shape, long: shape.box.front - shape.box.rear });
    }
  return [...known.values()];
}

/** To a micrometre: the two ends of one vehicle reckoned apart. */
const rounded = ({ guides, box }: SweptShape): readonly number[] =>
  [guides, box.rear, box.front, box.left, box.right].map((m) => Math.round(m * 1e6));

/** Its flanges hard over toward the other track, both ends alike or aslant. */
function poisedOf(shape: SweptShape, line: Line, side: Side, play: number): Poised[] {
  const widened = Math.max(0, ...line.curves.map((c) => c.gaugeWidening));
  const off = ((play + widened) / 2) * (side === 'left' ? 1 : -1);
  if (off === 0) return [{ shape, aside: { rear: 0, front: 0 } }];
  return [
    { shape, aside: { rear: off, front: off } },
    { shape, aside: { rear: -off, front: off } },
    { shape, aside: { rear: off, front: -off } },
  ];
}

/** As wide to that side as canted track leans it anywhere. */
function leaned({ body, shape }: Kind, line: Line, side: Side): SweptShape {
  const heights = { low: body.underside, high: body.top };
  const lean = Math.max(0, ...line.cants.map(({ at }) => leanToward(line, side, at, heights)));
  const { left, right } = shape.box;
  return {
    ...shape,
    box: { ...shape.box, ...(side === 'left' ? { left: left + lean } : { right: right - lean }) },
  };
}
