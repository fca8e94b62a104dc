/** The route that an outing names, made into the moves that it is run in. */
import { turnedTrain } from '../../engine/outing/moves.ts';
import type { OtherMove, Outing, Restriction } from '../../engine/outing/types.ts';
import { type Leg, type Move, type NoWay, wayOver } from '../../engine/things/line/route.ts';
import { type Line, MAIN } from '../../engine/things/line/types.ts';
import type { Train } from '../../engine/things/train/types.ts';
import { printQuantity } from '../../units/index.ts';
import type { OutingFile } from '../schema/index.ts';
import { type Notes, trouble } from './notes.ts';
import { trackId } from './tracks.ts';

const metres = (m: number): string => printQuantity(m, 'length', { system: 'metric', digits: 1 });

/** None: none that can be run. */
export function routeOver(file: OutingFile, line: Line, train: Train, notes: Notes): readonly Move[] {
  const { route = [] } = file;
  const long = train.vehicles.reduce((sum, { length }) => sum + length, 0);
  const way = wayOver(line, route.map(trackId), long);
  if (!('lacks' in way)) {
    if (!checkMove(file, way.length, notes)) return [];
    return way.length > 1 ? setsBack(file, way, line, notes) : named(file, way, line);
  }
  const name = route[way.at];
  const [found, expected] = wordsOf(way, route[way.at - 1], line);
  trouble(notes, ['route', way.at], `"${name}", ${found}`, expected);
  return [];
}

function checkMove({ move = 1 }: OutingFile, count: number, notes: Notes): boolean {
  if (Number.isInteger(move) && move <= count) return true;
  trouble(notes, ['move'], `${move}`, `a whole number, at most ${count}: so many moves has this route`);
  return false;
}

function wordsOf({ lacks, room = 0, takes = 0 }: NoWay, before: string, line: Line): [string, string] {
  switch (lacks) {
    case 'track':
      return [
        'which is no track of this line',
        `"main" or one of: ${(line.tracks ?? []).map((t) => t.name).join(', ') || 'none is written'}`,
      ];
    case 'way':
      return [
        `which no points lead to from ${before}, ahead or setting back`,
        'tracks in the order in which points lead from one to the next',
      ];
    case 'turnout':
      return ['whose points are not measured', 'frog and lead of the points that lead there'];
    case 'heights':
      return ['whose heights are not measured', '"profile" of that track'];
    case 'room':
      return [
        `to which one sets back from ${before}, where ${metres(room)} lie beyond the points`,
        `at least ${metres(takes)}: the train, and a pace`,
      ];
  }
}

/** As a whole where it is run without setting back; else move by move. */
const named = ({ route = [] }: OutingFile, moves: readonly Move[], { name, tracks = [] }: Line): Move[] =>
  moves.map((move) => {
    const over = move.legs.map(({ id }) => tracks.find((t) => t.id === id)?.name ?? 'main');
    const by = moves.length === 1 ? route : over;
    return { ...move, line: { ...move.line, name: `${name} by ${by.join(', ')}` } };
  });

/** What is written by distances along the route is of one move alone: nobody can tell of which. */
function setsBack(file: OutingFile, moves: readonly Move[], line: Line, notes: Notes): readonly Move[] {
  const known = notes.troubles.length;
  const alone = 'nothing where the route sets back: write it on the tracks themselves';
  if (file.direction === 'reverse')
    trouble(notes, ['direction'], 'reverse', '"forward": a route that sets back is written as it is run');
  if (file.conditions.railStretches !== undefined)
    trouble(notes, ['conditions', 'railStretches'], 'stretches along the route', alone);
  if (file.agreedLimits !== undefined) trouble(notes, ['agreedLimits'], 'limits along the route', alone);
  return notes.troubles.length > known ? [] : named(file, moves, line);
}

/** The outing over one of its moves, the others beside it. */
export function alongMove(
  index: number,
  moves: readonly Move[],
  whole: Line,
  train: Train,
  compiled: (line: Line, train: Train) => Outing,
): Outing {
  const move = moves[index];
  const outing = compiled(move.line, move.back ? turnedTrain(train) : train);
  const { restrictions } = outing;
  const along = (of: Move): Pick<Outing, 'restrictions'> =>
    restrictions ? { restrictions: restrictionsAlong(of, whole, restrictions) } : {};
  const others = moves.flatMap((of, i): OtherMove[] =>
    of === move ? [] : [{ number: i + 1, line: of.line, turned: of.back !== move.back, ...along(of) }],
  );
  return {
    ...outing,
    ...along(move),
    whole,
    ...(others.length > 0 ? { moves: others } : {}),
    ...(move.back ? { turned: true as const } : {}),
  };
}

/** What is slow or shut on the line, as it lies along a move over pieces of it. */
function restrictionsAlong(
  { legs, line }: Move,
  whole: Line,
  restrictions: readonly Restriction[],
): Restriction[] {
  return restrictions.flatMap((one): Restriction[] => {
    if (one.of !== whole.name) return [one];
    // Beyond the end of the line, and beyond that of the route: where it is meant nobody can tell.
    const beyond = Math.max(one.from, one.to) - whole.length;
    if (beyond > 0.3) return [{ ...one, of: line.name, to: line.length + beyond }];
    return stretchesOf(one, whole).flatMap((stretch) => {
      let begins = 0;
      return legs.flatMap((leg) => {
        const on = leg.id === MAIN ? onLeg(stretch, leg, whole, begins) : [];
        begins += Math.abs(leg.to - leg.from);
        return on.map((where) => ({ ...one, ...where, of: line.name }));
      });
    });
  });
}

interface Stretch {
  readonly from: number;
  readonly to: number;
}

/** Over the origin of a loop it is two; with its ends written the wrong way round it counts elsewhere. */
const stretchesOf = ({ from, to }: Stretch, { loop, length }: Line): Stretch[] => {
  if (from <= to) return [{ from, to }];
  return loop
    ? [
        { from, to: length },
        { from: 0, to },
      ]
    : [{ from: to, to: from }];
};

/** Where a stretch lies along a leg of the line, in every lap that it runs. */
function onLeg(stretch: Stretch, { from, to, along }: Leg, whole: Line, begins: number): Stretch[] {
  const [low, high] = [Math.min(from, to), Math.max(from, to)];
  const laps = whole.loop
    ? Array.from(
        { length: Math.ceil(high / whole.length) - Math.floor(low / whole.length) + 2 },
        (_, i) => Math.floor(low / whole.length) + i - 1,
      )
    : [0];
  return laps.flatMap((lap) => {
    const [a, b] = [
      Math.max(low, stretch.from + lap * whole.length),
      Math.min(high, stretch.to + lap * whole.length),
    ];
    if (b < a) return [];
    const [first, last] = along > 0 ? [a - low, b - low] : [high - b, high - a];
    return [{ from: begins + first, to: begins + last }];
  });
}
