/** The commands on the examples: exit codes, stable JSON, both systems of units. */
import { mkdtempSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import jsqr from 'jsqr';
import { encode } from 'uqr';
import { describe, expect, it } from 'vitest';
import { outingIn } from '../../../desk/outing-code.ts';
import { heedway, heedwayAlone, heedwayOnce } from '../../support/cli.ts';
import { runs } from '../../support/tier.ts';

const folder = mkdtempSync(join(tmpdir(), 'heedway-'));

const exits = [
  ['steam-light', 10],
  ['brake-not-measured', 30],
  ['visit-fits', 20],
  ['too-long-wet', 20],
  ['battery-vacuum', 10],
  ['heavy-air', 10],
] as const;

describe('exit codes', () => {
  it.each(exits)('%s → %i', (name, exit) => {
    expect(heedwayOnce('check', `examples/${name}.json`).status).toBe(exit);
  });

  it.each(exits.slice(0, runs(3, exits.length)))(
    '%s → %i as JSON, with its word and reasons',
    (name, exit) => {
      const ran = heedwayOnce('check', `examples/${name}.json`, '--json');
      expect(ran.status).toBe(exit);
      const answer = JSON.parse(ran.stdout);
      expect(answer.answer).toBe({ 10: 'go within limits', 20: 'hold', 30: 'cannot tell' }[exit]);
      for (const finding of answer.findings) {
        expect(finding.words.what.length).toBeGreaterThan(5);
        expect(finding.source.length).toBeGreaterThan(2);
        for (const remedy of finding.remedies) expect(remedy.clears).toBe(true);
      }
    },
  );

  it('the same outing gives the same answer, byte for byte', () => {
    const command = ['check', 'examples/steam-light.json', '--json'];
    expect(heedwayAlone(...command)).toEqual(heedwayOnce(...command));
  });
});

describe('check', () => {
  it.each(exits)('%s fits one terminal screen', (name) => {
    const { stdout } = heedwayOnce('check', `examples/${name}.json`);
    const lines = stdout.trimEnd().split('\n');
    expect(lines.length).toBeLessThanOrEqual(23);
    for (const line of lines) expect(line.length, line).toBeLessThanOrEqual(80);
    expect(lines[0]).toMatch(/: (GO|GO WITHIN LIMITS|HOLD|CANNOT TELL)$/);
    expect(stdout).toMatch(/^Cars on (dry|wet) rail: /m);
  });

  it('opens its reasons with --why, and the rest with --all', () => {
    const [plain, why, all] = [[], ['--no-remedies', '--why'], ['--no-remedies', '--all']].map(
      (options) => heedwayOnce('check', 'examples/heavy-air.json', ...options).stdout,
    );
    expect(plain).not.toMatch(/Margin|Sum /);
    expect(why).toMatch(/Margin -\d+ %/);
    expect(why).toMatch(/and \d+ more that weigh less/);
    expect(all).toMatch(/^greasy /m);
    expect(all).not.toMatch(/Worst of|weigh less/);
  });
});

describe('the sum behind a finding', () => {
  it('shows equation, numbers put in and result', () => {
    const { stdout } = heedwayOnce('check', 'examples/heavy-air.json', '--no-remedies', '--why');
    // What the engine's wheels hold under its own brake on a bad day: 0.15 × 1522.43 lbf = 228.36 lbf.
    expect(stdout).toContain(
      [
        '     Sum adhesion-limit: What can the wheels hold or pull before they slip?',
        '       F = µ·N',
        '       adhesion µ = 0.15, load N = 1522.43 lbf',
        '       → force F = 228.36 lbf',
        '       Source: definition of adhesion.',
      ].join('\n'),
    );
  });

  it('says where the finding is reckoned along the line and the sum on an even grade, in the units asked for', () => {
    const { stdout } = heedway(
      'check',
      'examples/brake-not-measured.json',
      '--no-remedies',
      '--why',
      '--units',
      'metric',
    );
    expect(stdout).toMatch(
      /Sum stopping-distance: .*\n +Reckoned along the line.*\n +s = .*\n +speed v = [\d.]+ km\/h, .*grade i = -[\d.]+ %.*\n +→ distance s = [\d.]+ m/,
    );
  });
});

describe('sum', () => {
  it('prints the documented shape', () => {
    const json = JSON.parse(
      heedway(
        'sum',
        'tractive-effort',
        'pressure=250psi',
        'bore=18.5in',
        'stroke=26in',
        'wheel=80in',
        'cylinders=3',
        '--json',
      ).stdout,
    );
    expect(Object.keys(json)).toEqual(['id', 'inputs', 'results', 'range', 'source']);
    expect(json.results[0].symbol).toBe('force');
    expect(json.results[0].value).toBeCloseTo(35455, -1);
    expect(json.results[0].unit).toBe('lbf');
  });

  it('lists every sum with symbols, units and ranges', () => {
    const list = JSON.parse(heedway('sum', '--list', '--json').stdout);
    expect(list.length).toBeGreaterThan(45);
    for (const sum of list)
      expect(sum.inputs.every((i: { unit: string; range: string }) => i.unit && i.range)).toBe(true);
  });

  it('refuses what is out of range, naming the symbol', () => {
    const ran = heedwayAlone('sum', 'stopping-distance', 'speed=7mph', 'deceleration=0.1m/s²', 'grade=-2.6%');
    expect(ran.status).toBe(2);
    expect(ran.stderr).toMatch(/deceleration.*does not hold/);
  });
});

describe('stop', () => {
  it('the cautious figure is never below the likely one nor the sampled bound', () => {
    const json = JSON.parse(
      heedway('stop', 'examples/heavy-air.json', '--at', '1600 ft', '--speed', '6 mph', '--json').stdout,
    );
    expect(json.cautious.distance).toBeGreaterThanOrEqual(json.likely.distance);
    expect(json.cautious.distance).toBeGreaterThanOrEqual(json.sampled.p99);
    expect(json.sampled.n).toBe(10_000);
  });
});

describe('speeds', () => {
  it('writes CSV and a strip', () => {
    const svg = join(folder, 'strip.svg');
    const ran = heedway('speeds', 'examples/steam-light.json', '--csv', '--svg', svg);
    expect(ran.status).toBe(0);
    expect(ran.stdout.split('\n')[0]).toBe(
      'at (ft),limit (mph),likely stop (ft),cautious stop (ft),gap (ft),reason,what',
    );
    expect(readFileSync(svg, 'utf8')).toMatch(/^<\?xml[\s\S]*<svg[\s\S]*Larkfield[\s\S]*<\/svg>/);
  });
});

describe('card', () => {
  it('is at most two sides of paper, and its code opens to the same outing', async () => {
    const pdf = join(folder, 'card.pdf');
    const ran = heedway('card', 'examples/heavy-air.json', '--pdf', pdf, '--json');
    expect(ran.status).toBe(10);
    const text = readFileSync(pdf, 'latin1');
    expect(text.startsWith('%PDF')).toBe(true);
    const sides = text.match(/\/Type \/Page\b/g)?.length ?? 0;
    expect(sides).toBeGreaterThan(0);
    expect(sides).toBeLessThanOrEqual(2);
    const { code } = JSON.parse(ran.stdout);
    const qr = encode(code, { ecc: 'L', border: 4 });
    const scale = 3;
    const size = qr.size * scale;
    const pixels = new Uint8ClampedArray(size * size * 4);
    for (let y = 0; y < size; y++) {
      for (let x = 0; x < size; x++) {
        pixels.fill(
          qr.data[Math.floor(y / scale)][Math.floor(x / scale)] ? 0 : 255,
          (y * size + x) * 4,
          (y * size + x) * 4 + 3,
        );
        pixels[(y * size + x) * 4 + 3] = 255;
      }
    }
    const read = ((jsqr as unknown as { default?: typeof jsqr }).default ?? jsqr)(pixels, size, size);
    expect(read?.data).toBe(code);
    const opened = await outingIn(code);
    const bundle = 'fault' in opened ? opened.fault : JSON.parse(Buffer.from(opened).toString());
    expect(bundle).toEqual(JSON.parse(heedway('bundle', 'examples/heavy-air.json').stdout));
  });
});

describe('survey', () => {
  it.each(['csv', 'gpx'])('%s becomes a line file that reads back', (kind) => {
    const out = join(folder, `${kind}.json`);
    expect(heedway('survey', `examples/surveys/branch.${kind}`, '--out', out).status).toBe(0);
    expect(JSON.parse(readFileSync(out, 'utf8')).heedway).toBe('line');
  });
});

describe('help', () => {
  it('tells every command', () => {
    const { stdout } = heedwayAlone('--help');
    for (const name of ['check', 'stop', 'cars', 'speeds', 'card', 'survey', 'sum', 'bundle', 'brakes'])
      expect(stdout).toContain(name);
  });
});
