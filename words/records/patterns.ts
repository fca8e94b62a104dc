/** Patterns of incidents, in words: how many, how many by chance, how seldom chance does that, and what that does not say. */
import { isPattern, isWorthALook, type Look, type Looked, type Patterns } from '../../records/patterns.ts';
import { chainage, type Voice } from '../voice.ts';
import { incidentWords } from './incident.ts';

type Shown = Pick<Voice, 'system'>;

/** Two figures; of what is not so seldom the share. @param chance rounded so that it is told as no more seldom than it is */
export function odds(chance: number): string {
  if (chance >= 1) return 'always';
  if (chance > 0.2) return `${Math.ceil(100 * chance)} times in 100`;
  if (chance <= 0) return 'never';
  const times = 1 / chance;
  const step = 10 ** Math.max(0, Math.floor(Math.log10(times)) - 1);
  return `once in ${(Math.floor(times / step + 1e-9) * step).toLocaleString('en-US')}`;
}

const few = (count: number): string => (count >= 10 ? count.toFixed(0) : count.toFixed(1));

const upTo = ([low, high]: readonly [number, number]): string =>
  low === 0 ? `none to ${few(high)}` : `${few(low)} to ${few(high)}`;

export function tellLooked(at: Looked, voice: Shown): string {
  switch (at.of) {
    case 'place': {
      const end = at.lap !== undefined && at.to > at.lap ? at.to - at.lap : at.to;
      const ends = [chainage(voice, at.from, 'down'), chainage(voice, end, 'up')];
      const near = at.near.length === 0 ? '' : ` (${at.near.slice(0, 3).join(', ')})`;
      return `${at.line}, ${at.from === at.to ? `at ${chainage(voice, at.from)}` : `from ${ends[0]} to ${ends[1]}`}${near}`;
    }
    case 'vehicle':
      return at.vehicle;
    case 'curve':
      return at.hand === 'straight' ? 'on straight track' : `in curves to the ${at.hand}`;
    case 'first-days':
      return `in a driver’s first ${at.days} days`;
  }
}

export interface ToldLook {
  readonly where: string;
  /** MORE THAN CHANCE; worth a look, may be chance; as chance has it. */
  readonly word: string;
  readonly figures: string;
  readonly odds: string;
}

export function tellLook(look: Look, looked: number, voice: Shown): ToldLook {
  const { at, found, all, expected, bounds, chance, anywhere } = look;
  return {
    where: tellLooked(at, voice),
    word: isPattern(look)
      ? 'MORE THAN CHANCE'
      : isWorthALook(look)
        ? 'worth a look, may be chance'
        : 'as chance has it',
    figures: `${found} of ${all}; ${few(expected)} by chance; of so few the true figure may be ${upTo(bounds)}`,
    odds: `chance does so there ${odds(chance)}, and anywhere among the ${looked} looked at ${odds(anywhere)}`,
  };
}

const plural = (count: number, one: string, more = `${one}s`): string =>
  `${count === 0 ? 'No' : count} ${count === 1 ? one : more}`;

const missing: Readonly<Record<Looked['of'], string>> = {
  place: 'have no place on a line that a recorded run was on',
  vehicle: 'name no vehicle that is in a recorded run',
  curve: 'do not say where and which way the train ran',
  'first-days': 'name no departure whose driver began after these records did',
};

/** What is said before the looks. */
export function tellGround(all: Patterns, within: string, firstDays: number): string[] {
  const { kind, found, runs, bounds, looked, by, unplaced } = all;
  const word = incidentWords[kind];
  return [
    `${plural(found, word)} in ${plural(runs, 'recorded run').toLowerCase()}.${runs === 0 ? '' : ` Of so few, ${upTo(bounds)} are to be expected in as many runs again (19 times in 20, if each comes by itself).`}`,
    ...(looked === 0
      ? []
      : [
          `${looked} looked at: each stretch of ${within} that begins with one, each vehicle, curves of each hand and the straight, a driver’s first ${firstDays} days; by ${by}. Among so many something looks bad by chance alone: the odds are told times ${looked}.`,
        ]),
    ...(Object.keys(missing) as Looked['of'][])
      .filter((of) => unplaced[of] > 0)
      .map((of) => `${unplaced[of]} of ${found} ${missing[of]}: not counted there.`),
  ];
}

/** What is said after them. */
export const CAVEAT =
  'As chance has it does not say in order: few say little, and each is looked at by itself. What is logged by a landmark heaps there.';
