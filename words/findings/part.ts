/** Words for a train that parts. */
import type { FactsOf } from '../../engine/questions/findings.ts';
import type { Tellers, Tools } from './teller.ts';

type Roll = 'tail-runs-away' | 'held-train-runs-away' | 'failure-runs-away';

/** What it meets as it runs away. */
export function meets({ outcome, place }: FactsOf<Roll>, t: Tools<Roll>): string {
  const met = t.fact('met', 'up');
  switch (outcome) {
    case 'rolls-through-place':
      return `rolls back through ${place} at up to ${met}`;
    case 'meets-following':
      return `rolls into the following train at ${met}`;
    case 'runs-round':
      return `runs on round the line, at up to ${t.found('up')}`;
    case 'leaves-line':
      return `runs off the end of the line at ${met}`;
    case 'overturns':
      return `goes over in a curve at ${met}`;
    case 'stands':
    case 'rolls':
      return 'runs away';
  }
}

const several = (gaps: number): string =>
  gaps === 1 ? '' : ` ${gaps} gaps are like that; this is the worst.`;

/** What goes over rests on a guess of how high its weight lies. */
export const high = ({ unmeasured }: FactsOf<Roll>): string =>
  unmeasured === undefined
    ? ''
    : ` That ${unmeasured} goes over is not known: how high its centre of gravity lies was not measured, and it counts as high as its shape allows. Tilt it empty until a wheel lifts.`;

type Wandering = 'tail-rolls-back' | 'held-train-rolls-back' | 'failure-rolls-back';

/** What nothing holds where it first comes to rest: how fast it gets, and where it rests for good. */
export const wanders = (facts: FactsOf<Wandering>, t: Tools<Wandering>, from: string): string =>
  `does not stand where it stops: it rolls off again at up to ${t.found('up')}, and rests at last ${t.fact('way', 'up')} ${facts.side === 'back' ? 'behind' : 'ahead of'} ${from}`;

/** What follows at the usual distance stands where it rolls back to. */
export const inItsWay = ({ side }: FactsOf<Wandering>): string =>
  side === 'back' ? ' Whatever follows within that way is run into.' : '';

export const partingWords = {
  'tail-runs-away': (f, t) => ({
    what: `If the train parts behind ${t.vehicle} at ${t.at(f.where.from ?? 0)}, the tail ${meets(f.facts, t)}, ${t.fact('time', 'down')} later.`,
    why: `Parted at ${t.fact('speed', 'up')}, no chain holds it and no brake that is left stops it.${several(f.facts.gaps)}${high(f.facts)}`,
  }),
  'tail-rolls-back': (f, t) => ({
    what: `If the train parts behind ${t.vehicle} at ${t.at(f.where.from ?? 0)}, the tail ${wanders(f.facts, t, 'where it parted')}.`,
    why: `No chain holds it, and nothing left on it holds the ${t.word('grade')}.${inItsWay(f.facts)}${several(f.facts.gaps)}`,
  }),
  'tail-stands': ({ facts }, t) => ({
    what: `If the train parts behind ${t.vehicle}, the tail stops by itself within ${t.fact('way', 'up')} and stays.`,
    why: facts.leaks
      ? 'It stays while air or vacuum lasts: scotch it before that leaks off.'
      : 'What is left on it holds it.',
  }),
  'head-unmanned': (_f, t) => ({
    what: `The driver rides behind ${t.vehicle}: if the train parts ahead of the driver, the engine goes on by itself.`,
    why: 'Neither its brake nor its regulator is within reach then. A lanyard or a cut-out that the parting pulls stops it.',
  }),
  'parting-held-by-chains': ({ facts }, t) => ({
    what: `If the train parts, the safety chain holds at ${facts.gaps === 1 ? 'the gap' : `each of the ${t.fact('gaps')} gaps`}; it is strained most behind ${t.vehicle}: ${facts.way === 'stretch' ? `to take up the catch it must break at ${t.found('up')} or more` : `up to ${t.found('up')}`}.`,
    why: 'Held by its chains the train stays whole; what becomes of it with the brakes that are left is asked on its own.',
  }),
  'held-train-runs-away': (f, t) => ({
    what: `If the train parts behind ${t.vehicle} at ${t.at(f.where.from ?? 0)} and its chain holds, the whole train ${meets(f.facts, t)}, ${t.fact('time', 'down')} later.`,
    why: `The hose or cable tears with the coupling, and at ${t.fact('speed', 'up')} no brake that is left stops it.${several(f.facts.gaps)}${high(f.facts)}`,
  }),
  'held-train-rolls-back': (f, t) => ({
    what: `If the train parts behind ${t.vehicle} at ${t.at(f.where.from ?? 0)} and its chain holds, the whole train ${wanders(f.facts, t, 'where it parted')}.`,
    why: `The hose or cable tears with the coupling, and no brake that is left holds the ${t.word('grade')}.${inItsWay(f.facts)}${several(f.facts.gaps)}`,
  }),
} satisfies Partial<Tellers>;
