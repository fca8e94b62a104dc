/** Words for the safety chains. */
import { others, type Tellers } from './teller.ts';

/** Of chains side by side. */
const sharing: Readonly<Record<string, string>> = {
  'not known':
    'Side by side, the shorter chain takes it all: how much their slack differs was not measured. ',
  known: 'This is the share of the shorter of the chains side by side. ',
};

export const chainWords = {
  'chain-too-weak': (f, t) => {
    const gap = `the chain behind ${t.vehicle}`;
    const tail =
      f.facts.tail === 'runs'
        ? 'Nothing else holds the cars behind it.'
        : 'The cars behind it brake by themselves when the train parts.';
    const shares = sharing[t.fact('shares')] ?? '';
    const jerk = `Its slack of ${t.fact('slack', 'up')} runs out under up to ${t.fact('pull', 'up')}.`;
    const closer = f.facts.closer === undefined ? '' : `no more than ${t.fact('closer')} of slack, `;
    const stronger =
      f.facts.breaks === undefined
        ? ''
        : `chain, hooks and links that break at no less than ${t.fact('breaks', 'up')}, `;
    const better = `What helps: ${closer}${stronger}moused hooks, so that none jumps off.`;
    const more = others(f, 'beyond the working load too');
    switch (f.facts.way) {
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
    f.facts.way === 'part'
      ? {
          what: `Whether the chain behind ${t.vehicle} holds the catch of up to ${t.required('up')} cannot be told: what breaks its ${t.fact('part')} is not stated.${others(f, 'the same')}`,
          why: `For sure it bears ${t.fact('bears', 'down')}. Ask the maker for the breaking load, fit a stronger one, or hang the chain with less slack.`,
        }
      : {
          what: `What the chain behind ${t.vehicle} bears is not known: neither a marked load nor a size that the tables have is given.${others(f, 'the same')}`,
          why: `Parted on the steepest grade it must hold ${t.required('up')}. Measure the wire of a link, and look for a grade mark; unmarked counts as grade 30.`,
        },
} satisfies Partial<Tellers>;
