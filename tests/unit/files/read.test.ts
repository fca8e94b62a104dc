/** Reading files: migrations, references, bundles and byte-stable writing. */
import { readFile } from 'node:fs/promises';
import { describe, expect, it } from 'vitest';
import {
  bundleOuting,
  type Load,
  readLine,
  readOuting,
  readVehicle,
  resolvePath,
  writeFile,
} from '../../../papers/index.ts';

const examples = new URL('../../../examples/', import.meta.url).pathname;
const load: Load = async (path) => readFile(path).catch(() => undefined);
const entry = async (name: string) => ({ path: examples + name, content: await readFile(examples + name) });

describe('migrations', () => {
  it('a line of version 0, whose profile was called points, is read', async () => {
    const json = JSON.parse(await readFile(`${examples}lines/larkfield-hollow.json`, 'utf8'));
    const { profile, ...rest } = json;
    const now = await readLine({ path: 'l', content: JSON.stringify(json) });
    const old = await readLine({
      path: 'l',
      content: JSON.stringify({ ...rest, version: 0, points: profile }),
    });
    expect(old).toEqual(now);
    expect(old.ok).toBe(true);
  });

  it('a vehicle of version 0, whose tare was called weight, is read', async () => {
    const json = JSON.parse(await readFile(`${examples}vehicles/light-car.json`, 'utf8'));
    const { tare, ...rest } = json;
    const old = await readVehicle({
      path: 'v',
      content: JSON.stringify({ ...rest, version: 0, weight: tare }),
    });
    expect(old.ok && old.value.tare.value).toBeCloseTo(150 * 0.45359237, 9);
  });
});

describe('bundles', () => {
  it.each(['steam-light', 'battery-vacuum', 'heavy-air', 'too-long-wet', 'brake-not-measured', 'visit-fits'])(
    '%s reads alike from one file',
    async (name) => {
      const whole = await readOuting(await entry(`${name}.json`), load);
      const bundle = await bundleOuting(await entry(`${name}.json`), load);
      expect(whole.ok && bundle.ok).toBe(true);
      if (!whole.ok || !bundle.ok) return;
      const text = writeFile(bundle.value);
      const again = await readOuting({ path: 'bundle.json', content: text }, async () => undefined);
      expect(again.ok && again.value).toEqual(whole.value);
      expect(writeFile(JSON.parse(text))).toBe(text);
    },
  );
});

describe('references', () => {
  it('resolve from the file that makes them and never climb out or start at the top', () => {
    const first = '/club/outings/may.json';
    const at = (from: string, reference: string) => resolvePath(from, reference, first);
    expect(at(first, 'lines/home.json')).toBe('/club/outings/lines/home.json');
    expect(at('/club/outings/trains/a.json', '../cars/b.json')).toBe('/club/outings/cars/b.json');
    expect(at(first, '../hosts/h.json')).toBeUndefined();
    expect(at('/club/outings/trains/a.json', '../../hosts/h.json')).toBeUndefined();
    expect(at(first, '../outings/h.json')).toBeUndefined();
    for (const stray of ['/etc/passwd', '\\\\share\\x', 'C:\\x', 'http://x/y', 'a\\..\\..\\b'])
      expect(at(first, stray), stray).toBeUndefined();
    expect(resolvePath('./a.json', 'b/c.json', './a.json')).toBe('b/c.json');
  });
});
