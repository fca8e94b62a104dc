/** Words for the host's rules, loads, line and assumptions. */
import { age, type Tellers } from './teller.ts';

const rule = 'It is the rule quoted as the source.';
const rating = 'The vehicle is rated for less.';

export const hostWords = {
  'gauge-differs': (_f, t) => ({
    what: `${t.vehicle} is of ${t.found()} gauge, the line of ${t.required()}.`,
    why: 'It cannot run here.',
  }),
  'too-many-cars': (_f, t) => ({ what: `${t.found()} cars; the host allows ${t.required()}.`, why: rule }),
  'too-many-riders': (_f, t) => ({
    what: `${t.found()} riders; the host allows ${t.required()}.`,
    why: rule,
  }),
  'too-many-riders-on-car': (_f, t) => ({
    what: `${t.found()} riders on ${t.vehicle}; the host allows ${t.required()}.`,
    why: rule,
  }),
  'too-many-riders-per-axle': (_f, t) => ({
    what: `${t.found()} adults on ${t.vehicle}; its axles allow ${t.required()}.`,
    why: rule,
  }),
  'chains-missing': (f, t) => ({
    what:
      f.severity === 'unknown'
        ? 'Nobody said that the safety chains are fastened.'
        : `Safety chains are missing${t.where === '' ? '' : ` at ${t.where}`}.`,
    why: 'Without a chain a parted tail is held by nothing but its own brakes.',
  }),
  'too-few-cars-braked': (_f, t) => ({
    what: `${t.fact('braked')} of ${t.fact('cars')} cars have a brake that answers the driver; the host asks for a share of ${t.required()}.`,
    why: rule,
  }),
  'guard-missing': (_f, t) => ({
    what: `A ${t.word('conductor')} must ride with ${t.required()} ${t.fact('of')} or more; there are ${t.found()}.`,
    why: rule,
  }),
  'lights-missing': (_f, t) => ({ what: `${t.vehicle} needs a ${t.fact('light')} at night.`, why: rule }),
  'seat-too-high': (_f, t) => ({
    what: `A seat of ${t.vehicle} is ${t.found('up')} above the rail; the host allows ${t.required('down')}.`,
    why: 'The higher the rider, the sooner a car tips.',
  }),
  'rider-too-young': ({ facts }, t) => ({
    what: `${t.fact('rider')} is ${age(facts.age)}; the host asks for ${t.required()} years or more.`,
    why: rule,
  }),
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
  'curve-too-tight': (_f, t) => ({
    what: `${t.vehicle} needs a curve of ${t.required('up')} radius; the tightest, ${t.where}, has ${t.found('down')}.`,
    why: 'It may bind, climb or not go round.',
  }),
  'grade-beyond-range': (_f, t) => ({
    what: `A ${t.word('grade')} of ${t.found()} ${t.where} is steeper than the sums here are good for.`,
    why: 'Measure it again; beyond that steepness the sums are off.',
  }),
  'heights-poor': (_f, t) => ({
    what: `The heights of the line are poor (${t.fact('quality')}).`,
    why: 'A satellite height is off by metres, a guessed one by more: the steepest place may be twice as steep. Level the line there at least; until then stops are reckoned as if its grades had been taped.',
  }),
  'sight-unknown': (f, t) => ({
    what:
      f.where.place === undefined
        ? `Nobody has said how much clear track the driver sees ahead${t.where === '' ? '' : ` ${t.where}`}.`
        : `Nobody has said from how far ${f.where.place} (${t.at(f.where.from ?? 0)}) is seen.`,
    why: f.facts.at
      ? `At ${t.at(f.facts.at.si)} and ${t.required('up')} the train needs ${t.fact('stop', 'up')} with its margin. Within the ${t.fact('sight', 'down')} assumed, of which ${t.fact('behind', 'up')} lie between the driver's seat and the train's front, it stops from ${t.found('down')} at the most. Pace the clear track from the driver's seat, where it is shortest.`
      : `The train stops within the ${t.fact('sight', 'down')} assumed. Pace the clear track from the driver's seat, where it is shortest.`,
  }),
  'driver-missing': (_f, t) => ({
    what: 'Nobody on this train is its driver.',
    why: `Weight, sight and the brakes within reach go by where the driver sits; taken to be on ${t.vehicle}. Say who drives, and on which seat.`,
  }),
  'propelled-without-lookout': ({ facts }, t) => ({
    what: `The driver sits ${t.found('up')} behind the front of the train, with ${facts.cars} ${facts.cars === 1 ? 'car' : 'cars'} ahead, and no lookout with a brake rides on ${t.vehicle}.`,
    why: `${
      facts.lookout === 'no brake' ? `The ${t.word('conductor')} there has no brake to put on. ` : ''
    }The train and its riders hide the track. Put the engine first with its driver, or let a ${t.word('conductor')} keep a lookout on the leading car, with a brake there.`,
  }),
  assumed: (_f, t) => ({
    what: `Taken for ${t.fact('where')}: ${t.fact('of')}.`,
    why: 'Nothing was given; a measurement replaces it.',
  }),
} satisfies Partial<Tellers>;
