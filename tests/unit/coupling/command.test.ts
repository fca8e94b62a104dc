/** The couplers command, run as the command line runs it, and the look behind it in both directions. */
import { Command as Program } from 'commander';
import { describe, expect, it } from 'vitest';
import type { Outcome } from '../../../cli/command.ts';
import { couplersCommand } from '../../../cli/commands/couplers.ts';
import { openGate } from '../../../cli/gate.ts';
import { lookAtCouplerLoads } from '../../../desk/couplers.ts';
import { couplerScenarios } from '../../../engine/questions/couplers/ensemble.ts';
import { randomOuting } from '../../support/random-outings.ts';

async function run(...args: string[]): Promise<Outcome> {
  let outcome: Outcome | undefined;
  const program = new Program().exitOverride();
  couplersCommand.declare(program, async (action) => {
    outcome = await action(openGate({}).gate);
  });
  await program.parseAsync(['couplers', ...args], { from: 'user' });
  if (!outcome) throw new Error('no command ran');
  return outcome;
}

describe('heedway couplers', () => {
  it.each(couplerScenarios)('tells %s, strength and curves, and the same for programs', async (scenario) => {
    const { text, json, exit } = await run('examples/heavy-air.json', '--scenario', scenario);
    for (const part of [
      'Peak forces',
      'How far the couplers must swing in curves',
      'What the couplings must bear',
      'Peaks in curves',
      'not repeatable',
    ]) {
      expect(text).toContain(part);
    }
    expect(text).not.toMatch(/NaN|undefined|Infinity/);
    expect(exit).toBe(0);
    const told = json as {
      gaps: { pull: { median: number; most: number } }[];
      loads: { gap: number; strength: number; pull: { force: number } }[];
      swings: { end: string; needed: number; swing: number }[];
      findings: unknown[];
    };
    expect(told.swings.map((s) => s.end)).toEqual(told.gaps.flatMap(() => ['rear', 'front']));
    for (const { needed, swing } of told.swings) expect(swing).toBeGreaterThan(needed);
    expect(told.loads.map((l) => l.gap)).toEqual(told.gaps.map((_, i) => i));
    for (const { pull } of told.gaps) expect(pull.median).toBeLessThanOrEqual(pull.most);
    for (const { pull, strength } of told.loads) expect(strength).toBeGreaterThan(pull.force);
  });

  it('refuses a place off the line and a speed below none', async () => {
    const heavy = 'examples/heavy-air.json';
    await expect(run(heavy, '--at', '9000 ft')).rejects.toThrow(/--at.*expected a place from 0/);
    await expect(run(heavy, '--at', '-1 ft')).rejects.toThrow(/--at.*expected a place from 0/);
    await expect(run(heavy, '--speed', '-1 mph')).rejects.toThrow(/--speed.*not negative/);
  });

  it('tells every gap at the end of the line', async () => {
    const { json, exit } = await run('examples/heavy-air.json', '--at', '2870 ft', '--speed', '5 mph');
    expect((json as { gaps: unknown[] }).gaps.length).toBeGreaterThan(3);
    expect(exit).toBe(0);
  });

  it('names the scenarios where one is asked for that is not there', async () => {
    await expect(run('examples/heavy-air.json', '--scenario', 'gallop')).rejects.toThrow(/run-in/);
  });
});

describe('couplings on a line run in reverse', () => {
  it('findings stand in the line’s own chainage', () => {
    let turned = 0;
    for (let seed = 1; seed <= 30; seed++) {
      const o = randomOuting(seed, 3);
      const { data, findings, at } = lookAtCouplerLoads({ ...o, direction: 'reverse' });
      for (const f of findings) {
        if (f.where.from === undefined || f.where.from !== f.where.to) continue;
        const places = data.curves.flatMap(({ climb, tip }) => [climb?.at, tip?.at]);
        const steady = data.gaps.map((g) => g.steadyAt);
        expect([...places, ...steady].map((s) => at(s ?? -1))).toContain(f.where.from);
        turned++;
      }
    }
    expect(turned).toBeGreaterThan(2);
  });
});
