/** Lines gathered for reading, and assumptions by what would change the word first. */
import { describe, expect, it } from 'vitest';
import { clipped, wrap } from '../../../cli/screen.ts';
import { assumedByWeight } from '../../../desk/assumed.ts';
import { gathered, tellGathered } from '../../../desk/gathered.ts';
import { ranked } from '../../../engine/answer/verdict.ts';
import { amount } from '../../../engine/base/quantity.ts';
import type { Finding } from '../../../engine/questions/finding.ts';
import { makeFinding } from '../../../engine/questions/make.ts';
import { plain } from '../../support/rules.ts';

const lean = (vehicle: string, margin: number): Finding =>
  makeFinding('lean-small', 'notes', 'balance', {
    where: { vehicle },
    margin,
    facts: { rider: 'a', speed: amount(1, 'speed'), vehicles: 1 },
    source: 'a test',
  });
const slow = (from: number, margin: number): Finding =>
  makeFinding('speed-limited', 'limits', 'stopping', {
    where: { from, to: from + 5 },
    margin,
    facts: { reason: 'curve', what: 'a curve', at: amount(from, 'length') },
    source: 'a test',
  });
const assumed = (key: string): Finding =>
  makeFinding('assumed', 'assumed', 'assumptions', { facts: { key, of: key, where: 'x' }, source: 'a test' });

describe('gathered findings', () => {
  it('of several vehicles are one line, the worst named and all kept', () => {
    const [one, ...more] = gathered(ranked([lean('car1', -0.02), lean('car2', -0.4), lean('car3', 0.3)]));
    expect(more).toEqual([]);
    expect(one.finding.where.vehicle).toBe('car2');
    expect(one.all.length).toBe(3);
    expect(one.near).toBe(false);
    expect(tellGathered(one, { system: 'metric', wording: 'us', outing: plain(3) })).toMatch(
      /\(Worst of 3\.\)$/,
    );
  });

  it('within a tenth are one line near; places that are farther off stay apart', () => {
    const list = gathered(ranked([slow(0, -0.05), slow(50, -0.3), slow(100, -0.02), slow(150, -0.5)]));
    expect(list.map(({ all, near }) => [all.length, near])).toEqual([
      [1, false],
      [1, false],
      [2, true],
    ]);
  });

  it('what holds the train is not told as near', () => {
    const voice = { system: 'metric', wording: 'us', outing: plain(3) } as const;
    const told = (finding: Finding) => gathered([finding]).map((group) => tellGathered(group, voice))[0];
    expect(told(slow(0, -0.05))).toMatch(/^Near: /);
    expect(told({ ...slow(0, -0.05), severity: 'forbids' })).not.toMatch(/^Near/);
  });

  it('never mix what forbids with what is noted', () => {
    const holds = { ...lean('car1', -0.05), severity: 'forbids' as const };
    expect(gathered(ranked([lean('car2', -0.05), holds]))).toHaveLength(2);
  });
});

describe('assumptions', () => {
  const keys = (findings: Finding[]): string[] => assumedByWeight(findings).map((a) => a.key);
  it('go by weight, those first that something rests on', () => {
    const some = ['curve-constant', 'mean-pressure-factor', 'adhesion/dry', 'rider-centre/astride'].map(
      assumed,
    );
    expect(keys(some)[0]).toBe('adhesion/dry');
    const tips = makeFinding('truck-lifts', 'forbids', 'balance', { source: 'a test' });
    expect(keys([tips, ...some])[0]).toBe('rider-centre/astride');
    // A note changes no word.
    expect(keys([lean('car1', -0.5), ...some])[0]).toBe('adhesion/dry');
  });
});

describe('a screen', () => {
  it('breaks at words and marks what it cuts', () => {
    expect(wrap('one two three four', '  ', 9)).toEqual(['one two', '  three', '  four']);
    expect(clipped(['a', 'b', 'c'], 2)).toEqual(['a', 'b …']);
  });
  it('are cut after a clause, never within a figure', () => {
    expect(clipped(['it needs 162 lbf at 3 mph, and the engine pulls 1', '57 lbf'], 1)).toEqual([
      'it needs 162 lbf at 3 mph …',
    ]);
    expect(clipped(['the engine pulls 1', '57 lbf'], 1)).toEqual(['the engine pulls …']);
  });
});
