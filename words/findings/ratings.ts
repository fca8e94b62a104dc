/** Words for loads, curves and grades against ratings. */
import { type Tellers, whereWords } from './teller.ts';

const rating = 'The vehicle is rated for less.';

export const ratingWords = {
  'car-overloaded': (f, t) => ({
    what: `${t.vehicle} carries ${t.found('up')}; it is rated for ${f.required?.si === 0 ? 'nothing' : t.required('down')}.`,
    why: rating,
  }),
  'axle-overloaded': (_f, t) => ({
    what: `An axle of the ${t.fact('group')} of ${t.vehicle} carries ${t.found('up')}; it is rated for ${t.required('down')}.`,
    why: rating,
  }),
  'seat-overloaded': (_f, t) => ({
    what: `${t.fact('rider')} weighs ${t.found('up')}; seat ${t.fact('seat')} of ${t.vehicle} bears ${t.required('down')}.`,
    why: rating,
  }),
  'rider-not-seated': (_f, t) => ({
    what: `${t.fact('rider')} has no seat yet.`,
    why: 'Loads, stops and balance need to know who sits where.',
  }),
  'curve-too-tight': ({ where: { vehicle: _, ...where } }, t) => ({
    what: `${t.vehicle} needs a curve of ${t.required('up')} radius; the tightest, ${whereWords({ where }, t.voice)}, has ${t.found('down')}.`,
    why: 'It may bind, climb or not go round.',
  }),
  'grade-beyond-range': (_f, t) => ({
    what: `A ${t.word('grade')} of ${t.found()} ${t.where} is steeper than the sums here are good for.`,
    why: 'Measure it again; beyond that steepness the sums are off.',
  }),
  'train-longer-than-line': ({ facts }, t) => ({
    what: `The train is ${t.found('up')} long, the line ${t.required('down')}: ${
      facts.loop ? 'its head would meet its own rear' : 'it does not fit on it'
    }.`,
    why: 'Leave cars behind, or correct the lengths of the line and of the vehicles over their couplers.',
  }),
} satisfies Partial<Tellers>;
