/** Words for the host's rules. */
import { age, type Tellers } from './teller.ts';

const rule = 'It is the rule quoted as the source.';

/** What of the weather nobody has said. */
const skyWords = {
  lightning: 'whether lightning is about',
  wind: 'how hard the wind blows in gusts',
  heat: 'how hot it is in the shade',
} as const;

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
  'no-guard-at-night': (_f, t) => ({
    what: `It runs after dark without a ${t.word('conductor')}.`,
    why: 'By night only somebody on the last car sees that a rider is off, or that it has parted. It is the rule quoted as the source.',
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
  'lightning-about': () => ({
    what: 'Lightning is about.',
    why: 'Rail, wire and whoever sits on a train in the open draw it. Stop at a shelter, and wait as long as the host says after the last thunder.',
  }),
  'too-windy': (_f, t) => ({
    what: `Wind of ${t.found('up')}; the host runs up to ${t.required('down')}.`,
    why: rule,
  }),
  'too-hot': (_f, t) => ({
    what: `${t.found('up')} in the shade; the host runs up to ${t.required('down')}.`,
    why: 'Rails buckle and people faint in the heat.',
  }),
  'no-running-at-night': () => ({ what: 'The host does not run after dark.', why: rule }),
  'weather-not-said': ({ facts: { sign } }) => ({
    what: `Nobody has said ${skyWords[sign]}.`,
    why: 'The host has a rule for it: look before it leaves, and again at every stop.',
  }),
} satisfies Partial<Tellers>;
