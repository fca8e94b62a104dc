/** Words for how far bars and links must turn up and down. */
import type { FindingOf } from '../../engine/questions/finding.ts';
import { say } from '../voice.ts';
import { others, type Tellers, type Tools } from './teller.ts';

type Pitch = 'coupler-pitch-short' | 'coupler-pitch-unknown';

/** How the track lies under the two vehicles. */
const pitchLie = { crest: 'over the crest', sag: 'in the sag', level: 'on even track' } as const;

const turns = ({ facts }: FindingOf<Pitch>, t: Tools<Pitch>): string =>
  `The bar at the ${facts.end} of ${t.vehicle} must turn ${t.found('up')} ${facts.way} toward ${t.fact('other')} ${pitchLie[facts.lie]}, ${t.where.replace(/^.*, /, '')}`;

/** What it is made of: what adds, and what takes off. */
function parts({ facts }: FindingOf<Pitch>, t: Tools<Pitch>): string {
  const of = (['line', 'stated', 'springs', 'cant'] as const).flatMap((name) => {
    const { si } = facts[name];
    if (Math.abs(si) < LEAST) return [];
    const size = say(t.voice, { si: Math.abs(si), kind: 'angle' }, si > 0 ? 'up' : 'down');
    return [`${partNames[name]} ${si > 0 ? size : `takes off ${size}`}`];
  });
  return `Of it: ${of.join(', ')}; ${t.fact('bar')} from pin to pin.`;
}

/** Less is not told, rad. */
const LEAST = 0.001;

const partNames = {
  line: 'the line',
  stated: 'the heights of the two',
  springs: 'springs under people',
  cant: 'cant and twist',
} as const;

function strikes(f: FindingOf<'coupler-pitch-unknown'>, t: Tools<'coupler-pitch-unknown'>): string {
  const at = `strikes at ${t.required('down')}`;
  if (f.found && f.required && f.found.si <= f.required.si) {
    const of =
      f.measure === 'coupling.height' ? 'heights that are not stated' : 'springs that nobody measured';
    return `${of} may add ${t.fact('doubt', 'up')}, and it ${at}`;
  }
  return `${f.measure === 'coupling.pitch' || f.measure === 'coupling.height' ? 'the stiffest usual one' : 'it'} ${at}`;
}

/** A bend that may be no more than the distance between two points of the survey. */
const bySpacing = (f: FindingOf<'coupler-pitch-unknown'>, t: Tools<'coupler-pitch-unknown'>): string =>
  `${turns(f, t)}, if the track bends at one point as surveyed; bent evenly between the points, ${t.fact('even', 'up')}. The stiffest usual bar strikes at ${t.required('down')}`;

export const pitchWords = {
  'coupler-pitch-short': (f, t) => ({
    what: `${turns(f, t)}; it strikes at ${t.required('down')}.${others(f, f.severity === 'notes' ? 'as near' : 'the same')}`,
    why: `${parts(f, t)} ${
      f.severity === 'unknown'
        ? 'That is if the track turns as sharply as the survey’s few points have it: level points a car’s length apart there.'
        : f.severity === 'notes'
          ? 'A bent bar or a worn pin takes up the little that is left. Look at it there at a walk.'
          : 'At the stop it levers: it lifts the lighter end off its truck, bends the pin or breaks. A longer bar helps, room in the jaw, or both couplers at one height. Slower does not help.'
    }`,
  }),
  'coupler-pitch-unknown': (f, t) => ({
    what: `${f.measure === 'line.profile' ? bySpacing(f, t) : `${turns(f, t)}; ${strikes(f, t)}`}.${others(f, 'the same')}`,
    why: `${parts(f, t)} ${asks[f.measure ?? ''] ?? ''}${
      f.severity === 'notes'
        ? ''
        : ' At the stop it levers the lighter end off its truck. Before anybody gets on, push the two slowly over it and look whether the bar still moves freely.'
    }`,
  }),
} satisfies Partial<Tellers>;

const asks: Readonly<Record<string, string>> = {
  'coupling.height': 'Heights not stated are taken as equal: measure both, empty.',
  'coupling.pitch':
    'How far it turns up and down is not stated: lift its far end and lower it until it strikes, and measure.',
  'line.profile':
    'Level points a car’s length apart there, or lift the far end of the bar and lower it until it strikes, and measure.',
  'coupling.shank': 'The bar is taken as short as some: measure it, from pin to pin.',
  'vehicle.suspension.wheelStiffness':
    'Measure the height of the coupler empty and with every seat taken: what it sinks, the bar turns.',
};
