/** Words for how far couplers must swing. */
import type { Finding, FindingOf } from '../../engine/questions/finding.ts';
import type { Lie } from '../../engine/things/coupler/bends.ts';
import { others, type Tellers, type Tools } from './teller.ts';

/** What is done before anybody gets on where it cannot be ruled out that it binds. */
const handRound = (f: Pick<Finding, 'severity'>): string =>
  f.severity === 'limits' ? ' Before anybody gets on, push the two round that curve by hand and look.' : '';

/** How the track lies under the two vehicles. */
export const lieWords: Readonly<Record<Lie, string>> = {
  curve: 'in the curve',
  ends: 'where a curve begins or ends',
  reverse: 'between curves of opposite hand',
  straight: 'on the straight',
};

type Swing = 'coupler-swing-short' | 'coupler-swing-unknown';

const swings = ({ facts }: FindingOf<Swing>, t: Tools<Swing>): string =>
  `The ${t.fact('end')} coupler of ${t.vehicle} must swing ${t.found('up')} toward ${t.fact('other')} ${lieWords[facts.lie]}, ${t.where.replace(/^.*, /, '')}`;

export const swingWords = {
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
          what: `${swings(f, t)}${f.facts.shanks === 'assumed' ? ', if its shanks are as short as some' : ''}; how far it swings is not stated, and the stiffest usual one strikes at ${t.required('down')}.${others(f, 'the same')}`,
          why: `At the stop it levers the lighter car off the rail.${handRound(f)} Or hold it over to each side and measure.`,
        },
} satisfies Partial<Tellers>;
