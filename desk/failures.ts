/** What if one thing fails? The worst case of each single failure, in the line's own chainage. */

import { turnFindings, turnOf } from '../engine/answer/chainage.ts';
import { inquire } from '../engine/answer/inquiry.ts';
import { ranked } from '../engine/answer/verdict.ts';
import type { Outing } from '../engine/outing/types.ts';
import { balance } from '../engine/questions/balance/question.ts';
import { askFailures } from '../engine/questions/failures/ask.ts';
import type { Failure } from '../engine/questions/failures/left.ts';
import type { Finding } from '../engine/questions/finding.ts';
import type { Outcome } from '../engine/questions/part/types.ts';
import { speed } from '../engine/questions/speed/question.ts';
import { brakeKindWords } from '../words/findings/brakes.ts';

/** One failure at its worst place. */
export interface FailureCase {
  readonly failure: Failure;
  /** Index of the vehicle that it is on or behind. */
  readonly vehicle?: number;
  /** Train's head as it fails, m, and its speed, m/s. */
  readonly at: number;
  readonly speed: number;
  readonly outcome: Outcome;
  readonly stops: boolean;
  /** m that it goes on, to rest or to what it meets, as unlucky as a cautious stop; and with nothing failed. */
  readonly way: number;
  readonly usual: number;
  /** Train's head where it ends, m; laps of a loop are counted on. */
  readonly end: number;
  readonly time: number;
  readonly topSpeed: number;
  /** Greatest speed once it has stood and rolled off again, m/s. */
  readonly rollsOff: number;
  /** Speed at what it meets, m/s. */
  readonly metAt: number;
  /** Name of the place rolled through. */
  readonly place?: string;
  /** Names of the brakes lost, and of those nobody can tell of, counted as lost. */
  readonly lost: readonly string[];
  readonly unknown: readonly string[];
}

export interface FailureLook {
  readonly cases: readonly FailureCase[];
  readonly findings: readonly Finding[];
}

/** @param spacing m between the places looked at */
export function lookAtFailures(outing: Outing, spacing = 1): FailureLook {
  const { context, ready, of } = inquire(outing);
  const { data, findings } = askFailures({
    context,
    careful: ready.careful,
    speeds: of(speed).data.running,
    bodies: of(balance).data.data,
    spacing,
    each: true,
  });
  const turn = turnOf(outing);
  const { vehicles } = outing.train;
  const names = (gears: (typeof data)[number]['left']['lost']): string[] =>
    gears.map(({ vehicle, gear }) => `${brakeKindWords(gear.name)} of ${vehicles[vehicle].name}`);
  return {
    cases: data.map(({ map: _map, index: _index, left, place, at, end, ...row }) => ({
      ...row,
      at: turn(at),
      end: turn(end),
      stops: row.outcome === 'stands',
      ...(place === undefined ? {} : { place: context.line.places[place].name }),
      lost: names(left.lost),
      unknown: names(left.unknown),
    })),
    findings: ranked(turnFindings(outing, findings)),
  };
}
