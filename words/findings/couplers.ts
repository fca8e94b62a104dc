/** Words for couplers. */
import { flangeWayWords } from './balance.ts';
import type { Tellers } from './teller.ts';

/** What the train does while its couplings are watched. */
export const couplerScenarioWords = {
  start: 'starting with the throttle opened quickly',
  'start-bunched': 'starting quickly with all slack in',
  'full-brake': 'all brakes applied fully',
  'engine-brake': 'the engine alone braking',
  'run-in': 'the engine alone braking with all slack out',
  'rear-brake': 'a brake at the rear alone',
} as const;

const handling = (scenario: string): string =>
  scenario in couplerScenarioWords
    ? couplerScenarioWords[scenario as keyof typeof couplerScenarioWords]
    : 'on the run';

export const couplerWords = {
  'coupler-overloaded': ({ facts }, t) => ({
    what:
      facts.way === 'steady'
        ? `The coupling behind ${t.vehicle} pulls up to ${t.found('up')} on the run; its working load is ${t.required('down')}.`
        : `The coupling behind ${t.vehicle} may be jerked with ${t.found('up')} or more once in a hundred times, ${handling(t.fact('scenario'))}; its working load is ${t.required('down')}.`,
    why:
      facts.way === 'steady'
        ? 'A working load is what a part may carry every day. A longer pull wears it out; it gives way some day.'
        : 'Slack runs out all at once. Open the throttle and apply the brake gently, or take less slack, fewer cars or a stronger coupling.',
  }),
  'coupler-strength-unknown': ({ facts }, t) => ({
    what: `What the coupling behind ${t.vehicle} bears is not stated${facts.gaps > 1 ? `, nor that of ${facts.gaps - 1} more` : ''}; it may be pulled with up to ${t.required('up')}.`,
    why: `That is the peak ${handling(t.fact('scenario'))} that one in a hundred passes. Ask the maker for its working load, or have its weakest part reckoned; that it may open is reckoned with as a parting.`,
  }),
  'coupler-jerk-tips': (_f, t) => ({
    what: `${t.vehicle} may go over ${t.where.replace(/^.*, /, '')} ${flangeWayWords(t.fact('way'))}.`,
    why: 'The couplings pull it sideways in the curve by more than its wheels bear. Heavy cars first, seats and couplings low, gently in the curve.',
  }),
} satisfies Partial<Tellers>;
