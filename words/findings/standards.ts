/** Words for the host's sheet. */
import type { StandardKey } from '../../engine/outing/types.ts';
import { standardNames } from '../standards.ts';
import { others, type Tellers } from './teller.ts';

const named = (of: StandardKey): string => standardNames[of];
const part = (wheelset: string, end: 'front' | 'rear' | ''): string =>
  wheelset !== '' ? `, ${wheelset}` : end === '' ? '' : `, ${end}`;
const who = (of: StandardKey, vehicle: string): string => (of === 'trainLength' ? 'The train' : vehicle);

export const standardWords = {
  'standard-refused': (f, t) => ({
    what: `${who(f.facts.of, t.vehicle)}${part(f.facts.wheelset, f.facts.end)}: ${named(f.facts.of)} ${f.facts.side === 'least' ? `${t.found('down')}; the host asks for ${t.required('up')} at least` : `${t.found('up')}; the host takes ${t.required('down')} at most`}.${others(f, 'the same')}`,
    why: 'The host’s sheet refuses it as it is. It may be put right, or run where another sheet takes it.',
  }),
  'standard-slow': (f, t) => ({
    what: `${who(f.facts.of, t.vehicle)}${part(f.facts.wheelset, f.facts.end)}: ${named(f.facts.of)} ${t.found('nearest')}, ${f.facts.side === 'least' ? 'less' : 'more'} than ${t.required('nearest')}: ${f.facts.speed ? `no faster than ${t.fact('speed', 'down')}` : 'slowly, and the sheet does not say how slowly'}.${others(f, 'the same')}`,
    why: f.facts.speed
      ? 'Within what the host’s sheet takes, and not within what it takes at full speed: worn, to be put right before long.'
      : 'Ask the host for the speed that goes with it.',
  }),
  'standard-not-measured': (f, t) => ({
    what: `The host’s sheet has a limit for ${named(f.facts.of)}, and that of ${t.fact('vehicles')} is not measured.`,
    why: 'Measured at home it is known before the trip; measured at the gate it may end there.',
  }),
} satisfies Partial<Tellers>;
