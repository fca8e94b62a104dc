/** heedway couplers, run as the command line runs it: refuses what cannot be asked. */
import { Command as Program } from 'commander';
import { describe, expect, it } from 'vitest';
import type { Outcome } from '../../../cli/command.ts';
import { couplersCommand } from '../../../cli/commands/couplers.ts';

async function couplers(...args: string[]): Promise<Outcome> {
  let outcome: Outcome | undefined;
  const program = new Program().exitOverride();
  couplersCommand.declare(program, async (action) => {
    outcome = await action();
  });
  await program.parseAsync(['couplers', 'examples/heavy-air.json', ...args], { from: 'user' });
  if (!outcome) throw new Error('no command ran');
  return outcome;
}

describe('heedway couplers', () => {
  it('refuses a place off the line and a speed below none', async () => {
    await expect(couplers('--at', '9000 ft')).rejects.toThrow(/--at.*expected a place from 0/);
    await expect(couplers('--at', '-1 ft')).rejects.toThrow(/--at.*expected a place from 0/);
    await expect(couplers('--speed', '-1 mph')).rejects.toThrow(/--speed.*not negative/);
  });

  it('tells every gap on the line', async () => {
    const { json, exit } = await couplers('--at', '2953 ft', '--speed', '5 mph');
    expect((json as { gaps: unknown[] }).gaps.length).toBeGreaterThan(3);
    expect(exit).toBe(0);
  });
});
