/** Words for chains and couplers. */
import type { Teller } from './teller.ts';

/** What the train does while its couplings are watched. */
export const couplerScenarioWords = {
  start: 'starting with the throttle opened quickly',
  'start-bunched': 'starting quickly with all slack in',
  'full-brake': 'all brakes applied fully',
  'engine-brake': 'the engine alone braking',
  'run-in': 'the engine alone braking with all slack out',
  'rear-brake': 'a brake at the rear alone',
} as const;

export const couplerWords = {
  'chain-too-weak': (f, t) => {
    const gap = `the chain behind ${t.vehicle}`;
    const tail =
      t.fact('tail') === 'runs'
        ? 'Nothing else holds the cars behind it.'
        : 'The cars behind it brake by themselves when the train parts.';
    const jerk = `The slack of ${t.fact('slack', 'up')} runs out under ${t.fact('parting', 'up')}.`;
    switch (f.facts['way']) {
      case 'rule':
        return {
          what: `The ${t.fact('by')} of ${gap} bears ${t.found('down')}; the host asks for ${t.required('up')}.`,
          why: 'It is the rule quoted as the source.',
        };
      case 'steady':
        return {
          what: `On the steepest grade ${gap} must hold ${t.found('up')}; its ${t.fact('by')} bears ${t.required('down')}.`,
          why: tail,
        };
      case 'spent':
        return {
          what: `If the train parts, ${gap} holds once: the snatch of up to ${t.found('up')} is beyond its working load of ${t.required('down')}.`,
          why: `${jerk} Hang it with less slack, and replace it after it has caught a train.`,
        };
      default:
        return {
          what: `If the train parts, the snatch of up to ${t.found('up')} may break ${gap}; its ${t.fact('by')} breaks at ${t.required('down')}.`,
          why: `${jerk} ${tail}`,
        };
    }
  },
  'chain-strength-unknown': (_f, t) => ({
    what: `What the chain behind ${t.vehicle} bears is not known: neither its size nor a marked load is given.`,
    why: `Parted on the steepest grade it must hold ${t.required('up')}. Measure the wire of a link, and look for a grade mark; unmarked counts as grade 30.`,
  }),
} satisfies Record<string, Teller>;
