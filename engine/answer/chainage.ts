/**
 * Answers in the line's own chainage, as its boards show it. The engine answers in the running direction;
 * for an outing run in reverse, chainage s there is length − s here.
 */

import type { Outing } from '../outing/types.ts';
import type { WheelMap } from '../questions/balance/wheel-map.ts';
import type { Finding } from '../questions/finding.ts';
import type { BrakingPoint, Driven, SpeedMap } from '../questions/speed/types.ts';
import type { Answer, CarCount, CountLimit } from './types.ts';

/** From the one chainage to the other; its own inverse. */
export type Turn = (s: number) => number;

type Run = Pick<Outing, 'direction' | 'line'>;

export const turnOf = ({ direction, line }: Run): Turn =>
  direction === 'forward' ? (s) => s : (s) => line.length - s;

/** +1: the line's chainage grows in the running direction; −1: it falls. */
export const senseOf = ({ direction }: Pick<Outing, 'direction'>): 1 | -1 =>
  direction === 'forward' ? 1 : -1;

/** What was listed in the running direction, in the order of the line's chainage. */
export const inLineOrder = <T>({ direction }: Pick<Outing, 'direction'>, list: readonly T[]): T[] =>
  direction === 'forward' ? [...list] : [...list].reverse();

export function turnFindings(outing: Run, findings: readonly Finding[]): readonly Finding[] {
  return outing.direction === 'forward' ? findings : findings.map((f) => turnFinding(f, turnOf(outing)));
}

export function inLineChainage(outing: Outing, answer: Answer): Answer {
  if (outing.direction === 'forward') return answer;
  const turn = turnOf(outing);
  return {
    ...answer,
    findings: turnFindings(outing, answer.findings),
    speeds: answer.speeds && turnMap(answer.speeds, turn),
    wheels: turnWheels(answer.wheels, turn),
    brakingPoints: turnPoints(answer.brakingPoints, turn),
    driven: answer.driven && {
      imperial: turnDriven(answer.driven.imperial, turn),
      metric: turnDriven(answer.driven.metric, turn),
    },
    cars: turnCounts(outing, answer.cars),
    haul: answer.haul && {
      ...answer.haul,
      startsAt: turn(answer.haul.startsAt),
      rulingAt: turn(answer.haul.rulingAt),
      hardStretches: answer.haul.hardStretches.map(({ from, to, fails }) => ({
        from: Math.min(turn(from), turn(to)),
        to: Math.max(turn(from), turn(to)),
        fails,
      })),
    },
    hold: answer.hold && { ...answer.hold, at: turn(answer.hold.at) },
  };
}

function turnFinding(finding: Finding, turn: Turn): Finding {
  const { from, to, ...rest } = finding.where;
  const where =
    from === undefined || to === undefined ? finding.where : { ...rest, from: turn(to), to: turn(from) };
  const { facts } = finding;
  // Places are named so, and only they: the tables of kinds would weigh on the first screen.
  const turned = 'at' in facts && facts.at ? { ...facts, at: { ...facts.at, si: turn(facts.at.si) } } : facts;
  return { ...finding, where, facts: turned } as Finding;
}

const turnPoints = (points: readonly BrakingPoint[], turn: Turn): BrakingPoint[] =>
  points.map((p) => ({ ...p, at: turn(p.at), target: turn(p.target) }));

/** Still in the running order. */
const turnDriven = (driven: Driven, turn: Turn): Driven => ({
  ...driven,
  zones: driven.zones.map((z) => ({ ...z, from: turn(z.from), to: turn(z.to) })),
  acts: turnPoints(driven.acts, turn),
});

const turnMap = (map: SpeedMap, turn: Turn): SpeedMap => ({
  ...map,
  at: map.at.map(turn).reverse(),
  limit: map.limit.slice().reverse(),
  reason: map.reason.slice().reverse(),
  likelyStop: map.likelyStop.slice().reverse(),
  cautiousStop: map.cautiousStop.slice().reverse(),
  gap: map.gap.slice().reverse(),
});

const turnWheels = (map: WheelMap, turn: Turn): WheelMap => ({
  ...map,
  at: map.at.map(turn).reverse(),
  share: map.share.slice().reverse(),
  by: map.by.slice().reverse(),
});

export const turnCounts = (outing: Run, cars: readonly CarCount[]): readonly CarCount[] =>
  outing.direction === 'forward' ? cars : cars.map((c) => turnCount(c, turnOf(outing)));

const turnCount = (count: CarCount, turn: Turn): CarCount => ({
  ...count,
  ...(count.leastSets ? { leastSets: turnLimit(count.leastSets, turn) } : {}),
  sets: Object.fromEntries(Object.entries(count.sets).map(([way, limit]) => [way, turnLimit(limit, turn)])),
});

const turnLimit = (limit: CountLimit, turn: Turn): CountLimit =>
  limit.at === undefined ? limit : { ...limit, at: turn(limit.at) };
