/**
 * Assumptions by how soon they would change the word: a fixed weight for each kind of value (how much of a stop, a
 * start or a balance it moves between its bounds: judgement, no source), and before all others those that something
 * which holds, limits or cannot be told rests on.
 */
import type { Finding, Question } from '../engine/questions/finding.ts';

export interface Assumed {
  readonly key: string;
  readonly of: string;
  readonly source: string;
  readonly where: readonly string[];
}

interface Weight {
  readonly weight: number;
  readonly feeds: readonly Question[];
}

const stops: readonly Question[] = ['stopping', 'spacing', 'line', 'brakes'];
/** By the first word of a key. */
const weights: Readonly<Record<string, Weight>> = {
  sight: { weight: 10, feeds: ['stopping', 'line'] },
  speed: { weight: 9, feeds: stops },
  adhesion: { weight: 8, feeds: [...stops, 'hauling', 'holding'] },
  'block-friction': { weight: 7, feeds: [...stops, 'holding', 'parting'] },
  'brake-force-spread': { weight: 6, feeds: [...stops, 'holding'] },
  profile: { weight: 6, feeds: ['balance'] },
  'rider-centre': { weight: 6, feeds: ['balance'] },
  measured: { weight: 6, feeds: [...stops, 'hauling', 'holding', 'balance'] },
  reaction: { weight: 5, feeds: stops },
  mass: { weight: 5, feeds: ['balance', 'stopping', 'hauling', 'host', 'fit'] },
  'build-up': { weight: 4, feeds: stops },
  'mean-pressure-factor': { weight: 4, feeds: ['hauling'] },
  'dead-time': { weight: 3, feeds: stops },
  rolling: { weight: 3, feeds: ['hauling', 'parting', 'holding', 'stopping'] },
  'curve-constant': { weight: 2, feeds: ['hauling'] },
  coupler: { weight: 2, feeds: ['fit'] },
};
const OTHERS: Weight = { weight: 1, feeds: ['stopping'] };

const weightOf = (key: string): Weight => weights[key.split('/')[0]] ?? OTHERS;

/** Of one kind and for one purpose once, with all that it stands in for; what would change the word first is first. */
export function assumedByWeight(findings: readonly Finding[]): Assumed[] {
  const groups = new Map<string, { key: string; of: string; source: string; where: string[] }>();
  for (const finding of findings) {
    if (finding.code !== 'assumed') continue;
    const { key, of, where } = finding.facts;
    const group = groups.get(key) ?? { key, of, source: finding.source, where: [] };
    group.where.push(where);
    groups.set(key, group);
  }
  const rests = new Set(
    findings.filter((f) => f.severity !== 'notes' && f.severity !== 'assumed').map((f) => f.question),
  );
  const rank = ({ key }: Assumed): number => {
    const { weight, feeds } = weightOf(key);
    return weight + (feeds.some((q) => rests.has(q)) ? 100 : 0);
  };
  return [...groups.values()].sort((a, b) => rank(b) - rank(a));
}
