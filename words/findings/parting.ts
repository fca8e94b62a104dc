/** Words for a train that parts, and for the flag behind a stopped one. */
import type { Teller } from './teller.ts';

/** What it meets as it runs away. */
export const meeting: Readonly<Record<string, (t: Parameters<Teller>[1]) => string>> = {
  'rolls-through-place': (t) => `rolls back through ${t.fact('place')} at up to ${t.fact('met', 'up')}`,
  'meets-following': (t) => `rolls into the following train at ${t.fact('met', 'up')}`,
  'runs-round': (t) => `runs on round the line, at up to ${t.found('up')}`,
  'leaves-line': (t) => `runs off the end of the line at ${t.fact('met', 'up')}`,
  overturns: (t) => `goes over in a curve at ${t.fact('met', 'up')}`,
};

const several = (gaps: string): string =>
  gaps === '1' ? '' : ` ${gaps} gaps are like that; this is the worst.`;

/** What goes over rests on a guess of how high its weight lies. */
export const high = ({ fact }: Parameters<Teller>[1], { facts }: Parameters<Teller>[0]): string =>
  facts['high'] === 'yes'
    ? ` That ${fact('unmeasured')} goes over is not known: how high its centre of gravity lies was not measured, and it counts as high as its shape allows. Tilt it empty until a wheel lifts.`
    : '';

export const partingWords = {
  'tail-runs-away': (f, t) => ({
    what: `If the train parts behind ${t.vehicle} at ${t.at(f.where.from ?? 0)}, the tail ${meeting[t.fact('outcome')]?.(t) ?? 'runs away'}, ${t.fact('time', 'down')} later.`,
    why: `Parted at ${t.fact('speed', 'up')}, no chain holds it and no brake that is left stops it.${several(t.fact('gaps'))}${high(t, f)}`,
  }),
  'tail-rolls-back': (f, t) => ({
    what: `If the train parts behind ${t.vehicle} at ${t.at(f.where.from ?? 0)}, the tail comes to rest, rolls off again and ends ${t.fact('way', 'up')} ${t.fact('side') === 'back' ? 'behind' : 'ahead of'} where it parted, at up to ${t.found('up')}.`,
    why: `No chain holds it, and nothing left on it holds the ${t.word('grade')}.${several(t.fact('gaps'))}`,
  }),
  'tail-stands': (_f, t) => ({
    what: `If the train parts behind ${t.vehicle}, the tail stops by itself within ${t.fact('way', 'up')} and stays.`,
    why:
      t.fact('leaks') === 'yes'
        ? 'It stays while air or vacuum lasts: scotch it before that leaks off.'
        : 'What is left on it holds it.',
  }),
  'head-unmanned': (_f, t) => ({
    what: `The driver rides behind ${t.vehicle}: if the train parts ahead of the driver, the engine goes on by itself.`,
    why: 'Neither its brake nor its regulator is within reach then. A lanyard or a cut-out that the parting pulls stops it.',
  }),
  'parting-held-by-chains': (_f, t) => ({
    what: `If the train parts, the safety chain holds at ${t.fact('gaps') === '1' ? 'the gap' : `each of the ${t.fact('gaps')} gaps`}; it is strained most behind ${t.vehicle}: ${t.fact('way') === 'stretch' ? `to take up the catch it must break at ${t.found('up')} or more` : `up to ${t.found('up')}`}.`,
    why: 'Held by its chains the train stays whole; what becomes of it with the brakes that are left is asked on its own.',
  }),
  'held-train-runs-away': (f, t) => ({
    what: `If the train parts behind ${t.vehicle} at ${t.at(f.where.from ?? 0)} and its chain holds, the whole train ${meeting[t.fact('outcome')]?.(t) ?? 'runs away'}, ${t.fact('time', 'down')} later.`,
    why: `The hose or cable tears with the coupling, and at ${t.fact('speed', 'up')} no brake that is left stops it.${several(t.fact('gaps'))}${high(t, f)}`,
  }),
  'held-train-rolls-back': (f, t) => ({
    what: `If the train parts behind ${t.vehicle} at ${t.at(f.where.from ?? 0)} and its chain holds, the whole train comes to rest, rolls off again and ends ${t.fact('way', 'up')} ${t.fact('side') === 'back' ? 'behind' : 'ahead of'} where it parted, at up to ${t.found('up')}.`,
    why: `The hose or cable tears with the coupling, and no brake that is left holds the ${t.word('grade')}.${several(t.fact('gaps'))}`,
  }),
  'flag-farther-than-rule': (f, t) => ({
    what:
      t.fact('enough') === 'yes'
        ? `With its rear at ${t.at(f.where.from ?? 0)} a stopped train needs its flag ${t.required('up')} behind it; the rule has ${t.found('down')}.`
        : `With its rear at ${t.at(f.where.from ?? 0)} no place on the line is far enough behind a stopped train for its flag; the rule has ${t.found('down')}.`,
    why: `A train like this one follows at ${t.fact('speed', 'up')} and needs ${t.fact('stop', 'up')} to stop from where its driver first sees the flag. So it is on ${t.fact('share', 'up')} of the line.`,
  }),
  'flag-too-late': (f, t) => ({
    what:
      t.fact('enough') === 'yes'
        ? `With its rear at ${t.at(f.where.from ?? 0)} the following train is there in ${t.found('down')}; walking the flag back ${t.fact('way', 'up')} takes ${t.required('up')}.`
        : `With its rear at ${t.at(f.where.from ?? 0)} the following train is there in ${t.found('down')}, and nowhere is far enough back for a flag.`,
    why: 'Whoever carries the flag walks at 3 mph. Keep trains further apart in time, or do not let the second one leave before the first is seen clear.',
  }),
} satisfies Record<string, Teller>;
