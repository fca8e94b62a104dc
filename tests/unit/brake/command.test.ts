/** The brake commands, run as the command line runs them, on the example outings. */
import { readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Command as Program } from 'commander';
import { afterAll, describe, expect, it } from 'vitest';
import type { Outcome } from '../../../cli/command.ts';
import { brakeDesignCommand } from '../../../cli/commands/brake-design.ts';
import { brakesCommand } from '../../../cli/commands/brakes.ts';
import { openGate } from '../../../cli/gate.ts';

async function run(...args: string[]): Promise<Outcome> {
  let outcome: Outcome | undefined;
  const program = new Program().exitOverride();
  for (const command of [brakesCommand, brakeDesignCommand]) {
    command.declare(program, async (action) => {
      outcome = await action(openGate({}).gate);
    });
  }
  await program.parseAsync(args, { from: 'user' });
  if (!outcome) throw new Error('no command ran');
  return outcome;
}

const drawing = join(tmpdir(), `heedway-brakes-${process.pid}.svg`);
afterAll(() => rm(drawing, { force: true }));

describe('heedway brakes', () => {
  it('tells times per car, ratios, standing and losses', async () => {
    const { text, exit } = await run('brakes', 'examples/battery-vacuum.json');
    expect(exit).toBe(0);
    for (const part of [
      'automatic vacuum brake, applied fully',
      'Vacuum car 3',
      'may slide when',
      'Standing:',
      'hose or cable parts',
    ]) {
      expect(text).toContain(part);
    }
  });

  it('has the same for programs, without infinities', async () => {
    const { json } = await run('brakes', 'examples/heavy-air.json', '--json');
    const plain = JSON.parse(JSON.stringify(json));
    expect(plain).toEqual(json);
    expect(plain.apply[0].gears).toHaveLength(5);
    expect(plain.apply[0].gears[4].t90).toBeGreaterThan(plain.apply[0].gears[0].t90);
    expect(plain.reserves[0].full).toBeGreaterThan(1);
  });

  it('draws how they come on', async () => {
    await run('brakes', 'examples/heavy-air.json', '--svg', drawing);
    const svg = await readFile(drawing, 'utf8');
    expect(svg).toContain('<svg');
    expect(svg.match(/Air car/g)).toHaveLength(5);
    expect(svg).not.toContain('NaN');
  });

  it('says so where no brake has its parts described', async () => {
    const { text } = await run('brakes', 'examples/steam-light.json');
    expect(text).toContain('Brake ratio');
    expect(text).not.toContain('applied fully');
  });
});

describe('heedway brake-design', () => {
  const job = [
    'brake-design',
    'examples/battery-vacuum.json',
    '--speed',
    '7 mph',
    '--reaction',
    '0 s',
    '--spring',
    '6 lbf',
  ];

  // In 60 ft no force does it: a driver who eases wheels that slide keeps less than a rail of 0.15 would give.
  it('lists designs that stop 70 ft from 7 mph on 3 %, all cautious stops within', async () => {
    const { json, exit } = await run(...job, '--distance', '70 ft', '--grade', '-3 %', '--vacuum', '18 inHg');
    const { designs } = json as { designs: { feasible: boolean; cautiousStop: number }[] };
    const good = designs.filter((d) => d.feasible);
    expect(exit).toBe(0);
    expect(good.length).toBeGreaterThan(0);
    for (const d of good) expect(d.cautiousStop).toBeLessThanOrEqual(70 * 0.3048);
  });

  it('exits 20 where nothing does it, and says what to change', async () => {
    const { text, exit } = await run(...job, '--distance', '12 ft', '--grade', '-3 %', '--vacuum', '18 inHg');
    expect(exit).toBe(20);
    expect(text).toContain('No cylinder does it');
  });

  it.each([
    [['--distance', '60 ft', '--vacuum', '18 inHg', '--pressure', '45 psi']],
    [['--distance', '60 ft', '--vacuum', '18 mph']],
    [['--distance', '60 ft', '--vacuum', '18 inHg', '--grade', '-40 %']],
    [['--distance', '60 ft', '--vacuum', '18 inHg', '--block', 'cheese']],
    [['--distance', '0 ft', '--vacuum', '18 inHg']],
  ])('refuses %j', async (options) => {
    await expect(run(...job, ...options)).rejects.toThrow(/expected|out of range/);
  });
});
