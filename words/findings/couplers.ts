/** Words for chains and couplers. */
import { flangeWayWords } from './balance.ts';
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

/** Of chains side by side. */
const sharing: Readonly<Record<string, string>> = {
  'not known':
    'Side by side, the shorter chain takes it all: how much their slack differs was not measured. ',
  known: 'This is the share of the shorter of the chains side by side. ',
};

const handling = (scenario: string): string =>
  scenario in couplerScenarioWords
    ? couplerScenarioWords[scenario as keyof typeof couplerScenarioWords]
    : 'on the run';

export const couplerWords = {
  'chain-too-weak': (f, t) => {
    const gap = `the chain behind ${t.vehicle}`;
    const tail =
      t.fact('tail') === 'runs'
        ? 'Nothing else holds the cars behind it.'
        : 'The cars behind it brake by themselves when the train parts.';
    const shares = sharing[t.fact('shares')] ?? '';
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
          why: `${shares}${tail}`,
        };
      case 'spent':
        return {
          what: `If the train parts, ${gap} holds once: the snatch of up to ${t.found('up')} is beyond its working load of ${t.required('down')}.`,
          why: `${shares}${jerk} Hang it with less slack, and replace it after it has caught a train.`,
        };
      default:
        return {
          what: `If the train parts, the snatch of up to ${t.found('up')} may break ${gap}; its ${t.fact('by')} breaks at ${t.required('down')}.`,
          why: `${shares}${jerk} ${tail}`,
        };
    }
  },
  'chain-strength-unknown': (f, t) =>
    f.facts['way'] === 'part'
      ? {
          what: `Whether the chain behind ${t.vehicle} holds the snatch of up to ${t.required('up')} cannot be told: what breaks its ${t.fact('part')} is not stated.`,
          why: `For sure it bears ${t.fact('bears', 'down')}. Ask the maker for the breaking load, fit a stronger one, or hang the chain with less slack.`,
        }
      : {
          what: `What the chain behind ${t.vehicle} bears is not known: neither its size nor a marked load is given.`,
          why: `Parted on the steepest grade it must hold ${t.required('up')}. Measure the wire of a link, and look for a grade mark; unmarked counts as grade 30.`,
        },
  'coupler-overloaded': (f, t) => ({
    what:
      f.facts['way'] === 'steady'
        ? `The coupling behind ${t.vehicle} pulls up to ${t.found('up')} on the run; its working load is ${t.required('down')}.`
        : `The coupling behind ${t.vehicle} may be jerked with ${t.found('up')}, ${handling(t.fact('scenario'))}; its working load is ${t.required('down')}.`,
    why:
      f.facts['way'] === 'steady'
        ? 'A working load is what a part may carry every day. A longer pull wears it out; it gives way some day.'
        : 'Slack runs out all at once. Open the throttle and apply the brake gently, or take less slack, fewer cars or a stronger coupling.',
  }),
  'coupler-strength-unknown': (_f, t) => ({
    what: `What the coupling behind ${t.vehicle} bears is not stated${Number(t.fact('gaps')) > 1 ? `, nor that of ${Number(t.fact('gaps')) - 1} more` : ''}; it may be pulled with up to ${t.required('up')}.`,
    why: `That is the peak ${handling(t.fact('scenario'))}. Ask the maker for its working load, or have its weakest part reckoned; that it may open is reckoned with as a parting.`,
  }),
  'coupler-jerk-tips': (_f, t) => ({
    what: `${t.vehicle} may go over ${t.where.replace(/^.*, /, '')} ${flangeWayWords(t.fact('way'))}.`,
    why: 'The couplings pull it sideways in the curve by more than its wheels bear. Heavy cars first, seats and couplings low, gently in the curve.',
  }),
} satisfies Record<string, Teller>;
