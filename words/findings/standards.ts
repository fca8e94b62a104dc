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
    what: `${who(f.facts.of, t.vehicle)}${part(f.facts.wheelset, f.facts.end)}: ${named(f.facts.of)} ${f.facts.side === 'least' ? `${t.found('down')}, less than ${t.required('up')}` : `${t.found('up')}, more than ${t.required('down')}`}: ${f.facts.speed ? `no faster than ${t.fact('speed', 'down')}` : 'slowly, and the sheet does not say how slowly'}.${others(f, 'the same')}`,
    why: f.facts.speed
      ? 'Within what the host’s sheet takes, and not within what it takes at full speed: to be put right before long.'
      : 'Ask the host for the speed that goes with it.',
  }),
  'coupler-kind-refused': (f, t) => ({
    what: `${t.vehicle}, ${f.facts.end}: a ${t.word('coupler')} of the kind “${t.fact('kind')}”; the host takes ${t.fact('kinds')}.${others(f, 'the same')}`,
    why: `The host’s engines and cars cannot fetch it if it fails on the line. Another ${t.word('coupler')}, an adapter that the host has seen, or another host.`,
  }),
  'coupler-kind-unknown': (_f, t) => ({
    what: `The host takes ${t.fact('kinds')} alone, and which kind couples ${t.fact('vehicles')} is not written down.`,
    why: 'Write it down for both ends; the host’s engine may have to fetch the train.',
  }),
  'outside-profile': (f, t) => ({
    what: `${t.vehicle} stands ${t.found('up')} out of the host’s profile, ${t.fact('across')} from the middle of the track and ${t.fact('height')} above the rail.${others(f, 'the same')}`,
    why: 'The host keeps its tunnels, platforms and posts clear of its profile and no farther. What stands out of it is cut back, taken off, or stays at home; slower does not help.',
  }),
  'outline-not-measured': (_f, t) => ({
    what: `The host’s sheet has a profile, and whether ${t.fact('vehicles')} lies within it is not known.`,
    why: 'Its width and height, where they are known, make a box that stands out of the profile; its outline, point by point, may not.',
  }),
  'no-profile-of-gauge': (f, t) => ({
    what: `The host’s sheet has profiles, and none for vehicles of ${t.fact('gauge')} gauge such as ${t.vehicle}.${others(f, 'the same')}`,
    why: 'Ask the host for the profile of that gauge.',
  }),
  'standard-not-measured': (f, t) => ({
    what: `The host’s sheet has a limit for ${named(f.facts.of)}, and that of ${t.fact('vehicles')} is not measured.`,
    why: 'Measured at home it is known before the trip; measured at the gate it may end there.',
  }),
} satisfies Partial<Tellers>;
