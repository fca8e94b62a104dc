/** Broken input to the command line: a clear message with field, place and what is expected; exit 2; no stack. */
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { openOutingFile } from '../../../cli/open.ts';
import { answerOnly } from '../../../engine/answer/answer.ts';
import type { Answer } from '../../../engine/answer/types.ts';
import { heedway, type Ran } from '../../support/cli.ts';

const example = (path: string) =>
  JSON.parse(readFileSync(new URL(`../../../examples/${path}`, import.meta.url), 'utf8'));

type Write = (json: unknown) => string | Uint8Array;

/** A complete outing in one file, changed before it is written; where it is. */
function written(change: (outing: any) => unknown, write: Write): string {
  const outing = example('battery-vacuum.json');
  outing.line = example('lines/larkfield-hollow.json');
  outing.host = example('hosts/larkfield-hollow.json');
  outing.train = example('trains/bracken-vacuum.json');
  outing.train.vehicles[0].vehicle = example('vehicles/bracken.json');
  outing.train.vehicles[1].vehicle = example('vehicles/vacuum-car.json');
  const changed = change(outing) ?? outing;
  const folder = mkdtempSync(join(tmpdir(), 'bad-'));
  const path = join(folder, 'outing.json');
  writeFileSync(path, write(changed));
  return path;
}

const indented: Write = (json) => JSON.stringify(json, null, 2);

const broken = (change: (outing: any) => unknown, write = indented): Ran =>
  heedway('check', written(change, write), '--no-remedies');

function refuses({ status, stdout, stderr }: Ran, ...words: (string | RegExp)[]): void {
  expect(status).toBe(2);
  expect(stdout).toBe('');
  expect(stderr).not.toMatch(/\n\s+at .*:\d+:\d+/);
  for (const word of words) expect(stderr).toMatch(word);
}

const car = (o: any) => o.train.vehicles[1].vehicle;

describe('broken input', () => {
  it('the unbroken file is read', () =>
    expect(
      heedway(
        'bundle',
        written(() => undefined, indented),
      ).status,
    ).toBe(0));
  it('mixed gauges in a train', () =>
    refuses(
      broken((o) => void (car(o).gauge = '5 in')),
      /one gauge in a train/,
    ));
  it('zero vehicles', () =>
    refuses(
      broken((o) => void (o.train.vehicles = [])),
      /vehicles: found an empty list/,
    ));
  it('negative mass', () =>
    refuses(
      broken((o) => void (car(o).tare = '-3 kg')),
      /tare/,
      /from 2 kg to 100000 kg/,
    ));
  it('a line with one point', () =>
    refuses(
      broken((o) => void (o.line.profile = [{ at: '0 ft', height: '0 ft' }])),
      /profile/,
      /at least 2/,
    ));
  it('repeated chainage', () =>
    refuses(
      broken((o) => void (o.line.profile[2].at = '200 ft')),
      /profile\[2\]\.at/,
      /the point before/,
    ));
  it('a grade of 40 %', () =>
    refuses(
      broken((o) => void (o.line.profile[2].height = '300 ft')),
      /grade of \d+ %/,
      /check heights and units/,
    ));
  it('the wrong kind of unit', () =>
    refuses(
      broken((o) => void (o.plannedSpeed = '7 psi')),
      /plannedSpeed/,
      /a speed such as 7 mph/,
      /psi/,
    ));
  it('a comma decimal', () =>
    refuses(
      broken((o) => void (car(o).length = '6,5 ft')),
      /length/,
      /with a point/,
    ));
  it('an unknown field, with the field that was meant', () =>
    refuses(
      broken((o) => void (car(o).lenght = '6 ft')),
      /lenght/,
      /perhaps "length"/,
    ));
  it('a newer version', () =>
    refuses(
      broken((o) => void (o.version = 99)),
      /version/,
      /newer Heedway/,
    ));
  it('a rider on a seat that is taken', () =>
    refuses(
      broken(
        (o) => void ((o.riders[2].seat = o.riders[1].seat), (o.riders[2].vehicle = o.riders[1].vehicle)),
      ),
      /taken already/,
    ));
  it('a brake on an axle group that is not there', () =>
    refuses(
      broken((o) => void (car(o).brakes[0].on = ['middle truck'])),
      /an axle group/,
    ));
  it('a loop that does not close', () =>
    refuses(
      broken((o) => void (o.line.profile[7].height = '9 ft')),
      /above its start/,
    ));
  it('several faults at once, each named', () =>
    refuses(
      broken((o) => void ((o.plannedSpeed = '7 psi'), (car(o).tare = 'heavy'), (o.line.gauge = 'wide'))),
      /plannedSpeed/,
      /tare/,
      /gauge/,
    ));
  it('NaN in the JSON', () =>
    refuses(
      broken(
        (o) => o,
        (json) => JSON.stringify(json).replace('"forward"', 'NaN'),
      ),
      /NaN/,
      /:1:\d+/,
    ));
  it('text that is not JSON', () =>
    refuses(
      broken(
        (o) => o,
        () => 'hello',
      ),
      /expected/,
    ));
  it('a file of 50 MB', () =>
    refuses(
      broken(
        (o) => o,
        () => ' '.repeat(50 * 1024 * 1024),
      ),
      /50\.0 MB/,
      /at most/,
    ));
  it('a circle of references', () => {
    const folder = mkdtempSync(join(tmpdir(), 'circle-'));
    const outing = {
      ...example('battery-vacuum.json'),
      line: example('lines/larkfield-hollow.json'),
      host: example('hosts/larkfield-hollow.json'),
      train: { file: 'train.json' },
    };
    writeFileSync(join(folder, 'outing.json'), JSON.stringify(outing));
    writeFileSync(
      join(folder, 'train.json'),
      JSON.stringify({
        heedway: 'train',
        version: 1,
        name: 'x',
        vehicles: [{ vehicle: { file: 'train.json' } }],
      }),
    );
    refuses(heedway('check', join(folder, 'outing.json')), /a circle/, /train\.json → /);
  });
  it('a reference that leaves the folder tree', () =>
    refuses(
      broken((o) => void (o.line = { file: '/etc/passwd' })),
      /within the folder/,
    ));
  it('a file that is not there', () => refuses(heedway('check', 'nowhere.json'), /no such file/));
  it('a folder', () => refuses(heedway('check', 'examples'), /a folder/));
  it('a place off the line', () =>
    refuses(
      heedway('stop', 'examples/heavy-air.json', '--at', '9000 ft', '--speed', '5 mph'),
      /--at/,
      /2870 ft/,
    ));
  it('an unknown sum', () => refuses(heedway('sum', 'nothing'), /expected one of/));
});

describe('odd but good input', () => {
  const read = (write: Write): string =>
    heedway(
      'bundle',
      written((o) => o, write),
    ).stdout;
  const same = read(indented);
  it('CRLF line ends', () => expect(read((j) => `${indented(j)}`.replace(/\n/g, '\r\n'))).toBe(same));
  it('a byte order mark', () => expect(read((j) => `\uFEFF${JSON.stringify(j)}`)).toBe(same));
  it('UTF-16', () => expect(read((j) => Buffer.from(`\uFEFF${JSON.stringify(j)}`, 'utf16le'))).toBe(same));

  const answered = async (change: (outing: any) => unknown): Promise<Answer> =>
    answerOnly(await openOutingFile(written(change, indented)));
  it('a rider heavier than the car is rated for holds the train, and is no file fault', async () => {
    const heavy = (o: any): void => void ((o.riders[1].weight = '650 lb'), delete o.riders[1].typical);
    const { verdict, findings } = await answered(heavy);
    expect(verdict).toBe('hold');
    expect(findings.map((f) => f.code)).toContain('car-overloaded');
  });
  it('a curve tighter than the car is long holds the train', async () => {
    const { verdict, findings } = await answered((o) => void (o.line.curves[2].radius = '5 ft'));
    expect(verdict).toBe('hold');
    expect(findings.map((f) => f.code)).toContain('curve-too-tight');
  });
});
