/** What of a train stands at a place beside a track on which another passes, and the room between the two. */
import {
  type Boxed,
  boxAt,
  type Lane,
  laneOf,
  looseOf,
  type Poised,
  type Room,
  roomBeside,
  turned,
} from '../../things/clearance/room.ts';
import { farthest, type Side, type SweptShape, standing } from '../../things/clearance/swept.ts';
import { type Frame, seenFrom, within } from '../../things/line/frames.ts';
import { onLine } from '../../things/line/geometry.ts';
import { layPlan, type Plan, type Spot, spotAt } from '../../things/line/plan.ts';
import type { Line } from '../../things/line/types.ts';
import { type Body, leanToward } from './bodies.ts';
import type { Other } from './others.ts';
import { rolled } from './sway.ts';

export interface Least {
  readonly room: number;
  /** Nearer end of what stands, beyond the tips of the first points, m. */
  readonly at: number;
  /** Names of the two vehicles; nothing passes near: no name. */
  readonly stands: string;
  readonly passes: string;
  /** Name of the track that it passes on, where that is none that the one stood on joins. */
  readonly on?: string;
}

/** Vehicles alike, one way round. */
interface Kind {
  readonly body: Body;
  /** End for end: what rolls to its left rolls to the right. */
  readonly around: boolean;
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
  others: readonly Other[],
): Beside | undefined {
  const [kinds, passing] = [kindsOf(standingBodies), kindsOf(passingBodies)];
  // Those may lie on either side.
  const sides: readonly Side[] = others.length > 0 ? ['left', 'right'] : [side];
  const lanes: Lane[] = [];
  const passers: { readonly kind: Kind; readonly on?: string }[] = [];
  const add = (kind: Kind, on: Way, toward: readonly Side[]): boolean => {
    const [shape, play] = [leaned(kind, on.line, toward), kind.body.play.high];
    const family = { loose: looseOf(shape, widest(on.line, play)) };
    const { frame } = on;
    for (const poised of poisedOf(shape, on.line, toward, play)) {
      const lane = laneOf(on.plan, poised, on.from - kind.long, on.to, {
        family,
        ...(frame ? { frame } : {}),
      });
      if (!lane) return false;
      lanes.push(lane);
      passers.push({ kind, ...(on.name === undefined ? {} : { on: on.name }) });
    }
    return true;
  };
  const ways: Way[] = others.map((other) => wayOf(other, passing));
  const stands = passing.every(
    (kind) =>
      add(kind, { line: pass, plan: passPlan, from: 0, to: pass.length }, [OPPOSITE[side]]) &&
      ways.every((way) => add(kind, way, ['left', 'right'])),
  );
  if (!stands) return undefined;
  const box: Boxed = { x: 0, y: 0, ux: 1, uy: 0, long: 0, wide: 0 };
  const poised = kinds.map((kind) => poisedOf(kind.shape, stand, sides, kind.body.play.high));
  // The place asked for next is mostly beside the one before.
  const before: (Room | undefined)[][] = poised.map((ways) => ways.map(() => undefined));
  const roomAt = (kind: number, at: number, fine: boolean): Least => {
    const { body, shape } = kinds[kind];
    const rear = tips + at - shape.box.rear;
    const heights = { low: body.underside, high: body.top };
    const lean = Math.max(
      ...sides.map((to) => leanToward(stand, to, rear, heights, swayed(kinds[kind], stand, to, rear, 0))),
    );
    let least: Least = { room: Infinity, at, stands: body.of.vehicle.name, passes: '' };
    for (const [i, p] of poised[kind].entries()) {
      if (!boxAt(standPlan, p, rear, standing(shape.guides), box)) {
        return { ...least, room: -Infinity };
      }
      const nearest = roomBeside(box, lanes, fine, before[kind][i]);
      before[kind][i] = nearest;
      const { room, lane } = nearest;
      const left = room - lean;
      if (left < least.room) least = { room: left, at, stands: least.stands, ...passedBy(passers[lane]) };
    }
    return least;
  };
  return { kinds, roomAt };
}

/** Each once, and once more turned round where that makes a difference. */
function kindsOf(bodies: readonly Body[]): Kind[] {
  const known = new Map<string, Kind>();
  for (const body of bodies)
    for (const around of [false, true]) {
      const shape = around ? turned(body.shape) : body.shape;
      const { play, underside, top, roll } = body;
      const key = JSON.stringify([
        rounded(shape),
        play.high,
        underside,
        top,
        ...(roll ? [roll.kind, around] : []),
      ]);
      if (!known.has(key)) known.set(key, { body, around, shape, long: shape.box.front - shape.box.rear });
    }
  return [...known.values()];
}

/** To a micrometre: the two ends of one vehicle reckoned apart. */
const rounded = ({ guides, box }: SweptShape): readonly number[] =>
  [guides, box.rear, box.front, box.left, box.right].map((m) => Math.round(m * 1e6));

/** A track that something passes on. */
interface Way {
  readonly line: Line;
  readonly plan: Plan;
  readonly from: number;
  readonly to: number;
  readonly frame?: Frame;
  readonly name?: string;
}

/** Its plan reaches beyond its ends, and so begins elsewhere than the track itself. */
function wayOf({ line, from, to, frame, name }: Other, kinds: readonly Kind[]): Way {
  const reach = Math.max(...kinds.map(({ shape }) => farthest(shape)));
  const plan = layPlan(line, Math.min(-reach, from - reach), Math.max(line.length, to) + reach);
  const start: Spot = { x: 0, y: 0, cos: 1, sin: 0 };
  spotAt(plan, 0, start);
  return { line, plan, from, to, frame: within(frame, seenFrom(start)), name };
}

const passedBy = (
  passer: { readonly kind: Kind; readonly on?: string } | undefined,
): Pick<Least, 'passes' | 'on'> => ({
  passes: passer?.kind.body.of.vehicle.name ?? '',
  ...(passer?.on === undefined ? {} : { on: passer.on }),
});

/** Play where the gauge is widened most, m. */
const widest = ({ curves }: Line, play: number): number =>
  play + Math.max(0, ...curves.map((c) => c.gaugeWidening));

/** Its flanges hard over to a side, both ends alike or aslant. */
function poisedOf(shape: SweptShape, line: Line, sides: readonly Side[], play: number): Poised[] {
  const most = widest(line, play) / 2;
  if (most === 0) return [{ shape, aside: { rear: 0, front: 0 } }];
  const aslant = [
    { shape, aside: { rear: -most, front: most } },
    { shape, aside: { rear: most, front: -most } },
  ];
  return [
    ...sides.map((side) => {
      const off = side === 'left' ? most : -most;
      return { shape, aside: { rear: off, front: off } };
    }),
    ...aslant,
  ];
}

/** On springs to a side of the track, rad; with nobody's springs measured, nothing. @param speed m/s; nothing: it stands */
function swayed({ body, around }: Kind, line: Line, side: Side, at: number, speed: number): number {
  if (!body.roll) return 0;
  const { to } = body.roll;
  const roll = around
    ? { ...body.roll, to: ((of, ...rest) => to(OPPOSITE[of], ...rest)) as typeof to }
    : body.roll;
  return rolled(roll, line, side, onLine(line, at), speed, 'high');
}

/** A hair to either side of where a curve begins and ends, m. */
const BY = 1e-3;

/** As wide to those sides as canted track leans it anywhere, and its springs with it at what it is meant to run at. */
function leaned(kind: Kind, line: Line, sides: readonly Side[]): SweptShape {
  const { body, shape } = kind;
  const heights = { low: body.underside, high: body.top };
  const bends = body.roll ? line.curves.flatMap(({ from, to }) => [from + BY, to - BY]) : [];
  const places = [...line.cants.map(({ at }) => at), ...bends, ...(body.roll ? [0] : [])];
  const lean = (side: Side): number =>
    sides.includes(side)
      ? Math.max(
          0,
          ...places.map((at) =>
            leanToward(line, side, at, heights, swayed(kind, line, side, at, body.fastest)),
          ),
        )
      : 0;
  const { left, right } = shape.box;
  return { ...shape, box: { ...shape.box, left: left + lean('left'), right: right - lean('right') } };
}
