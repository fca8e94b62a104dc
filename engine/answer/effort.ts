/**
 * What a change asks of people who stand beside the train: the less the sooner it is offered. Common practice, no
 * source: only the order counts. What is done at once (sand, speed, a seat, a chain hooked up) comes before a car
 * left behind, one car before two people, a post set back before three cars, the weather after them, and the workshop last. Two people who are left behind are more than a car:
 * nobody leaves seven riders where one car less does.
 */
import type { Change } from '../outing/change.ts';
import type { Outing } from '../outing/types.ts';
import type { Verdict } from '../questions/finding.ts';

const SAND = 1;
const SLOWER = 1;
/** Beside `SLOWER`, down to a stand. */
const CRAWL = 3;
const SEAT = 0.5;
const CHAINS_HOOKED = 1;
/** Others wait. */
const ALONE = 2;
const GUARD = 2;
const LOOKOUT = 1;
const ORDER = 3;
const RIDER = 3;
const CAR = 4;
const CHAINS_NEW = 5;
const CHAIN = 5;
const BALLAST = 5;
/** A post, a sign, a platform's edge: a morning's work of the host's. */
const SET_BACK = 10;
const DRY = 15;
const WORKSHOP = 20;

/** @param outing as it stands before the change */
export function effortOf(outing: Outing, change: Change): number {
  switch (change.kind) {
    case 'rail-state':
      return change.state === 'dry' ? DRY : SAND;
    case 'slower':
      return SLOWER;
    case 'slower-everywhere': {
      const was = Math.min(outing.plannedSpeed ?? Infinity, outing.host.speed?.value ?? Infinity);
      return SLOWER + (Number.isFinite(was) ? CRAWL * Math.max(0, 1 - change.speed / was) : 0);
    }
    case 'seat':
      return SEAT * (1 + change.moves.length);
    case 'chains':
      return outing.train.vehicles.some((v) => v.front.chain || v.rear.chain) ? CHAINS_HOOKED : CHAINS_NEW;
    case 'alone':
      return ALONE;
    case 'guard':
    case 'relieve':
      return GUARD;
    case 'look-out':
      return LOOKOUT;
    case 'order':
      return ORDER;
    case 'fewer-riders':
      return RIDER * change.leave.length;
    case 'fewer-cars':
      return CAR * change.leave.length;
    case 'chain-size':
      return CHAIN;
    case 'ballast':
      return BALLAST + change.mass / 1000;
    case 'longer-coupling':
    case 'coupler-raised':
    case 'part-lifted':
    case 'wheel-gauge':
    case 'guard-rail':
    case 'parking-brake':
    case 'driver-brake':
    case 'brake-car':
    case 'brake-kind':
      return WORKSHOP;
    case 'set-back':
      return SET_BACK;
    case 'raised':
      return WORKSHOP;
    case 'together':
      return change.changes.reduce((sum, c) => sum + effortOf(outing, c), 0);
  }
}

/**
 * What a word is worth in effort. What may leave within limits may leave: for the word alone nobody leaves more than
 * two cars behind. A train that is held, or of which nobody can tell, does not leave at all.
 */
export const worth: Readonly<Record<Verdict, number>> = { go: 0, limits: 2 * CAR, unknown: 1000, hold: 2000 };
