/**
 * Findings gathered for reading: the same finding of several vehicles or gaps is one line, the worst named; those of
 * one kind that are all within a tenth of what is allowed are one line "near". The answer itself keeps every one.
 */
import type { Finding } from '../engine/questions/finding.ts';
import { tellFinding } from '../words/finding.ts';
import type { Voice } from '../words/voice.ts';

/** Within this share of what is allowed nobody tells pass from fail by eye. */
const NEAR = 0.1;

export interface Gathered {
  /** The worst: first of the ranked findings. */
  readonly finding: Finding;
  readonly all: readonly Finding[];
  /** All of them within a tenth of what is allowed. */
  readonly near: boolean;
}

const isNear = ({ margin }: Finding): boolean => margin !== undefined && Math.abs(margin) <= NEAR;
/** One is no worse than another. */
const alikeEach: ReadonlySet<Finding['code']> = new Set(['rider-not-seated']);
const ofVehicle = ({ where }: Finding): boolean => where.vehicle !== undefined || where.gap !== undefined;

/** @param findings ranked, of any severity but `assumed` */
export function gathered(findings: readonly Finding[]): Gathered[] {
  const groups = new Map<string, Finding[]>();
  findings.forEach((finding, i) => {
    const { code, severity } = finding;
    if (severity === 'assumed') return;
    const alike = ofVehicle(finding) || alikeEach.has(code) ? 'vehicles' : isNear(finding) ? 'near' : `${i}`;
    const key = `${severity} ${code} ${alike}`;
    groups.set(key, [...(groups.get(key) ?? []), finding]);
  });
  return [...groups.values()].map((all) => ({ finding: all[0], all, near: all.every(isNear) }));
}

/** "Near: … (worst of 5)"; who strikes by little strikes, and nobody is told that it is near. */
export function tellGathered({ finding, all, near }: Gathered, voice: Voice): string {
  const { what } = tellFinding(finding, voice);
  if (alikeEach.has(finding.code) && all.length > 1) return `${what} ${all.length - 1} more: the same.`;
  return `${near && finding.severity !== 'forbids' ? 'Near: ' : ''}${what}${all.length > 1 ? ` (Worst of ${all.length}.)` : ''}`;
}
