/** The balance commands, run as the command line runs them, on the example outings. */
import { rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Command as Program } from 'commander';
import { afterAll, describe, expect, it } from 'vitest';
import type { Outcome } from '../../../cli/command.ts';
import { balanceCommand } from '../../../cli/commands/balance.ts';
import { leanCommand } from '../../../cli/commands/lean.ts';
import { seatingCommand } from '../../../cli/commands/seating.ts';
import { twistCommand } from '../../../cli/commands/twist.ts';
import { openGate } from '../../../cli/gate.ts';
import { lookAtBalance } from '../../../desk/balance.ts';
import { randomOuting } from '../../support/random-outings.ts';

async function run(...args: string[]): Promise<Outcome> {
  let outcome: Outcome | undefined;
  const program = new Program().exitOverride();
  for (const command of [balanceCommand, leanCommand, seatingCommand, twistCommand]) {
    command.declare(program, async (action) => {
      outcome = await action(openGate({}).gate);
    });
  }
  await program.parseAsync(args, { from: 'user' });
  if (!outcome) throw new Error('no command ran');
  return outcome;
}

const seated = join(tmpdir(), `heedway-seated-${process.pid}.json`);
afterAll(() => rm(seated, { force: true }));

describe('heedway balance', () => {
  it('tells loads, leans, curves and flanges, and the same for programs', async () => {
    const { text, json } = await run('balance', 'examples/heavy-air.json');
    for (const part of [
      'Standing level',
      'How little lifts a wheel',
      'Curves',
      'Flange climb',
      'Twist of the',
    ]) {
      expect(text).toContain(part);
    }
    expect(text).not.toMatch(/NaN|undefined|Infinity/);
    const told = json as {
      vehicles: { vehicle: string; axles: { left: number; right: number }[]; mass: number }[];
    };
    for (const v of told.vehicles) {
      const weight = v.axles.reduce((sum, a) => sum + a.left + a.right, 0);
      expect(weight / 9.80665 / v.mass).toBeCloseTo(1, 12);
    }
    expect(JSON.parse(JSON.stringify(json))).toEqual(json);
  });

  it('tells a train run in reverse in the line’s own chainage', () => {
    const o = randomOuting(11, 4);
    const places = (direction: 'forward' | 'reverse'): number[] => {
      const { data, at } = lookAtBalance({ ...o, direction });
      return data.curves.map((c) => Math.min(at(c.from), at(c.to))).sort((x, y) => x - y);
    };
    const [forward, reverse] = [places('forward'), places('reverse')];
    expect(forward.length).toBeGreaterThan(2);
    forward.forEach((from, i) => {
      expect(reverse[i]).toBeCloseTo(from, 6);
    });
  });

  it('gives the height of a centre of gravity from a tilt test', async () => {
    const args = [
      'balance',
      'examples/heavy-air.json',
      '--car',
      'car-1',
      '--tilt',
      '24°',
      '--base',
      '7.75 in',
    ];
    const { json, exit } = await run(...args);
    expect(exit).toBe(0);
    const { tareCentre } = json as { tareCentre: { value: number; low: number; high: number } };
    expect(tareCentre.value).toBeCloseTo((7.75 * 0.0254) / 2 / Math.tan((24 * Math.PI) / 180), 9);
    expect(tareCentre.low).toBeLessThan(tareCentre.value);
    expect(tareCentre.high).toBeGreaterThan(tareCentre.value);
  });

  it('refuses an angle or a vehicle that cannot be', async () => {
    await expect(
      run('balance', 'examples/heavy-air.json', '--car', 'car-1', '--tilt', '95°'),
    ).rejects.toThrow(/--tilt/);
    await expect(
      run('balance', 'examples/heavy-air.json', '--car', 'car-99', '--tilt', '14°'),
    ).rejects.toThrow(/car-99; expected one of/);
  });
});

describe('heedway lean', () => {
  it('says what would help one car', async () => {
    const path = 'examples/too-long-wet.json';
    const { text, json } = await run('lean', path, '--car', 'car-4', '--by', '8 in', '--ballast-at', '2 in');
    expect(text).toMatch(/leaning 8 in/);
    expect(text).toMatch(/ballast/);
    const [car] = (json as { vehicles: { whatIf: { ballast?: number; lowerSeats?: number } }[] }).vehicles;
    expect(car.whatIf.ballast ?? 1).toBeGreaterThanOrEqual(0);
  });
});

describe('heedway twist', () => {
  it('accepts, rejects, and cannot tell', async () => {
    const block = (...more: string[]): Promise<Outcome> =>
      run('twist', 'examples/steam-light.json', '--car', 'car-1', ...more);
    expect((await block('--block', '0.25 in')).exit).toBe(0);
    expect((await block('--block', '0.2 in', '--lifts')).exit).toBe(20);
    expect((await block('--block', '0.2 in')).exit).toBe(30);
    expect((await block('--block', '0.25 in', '--before', '60 lb', '--with', '20 lb')).exit).toBe(0);
    expect((await block('--block', '0.15 in', '--before', '60 lb', '--with', '20 lb')).exit).toBe(20);
    await expect(block('--block', '0.2 in', '--before', '60 lb')).rejects.toThrow(/both or neither/);
    await expect(block('--block', '0 in')).rejects.toThrow(/above 0/);
  });

  it('lists every vehicle, those that cannot be told too', async () => {
    expect((await run('twist', 'examples/steam-light.json')).text).toContain('cannot tell');
  });
});

describe('heedway seating', () => {
  it('seats, writes the outing, and then moves nobody', async () => {
    const first = await run('seating', 'examples/steam-light.json', '--out', seated);
    expect(first.text).toContain('proven');
    const again = await run('seating', seated);
    expect((again.json as { moved: string[] }).moved).toEqual([]);
    expect((again.json as { worst: number }).worst).toBeCloseTo((first.json as { worst: number }).worst, 12);
  });

  it('refuses another place for the child than it knows', async () => {
    await expect(run('seating', 'examples/steam-light.json', '--child', 'on top')).rejects.toThrow(/--child/);
  });
});
