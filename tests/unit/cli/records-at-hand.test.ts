/**
 * Every command that an outing comes into lets it in by the gate, which puts in what is recorded: a limit that was forgotten
 * on the command line is a train on a shut line. The commands are those of the program's own table.
 */
import { copyFileSync, mkdirSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Command as Program } from 'commander';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Gate } from '../../../cli/gate.ts';
import { openGate } from '../../../cli/gate.ts';
import { commands } from '../../../cli/main.ts';
import { STORE } from '../../../cli/records.ts';
import { telling } from '../../../desk/asked.ts';
import { cardMark } from '../../../desk/card.ts';
import { outingIn } from '../../../desk/outing-code.ts';
import { answerOuting } from '../../../engine/answer/complete.ts';
import { cardMade } from '../../../views/card-made.ts';
import { cardDocument } from '../../../views/card-paper.ts';
import { heedway } from '../../support/cli.ts';

const STEAM = 'examples/steam-light.json';

/** What comes in otherwise, and why nothing that is told of it hangs on a record. */
const otherwise: Readonly<Record<string, string>> = {
  leave: 'it writes into the store, and puts in what stands there on the day on which it leaves',
  'incident limit': 'the name and length of its line alone',
  'incident list': 'its line, and the limits of the store that it lists',
  'incident record': 'the name and places of its line alone',
  'measure log': 'the grades of its line alone',
};

/** What a command asks for beside the outing. */
const given: Readonly<Record<string, string>> = {
  at: '10 ft',
  speed: '5 mph',
  record: 'examples/tests/coast-down.json',
  files: 'examples/tests/coast-down.json',
  number: '1',
  vehicle: 'car-1',
};

interface Way {
  readonly name: string;
  readonly command: Program;
  readonly args: readonly string[];
}

class Came extends Error {}

let came: string[] = [];
const comes = (path: string): never => {
  came.push(path);
  throw new Came();
};
const spy: Gate = {
  asked: async (path) => comes(path),
  untried: async (path) => comes(path),
  outing: async (path) => comes(path),
  made: async (_, path) => comes(path),
  silence: () => '',
};

const program = new Program().exitOverride();
for (const command of commands)
  command.declare(program, async (action) => {
    await action(spy).catch((error: unknown) => {
      if (!(error instanceof Came)) throw error;
    });
  });

const leaves = (of: Program, name = ''): { command: Program; name: string }[] =>
  of.commands.flatMap((sub) => {
    const whole = `${name} ${sub.name()}`.trim();
    return sub.commands.length > 0 ? leaves(sub, whole) : [{ command: sub, name: whole }];
  });

const isOuting = (word: string): boolean => /^(outing|papers?)$/.test(word);

const ways: readonly Way[] = leaves(program).flatMap(({ command, name }) => {
  const places = command.registeredArguments.map((one) => one.name());
  const flag = command.options.some(({ long }) => long === '--outing');
  if (!flag && !places.some(isOuting)) return [];
  const must = command.options.filter((one) => one.mandatory && one.defaultValue === undefined);
  const args = [
    ...name.split(' '),
    ...places.map((place) => (isOuting(place) ? STEAM : (given[place] ?? place))),
    ...must.flatMap((one) => [`${one.long}`, given[one.attributeName()] ?? one.attributeName()]),
    ...(flag ? ['--outing', STEAM] : []),
  ];
  return [{ name, command, args }];
});

describe('every command that an outing comes into', () => {
  it('is found in the table of the program', () => {
    expect(ways.length).toBeGreaterThan(30);
    for (const name of Object.keys(otherwise)) expect(ways.map((way) => way.name)).toContain(name);
  });

  it.each(ways.filter(({ name }) => !(name in otherwise)))(
    '$name: by the gate',
    async ({ command, args }) => {
      expect(command.options.map(({ long }) => long)).toContain('--records');
      came = [];
      await program.parseAsync([...args], { from: 'user' });
      expect(came).toContain(STEAM);
    },
  );
});

describe('what is recorded', () => {
  const folder = mkdtempSync(join(tmpdir(), 'at-hand-'));
  const [open, shut] = ['slow', 'shut'].map((name) => join(folder, name, 'outing.json'));

  beforeAll(() => {
    for (const [path, how] of [
      [open, ['--speed', '2 mph']],
      [shut, ['--closed']],
    ] as const) {
      const home = join(path, '..');
      mkdirSync(home);
      const store = join(home, STORE);
      expect(heedway('bundle', STEAM, '--out', path).status).toBe(0);
      heedway('records', 'begin', '--name', 'An Invented Person', '--records', store);
      const ran = heedway(
        ...['incident', 'limit', 'soft bank', '--from', '700 ft', '--to', '900 ft', ...how],
        ...['--outing', path, '--records', store],
      );
      expect(ran.stderr).toBe('');
    }
  });

  it('is in the answer without being asked for', () => {
    const asked = heedway('check', shut, '--no-remedies');
    expect(asked.status).toBe(20);
    expect(asked.stdout).toMatch(/^Records asked: .*heedway\.records\. In force here: 1 closure\./);
    expect(asked.stdout).toMatch(/The line is shut .*: soft bank \(since/);
  });

  it('is told over what has no word of it, and beside what programs read', () => {
    const over = heedway('stop', open, '--at', '700 ft', '--speed', '4 mph');
    expect(over.stdout).toMatch(/^Records asked: .* In force here: 1 temporary limit\.\n/);
    const not = heedway('stop', shut, '--at', '700 ft', '--speed', '4 mph', '--no-records');
    expect(not.stdout).toMatch(/^RECORDS NOT ASKED: .*heedway\.records lies here/);
    const csv = heedway('speeds', open, '--csv', '--json');
    expect(csv.stderr).toContain('1 temporary limit');
    expect(JSON.parse(csv.stdout)).toMatchObject({ records: [{ asked: true, limits: 1, closures: 0 }] });
  });

  it('stands on the card, on its paper and in what a phone takes of it', async () => {
    const asked = await openGate({}).gate.asked(open);
    const answer = answerOuting(asked.outing, { remedies: false, counts: false });
    const told = telling(asked, { id: asked.id, answer });
    if (!told) throw new Error('an answer to another outing');
    const made = (records?: false) => {
      const { gate } = openGate(records === false ? { records } : {});
      return cardMade(told, { system: 'imperial', wording: 'us' }, '0', gate.silence(open));
    };
    const one = made();
    const { heeds, speeds } = one.card;
    expect(heeds.map(({ text }) => text).join('\n')).toMatch(
      /Temporary limit .*2\.0 mph, soft bank \(since [-\d]+\)\. Record [0-9a-f]{8}; it stands until it is lifted\./,
    );
    expect(speeds.map(({ speed }) => speed)).toContain('2 mph');
    expect(JSON.stringify(cardDocument([one], 'a5', () => true))).toContain('soft bank');
    const carried = await outingIn(`#${one.handed?.fragment}`);
    if ('fault' in carried) throw new Error(carried.fault);
    expect(JSON.parse(new TextDecoder().decode(carried)).restrictions).toMatchObject([
      { why: 'soft bank', speed: '2 mph' },
    ]);
    const without = made(false);
    expect(cardMark(without.card)).toMatch(/^RECORDS NOT ASKED · /);
    expect(JSON.stringify(cardDocument([without], 'a5', () => true))).toContain('RECORDS NOT ASKED: ');
  });

  it('is in a tried outing too', async () => {
    const file = join(folder, 'shut', 'tried.json');
    const outing = JSON.parse(readFileSync(shut, 'utf8'));
    writeFileSync(
      file,
      JSON.stringify({
        heedway: 'tried',
        version: 1,
        outing,
        changes: [{ kind: 'rail-state', state: 'sanded' }],
      }),
    );
    const { gate } = openGate({});
    const asked = await gate.asked(file);
    expect(asked.trials).toHaveLength(1);
    expect(asked.outing.restrictions).toHaveLength(1);
  });

  it('is asked of one store alone: where two lie somebody says which', async () => {
    const before = process.cwd();
    process.chdir(join(folder, 'slow'));
    try {
      await expect(openGate({}).gate.outing(shut)).rejects.toThrow(
        /expected --records with the one that counts/,
      );
      copyFileSync(shut, 'here.json');
      expect((await openGate({}).gate.outing('here.json')).restrictions).toHaveLength(1);
    } finally {
      process.chdir(before);
    }
  });
});
