/** Words for the host's rules. */
import { age, type Tellers } from './teller.ts';

const rule = 'It is the rule quoted as the source.';

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
} satisfies Partial<Tellers>;
