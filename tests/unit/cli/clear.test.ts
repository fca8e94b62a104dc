/** heedway clear on the example whose structures are measured, and on files that cannot be so. */
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { heedway, heedwayOnce } from '../../support/cli.ts';

const folder = mkdtempSync(join(tmpdir(), 'heedway-clear-'));
const example = 'examples/visit-fits.json';

it('names what it strikes and what must be left clear, in words and as figures', () => {
  const { stdout, status } = heedwayOnce('clear', example);
  expect(status).toBe(20);
  expect(stdout).toMatch(
    /Lamp post +left +9\/16 in short +15\/16 in short +215 ft +12-1\/4 in +12-13\/16 in +Gauged car 1/,
  );
  expect(stdout).toMatch(/Weir bridge +over .* 333 ft +4 ft 9 in/);
  expect(stdout).toMatch(/180 ft to 260 ft +50 ft +left/);
  const json = JSON.parse(heedwayOnce('clear', example, '--json').stdout);
  const lamp = json.nearest.find((p: { structure: string }) => p.structure === 'Lamp post');
  // By hand: half of 24 in; 3.9 ft of trucks in a 50 ft curve 0.4575 in; 1/8 in of cant on 7-3/4 in at 19 in 0.3065 in; play 0.03 in each side.
  expect(lamp.body.likely.takes / 0.0254).toBeCloseTo(12 + 0.4575 + 0.3065 + 0.03, 1);
});

it('draws it into a file', () => {
  const file = join(folder, 'swept.svg');
  expect(heedway('clear', example, '--svg', file).stdout).toContain(`Drawn into ${file}`);
  expect(readFileSync(file, 'utf8')).toMatch(/^<\?xml[\s\S]*How far the train reaches beside the track/);
});

it('stands the train at a place, draws it there, and says where it cannot stand', () => {
  const file = join(folder, 'stood.svg');
  const { stdout } = heedway('clear', example, '--at', '230 ft', '--stood', file);
  // By hand, 50 ft of radius: 3.9 ft of trucks give 0.456 in inward, to the left; 1.975 ft beyond them 0.70 in and more outward.
  expect(stdout).toMatch(/Gauged car 1 +13\/16 in right +1\/2 in left +13\/16 in right/);
  expect(readFileSync(file, 'utf8')).toMatch(/The train with its front at 230 ft[\s\S]*Lamp post: strikes/);
  const json = JSON.parse(heedway('clear', example, '--at', '230 ft', '--json').stdout);
  expect(json.stood.vehicles[1].middle / 0.0254).toBeCloseTo(0.456, 2);
  const far = heedway('clear', example, '--at', '5 ft');
  expect(far.stderr).toMatch(/--at: found 5 ft; expected 26 ft to 800 ft, with the whole train on the line/);
  expect(heedway('clear', example, '--stood', file).stderr).toContain('expected --at with it');
});

it('writes a sheet to peg it out by', () => {
  const file = join(folder, 'places.csv');
  expect(heedway('clear', example, '--places', file).stdout).toContain(`written into ${file}`);
  expect(readFileSync(file, 'utf8')).toMatch(/^"at, ft","left, in","of","right, in","of"\r\n0,12\.\d+,/);
});

it('draws the section to be left clear by the ending of the file’s name, and says which it knows', () => {
  const made = (name: string): string => {
    const file = join(folder, name);
    expect(heedway('clear', example, '--template', file).stdout).toContain(`drawn into ${file}`);
    return readFileSync(file, 'latin1');
  };
  expect(made('left-clear.dxf')).toMatch(/^0\nSECTION[\s\S]*\nEOF\n$/);
  expect(made('left-clear.PDF')).toMatch(/^%PDF-/);
  const { stderr, status } = heedway('clear', example, '--template', join(folder, 'left-clear.txt'));
  expect(status).toBeGreaterThan(1);
  expect(stderr).toMatch(/found no kind of drawing; expected a name that ends in \.pdf, \.dxf or \.svg/);
});

it('prints worksheets, and draws wheels and sections, of the same outing', () => {
  const at = (name: string): string => join(folder, name);
  const { stdout } = heedway(
    ...['fit', example, '--worksheets', at('w.pdf'), '--wheels', at('w.svg'), '--svg', at('s.svg')],
  );
  expect(stdout).toContain('Worksheets of 4 vehicles written into');
  expect(readFileSync(at('w.pdf'), 'latin1')).toMatch(/^%PDF-/);
  expect(readFileSync(at('w.svg'), 'utf8')).toContain('Wheels as measured');
  expect(readFileSync(at('s.svg'), 'utf8')).toContain('Within the host’s profile');
});

it.each([
  [
    'inside the rail',
    { distance: '3 in' },
    /structures\[0\]\.distance: found 76\.2 mm \(3 in\); expected more than 92\.08 mm \(3\.625 in\), half the gauge/,
  ],
  ['nowhere', {}, /structures\[0\]\.distance: found neither distance nor headroom/],
  [
    'upside down',
    { distance: '20 in', bottom: '2 ft', top: '1 ft' },
    /structures\[0\]\.top: found 304\.8 mm \(12 in\); expected more than 609\.6 mm \(24 in\)/,
  ],
  [
    'beyond the line',
    { distance: '20 in', at: '900 ft' },
    /structures\[0\]\.at: found 274\.32 m; expected at most 243\.84 m/,
  ],
])('refuses a structure %s, and says what is expected', (_, structure, said) => {
  const line = JSON.parse(readFileSync('examples/lines/tanyard.json', 'utf8'));
  const outing = JSON.parse(readFileSync(example, 'utf8'));
  const inline = (at: string) => JSON.parse(readFileSync(`examples/${at}`, 'utf8'));
  const train = inline('trains/sorrel-gauged.json');
  const vehicles = train.vehicles.map((m: { vehicle: { file: string } }) => ({
    ...m,
    vehicle: inline(m.vehicle.file.replace('../', '')),
  }));
  const file = join(folder, 'bad.json');
  writeFileSync(
    file,
    JSON.stringify({
      ...outing,
      line: { ...line, structures: [{ name: 'Post', at: '215 ft', ...structure }] },
      train: { ...train, vehicles },
      host: inline('hosts/tanyard.json'),
    }),
  );
  const { stderr, status } = heedway('clear', file);
  expect(status).toBe(2);
  expect(stderr).toMatch(said);
});
