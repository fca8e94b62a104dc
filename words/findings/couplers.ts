/** Words for chains and couplers. */
import type { Finding } from '../../engine/questions/finding.ts';
import type { Lie } from '../../engine/things/coupler/bends.ts';
import { flangeWayWords } from './balance.ts';
import type { Teller, Tools } from './teller.ts';

/** What the train does while its couplings are watched. */
/** What is done before anybody gets on where it cannot be ruled out that it binds. */
const handRound = (f: Finding): string =>
  f.severity === 'limits' ? ' Before anybody gets on, push the two round that curve by hand and look.' : '';

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

/** The other gaps of a finding that is told of the worst one. */
function others({ facts }: Finding, are: string): string {
  const count = Number(facts['others'] ?? 0);
  if (count === 0) return '';
  return ` ${count} more: ${are}.`;
}

const handling = (scenario: string): string =>
  scenario in couplerScenarioWords
    ? couplerScenarioWords[scenario as keyof typeof couplerScenarioWords]
    : 'on the run';

/** How the track lies under the two vehicles. */
export const lieWords: Readonly<Record<Lie, string>> = {
  curve: 'in the curve',
  ends: 'where a curve begins or ends',
  reverse: 'between curves of opposite hand',
  straight: 'on the straight',
};

const swings = ({ facts }: Finding, t: Tools): string =>
  `The ${t.fact('end')} coupler of ${t.vehicle} must swing ${t.found('up')} toward ${t.fact('other')} ${lieWords[facts['lie'] as Lie]}, ${t.where.replace(/^.*, /, '')}`;

export const couplerWords = {
  'chain-too-weak': (f, t) => {
    const gap = `the chain behind ${t.vehicle}`;
    const tail =
      t.fact('tail') === 'runs'
        ? 'Nothing else holds the cars behind it.'
        : 'The cars behind it brake by themselves when the train parts.';
    const shares = sharing[t.fact('shares')] ?? '';
    const jerk = `Its slack of ${t.fact('slack', 'up')} runs out under up to ${t.fact('pull', 'up')}.`;
    const closer = f.facts['closer'] === undefined ? '' : `no more than ${t.fact('closer')} of slack, `;
    const stronger =
      f.facts['breaks'] === undefined
        ? ''
        : `chain, hooks and links that break at no less than ${t.fact('breaks', 'up')}, `;
    const better = `What helps: ${closer}${stronger}moused hooks, so that none jumps off.`;
    const more = others(f, 'beyond the working load too');
    switch (f.facts['way']) {
      case 'rule':
        return {
          what: `The ${t.fact('by')} of ${gap} bears ${t.found('down')}; the host asks for ${t.required('up')}.${others(f, 'too little too')}`,
          why: 'It is the rule quoted as the source.',
        };
      case 'steady':
        return {
          what: `On the steepest grade ${gap} must hold ${t.found('up')}; its ${t.fact('by')} bears ${t.required('down')}.${more}`,
          why: `${shares}${tail}`,
        };
      case 'spent':
        return {
          what: `If the train parts, ${gap} holds once: a catch of up to ${t.found('up')} is beyond its working load of ${t.required('down')}.${more}`,
          why: `${shares}${jerk} A chain stretches before it breaks: replace it after it has caught a train. ${better}`,
        };
      case 'stretch':
        return {
          what: `If the train parts, ${gap} may break: to take up the catch it must break at ${t.found('up')} or more, and it breaks at ${t.required('down')}.${more}`,
          why: `${shares}${jerk} ${tail} ${better}`,
        };
      default:
        return {
          what: `If the train parts, the catch of up to ${t.found('up')} may break the ${t.fact('by')} of ${gap}; it breaks at ${t.required('down')}.${more}`,
          why: `${shares}${jerk} ${tail} ${better}`,
        };
    }
  },
  'chain-strength-unknown': (f, t) =>
    f.facts['way'] === 'part'
      ? {
          what: `Whether the chain behind ${t.vehicle} holds the catch of up to ${t.required('up')} cannot be told: what breaks its ${t.fact('part')} is not stated.${others(f, 'the same')}`,
          why: `For sure it bears ${t.fact('bears', 'down')}. Ask the maker for the breaking load, fit a stronger one, or hang the chain with less slack.`,
        }
      : {
          what: `What the chain behind ${t.vehicle} bears is not known: neither its size nor a marked load is given.${others(f, 'the same')}`,
          why: `Parted on the steepest grade it must hold ${t.required('up')}. Measure the wire of a link, and look for a grade mark; unmarked counts as grade 30.`,
        },
  'coupler-overloaded': (f, t) => ({
    what:
      f.facts['way'] === 'steady'
        ? `The coupling behind ${t.vehicle} pulls up to ${t.found('up')} on the run; its working load is ${t.required('down')}.`
        : `The coupling behind ${t.vehicle} may be jerked with ${t.found('up')} or more once in a hundred times, ${handling(t.fact('scenario'))}; its working load is ${t.required('down')}.`,
    why:
      f.facts['way'] === 'steady'
        ? 'A working load is what a part may carry every day. A longer pull wears it out; it gives way some day.'
        : 'Slack runs out all at once. Open the throttle and apply the brake gently, or take less slack, fewer cars or a stronger coupling.',
  }),
  'coupler-strength-unknown': (_f, t) => ({
    what: `What the coupling behind ${t.vehicle} bears is not stated${Number(t.fact('gaps')) > 1 ? `, nor that of ${Number(t.fact('gaps')) - 1} more` : ''}; it may be pulled with up to ${t.required('up')}.`,
    why: `That is the peak ${handling(t.fact('scenario'))} that one in a hundred passes. Ask the maker for its working load, or have its weakest part reckoned; that it may open is reckoned with as a parting.`,
  }),
  'coupler-swing-short': (f, t) =>
    f.severity === 'forbids'
      ? {
          what: `${swings(f, t)}; it strikes at ${t.required('down')}.${others(f, 'beyond their swing too')}`,
          why: `At the stop it no longer draws but levers: the lighter of the two is pressed off the rail, or the coupling breaks. The pivots stand ${t.fact('bar')} apart. Room at the stop helps, or a pivot nearer to the ${t.word('truck')}; a longer bar or another neighbour where it is proposed. Slower does not help.`,
        }
      : f.severity === 'limits'
        ? {
            what: `${swings(f, t)}; it strikes at ${t.required('down')}.${others(f, 'the same')}`,
            why: `${t.fact('play', 'up')} of that is play of the flanges between the rails, both vehicles standing aslant in it.${handRound(f)} A longer bar or less gauge widening helps.`,
          }
        : {
            what: `${swings(f, t)}; it strikes at ${t.required('down')}.${others(f, 'as near')}`,
            why: `${t.fact('play', 'up')} of that is play of the flanges between the rails. Wear and a bent shank take up the little that is left. Look at it there at a walk.`,
          },
  'coupler-swing-unknown': (f, t) =>
    f.measure === 'coupling.shank'
      ? {
          what: `${swings(f, t)}, if its shanks are as short as some; it strikes at ${t.required('down')}.${others(f, 'the same')}`,
          why: `Short shanks bend most.${handRound(f)} Measure both, from pin to where they meet.`,
        }
      : {
          what: `${swings(f, t)}${t.fact('shanks') === 'assumed' ? ', if its shanks are as short as some' : ''}; how far it swings is not stated, and the stiffest usual one strikes at ${t.required('down')}.${others(f, 'the same')}`,
          why: `At the stop it levers the lighter car off the rail.${handRound(f)} Or hold it over to each side and measure.`,
        },
  'coupler-jerk-tips': (_f, t) => ({
    what: `${t.vehicle} may go over ${t.where.replace(/^.*, /, '')} ${flangeWayWords(t.fact('way'))}.`,
    why: 'The couplings pull it sideways in the curve by more than its wheels bear. Heavy cars first, seats and couplings low, gently in the curve.',
  }),
} satisfies Record<string, Teller>;
