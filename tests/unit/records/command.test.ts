/** The command line: what was altered is named with its line, and nothing is taken from such a file. */
import { mkdtempSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { heedway, type Ran } from '../../support/cli.ts';
import { jpeg } from '../../support/jpeg.ts';
import { pdfText } from '../../support/pdf-text.ts';

const folder = mkdtempSync(join(tmpdir(), 'club-'));
const store = join(folder, 'club.records');
const at = (...args: string[]): Ran => heedway(...args, '--records', store);

describe('heedway records', () => {
  it('leaves only with all seen to; arrives; and is told apart from what somebody altered', () => {
    expect(at('verify').stderr).toContain('no such file');
    expect(at('records', 'begin', '--name', 'An Invented Person').status).toBe(0);
    expect(statSync(`${store}.key`).mode & 0o077).toBe(0);
    expect(at('records', 'begin', '--name', 'Another').stderr).toContain('somebody writes here already');

    const leave = ['leave', 'examples/steam-light.json', '--said', '2026-05-31T10:05'];
    const not = at(...leave, '--done', 'briefed');
    expect([not.status, not.stdout]).toEqual([20, expect.stringContaining('Nothing was recorded')]);
    expect(at(...leave, '--done', 'brake-test,briefed').status).toBe(10);
    const early = at('arrive', '--said', '2026-05-31T10:00');
    expect([early.status, early.stderr]).toEqual([2, expect.stringContaining('before it left')]);
    expect(at('arrive', '--said', '2026-05-31T10:30', '--distance', '1 mile').status).toBe(0);
    expect(at('arrive').stderr).toContain('found no train out');

    const due = ['due', 'add', 'boiler-steam-test', '--of', 'Fenwick', '--by', 'An inspector'];
    expect(at(...due, '--done', '2026-05-30', '--interval', 'now and then').stderr).toContain(
      '31 service days',
    );
    // On the day of which the first run is recorded: what ran before it nobody knows.
    expect(at(...due, '--done', '2026-05-31', '--interval', '1 service day').status).toBe(0);
    expect(at('due', '--on', '2026-05-31').stdout).toMatch(/stands +1 service day left/);
    const out = at('due', '--on', '2026-06-01');
    expect([out.status, out.stdout]).toEqual([20, expect.stringContaining('OUT OF DATE')]);

    const inspect = ['inspect', 'record', 'car-before-use', '--of', 'Light car 1', '--right'];
    const half = at(...inspect, 'seats');
    expect([half.status, half.stderr]).toEqual([2, expect.stringContaining('wheels: not said')]);
    const taken = join(folder, 'wheels.jpg');
    writeFileSync(taken, jpeg({ place: true }));
    const cracked = ['--reject', 'wheels=cracked', '--photo', `wheels=${taken}`];
    expect(at(...inspect, 'rest', ...cracked).status).toBe(20);
    const held = at('check', 'examples/steam-light.json', '--no-remedies');
    expect([held.status, held.stdout]).toEqual([
      20,
      expect.stringContaining('Rejected: Light car 1, cracked'),
    ]);
    const [defect] = JSON.parse(at('inspect', 'defects', '--json').stdout);
    const back = join(folder, 'back.jpg');
    expect(at('records', 'photo', defect.photo.slice(0, 8), '--out', back).status).toBe(0);
    expect(new Uint8Array(readFileSync(back))).toEqual(jpeg({}));
    expect(at('inspect', 'mend', defect.record.slice(0, 8), 'wheels', 'new wheelset').status).toBe(0);
    expect(at('check', 'examples/steam-light.json', '--no-remedies').status).toBe(10);

    const file = join(folder, 'club.jsonl');
    expect(at('records', 'export', '--out', file).status).toBe(0);
    const text = readFileSync(file, 'utf8');
    expect(text).not.toContain('An Invented Person');
    writeFileSync(file, text.replace('1 mile', '2 mile'));
    const found = at('verify', file);
    expect([found.status, found.stdout]).toEqual([
      20,
      expect.stringMatching(/line 4: record \w{8}, number 3 .* altered/),
    ]);
    expect(at('records', 'import', file).stderr).toContain('nothing was taken');
  });
});

describe('heedway evidence', () => {
  it('says what it cannot read; else how many records, and whether all are as they were written', () => {
    const pdf = join(folder, 'evidence.pdf');
    const refused = (flag: string, value: string): void => {
      const ran = at('evidence', flag, value, '--pdf', pdf);
      expect([ran.status, ran.stderr]).toEqual([2, expect.stringContaining(`${flag}: found ${value}`)]);
    };
    refused('--from', 'yesterday');
    refused('--paper', 'a6');
    expect(at('evidence', '--from', '2026-06-02', '--to', '2026-06-01', '--pdf', pdf).stderr).toContain(
      'not after',
    );
    const ran = at('evidence', '--of', 'Fenwick', '--pdf', pdf);
    expect([ran.status, ran.stdout]).toEqual([0, expect.stringContaining('all as they were written')]);
    expect(pdfText(readFileSync(pdf)).text).not.toContain('An Invented Person');
    // What is rejected in the records is rejected in the pack's answer, however its name was written.
    const reject = ['--of', 'light car', '--right', 'rest', '--reject', 'seats=loose'];
    expect(at('inspect', 'record', 'car-before-use', ...reject).status).toBe(20);
    const outing = ['--outing', 'examples/steam-light.json'];
    expect(at('evidence', '--names', ...outing, '--pdf', pdf).status).toBe(0);
    const { text } = pdfText(readFileSync(pdf));
    expect(text).toContain('An Invented Person');
    expect(text).toContain('Rejected: Light car 1, loose');
    expect(text).toContain('light car loose');
  });
});
