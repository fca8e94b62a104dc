/** Outings that must not leave: a sound one with one thing wrong, and other things changed by chance that cannot mend it. */
import { type Chance, changedJson } from './mutate.ts';
import { plainPapers, withCrew } from './papers.ts';

type Json = Record<string, unknown>;

const vehiclesOf = (paper: Json): Json[] =>
  ((paper['train'] as Json)['vehicles'] as Json[]).map((m) => m['vehicle'] as Json);

/** Over a train that runs anywhere on the line. */
const everywhere = (paper: Json): Json => {
  const { name, profile } = paper['line'] as { name: string; profile: readonly { readonly at?: unknown }[] };
  return { of: name, from: '0 ft', to: profile.at(-1)?.at, since: '2026-05-01' };
};

const faults: Readonly<Record<string, (paper: Json, chance: Chance) => void>> = {
  'no brake on the whole train': (paper) => {
    for (const vehicle of vehiclesOf(paper)) vehicle['brakes'] = [];
  },
  'a line shorter than the train': (paper, { index }) => {
    const { heedway, version, name, gauge } = paper['line'] as Json;
    const profile = [
      { at: '0 m', height: '0 m' },
      { at: `${3 + index(3)} m`, height: '0 m' },
    ];
    paper['line'] = { heedway, version, name, gauge, shape: 'point-to-point', profile };
    delete paper['agreedLimits'];
  },
  'riders beyond what the car is rated for': (paper) => {
    for (const rider of paper['riders'] as Json[]) {
      rider['weight'] = '650 lb';
      delete rider['typical'];
    }
  },
  'a curve tighter than a car is long': (paper, { index }) => {
    for (const curve of ((paper['line'] as Json)['curves'] ?? []) as Json[])
      curve['radius'] = `${4 + index(2)} ft`;
  },
  'a line that is shut': (paper) => {
    paper['restrictions'] = [{ ...everywhere(paper), why: 'shut' }];
  },
  'a line that was found to be unfit': (paper) => {
    const { of, since } = everywhere(paper);
    paper['defects'] = [{ of, what: 'a broken rail', rejects: true, since }];
  },
  'a certificate that is out': (paper) => {
    const host = paper['host'] as Json;
    host['inDate'] = [{ what: 'insurance', of: 'club', source: 'a rule' }];
    paper['date'] = '2026-05-31';
    paper['shown'] = [{ what: 'insurance', on: '2025-01-01', until: '2025-12-31', by: 'x' }];
  },
  'an outline within which no car lies': (paper) => {
    const gauges = new Set(
      vehiclesOf(paper).map((vehicle) => vehicle['gauge'] ?? (paper['line'] as Json)['gauge']),
    );
    const points = [
      { across: '0 m', height: '0.2 m' },
      { across: '1 in', height: '0.2 m' },
      { across: '1 in', height: '0.3 m' },
      { across: '0 m', height: '0.3 m' },
    ];
    (paper['host'] as Json)['profiles'] = [...gauges].map((gauge) => ({
      gauge,
      points,
      source: 'a drawing',
    }));
  },
};

/** In the outing of people at work by rules: its host stays as it is. */
const ofCrew: Readonly<Record<string, (paper: Json) => void>> = {
  'nobody at work is fit': (paper) => {
    for (const one of paper['crew'] as Json[]) one['fit'] = false;
  },
  'nobody at work says anything': (paper) => {
    paper['crew'] = [];
  },
  'lightning, where it stops everything': (paper) => {
    (paper['conditions'] as Json)['lightning'] = true;
  },
};

export function planted(chance: Chance): { readonly paper: Json; readonly fault: string } {
  if (chance.share() < 0.2) {
    const paper = structuredClone(withCrew) as Json;
    const fault = chance.one(Object.keys(ofCrew));
    paper['train'] = changedJson(paper['train'], chance);
    ofCrew[fault](paper);
    return { paper, fault };
  }
  const paper = structuredClone(chance.one(plainPapers)) as Json;
  const fault = chance.one(Object.keys(faults));
  // Neither the host's rules nor the weather mend any of them.
  for (const part of ['host', 'conditions'])
    if (chance.share() < 0.3 && paper[part]) paper[part] = changedJson(paper[part], chance);
  faults[fault](paper, chance);
  return { paper, fault };
}
