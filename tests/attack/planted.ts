/** Outings that must not leave: a sound one with one thing wrong, and other things changed by chance that cannot mend it. */
import { type Chance, changedJson } from './mutate.ts';

type Json = Record<string, unknown>;

const vehiclesOf = (paper: Json): Json[] =>
  ((paper['train'] as Json)['vehicles'] as Json[]).map((m) => m['vehicle'] as Json);

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
};

export function planted(
  chance: Chance,
  papers: readonly Readonly<Json>[],
): { readonly paper: Json; readonly fault: string } {
  const paper = structuredClone(chance.one(papers)) as Json;
  const fault = chance.one(Object.keys(faults));
  // Neither the host's rules nor the weather mend any of them.
  for (const part of ['host', 'conditions'])
    if (chance.share() < 0.3 && paper[part]) paper[part] = changedJson(paper[part], chance);
  faults[fault](paper, chance);
  return { paper, fault };
}
