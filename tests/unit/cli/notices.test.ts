/** Whoever's work goes along is named, with its licence, in all that we hand out; and it runs where we say it does. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

const { notices, shipped } = (await import('../../../scripts/notices.mjs' as string)) as {
  notices: () => string;
  shipped: () => readonly { readonly name: string; readonly version: string; readonly path: string }[];
};
const { nodeMeets } = (await import('../../../scripts/tools.mjs' as string)) as {
  nodeMeets: (version: string, range: string) => boolean;
};
const json = (path: string) => JSON.parse(readFileSync(path, 'utf8'));

describe('the notices', () => {
  const text = notices();
  const { dependencies, engines, files } = json('package.json');

  it('name every package of the lock file that is not for building alone', () => {
    const names = shipped().map((s) => s.name);
    expect(names.length).toBeGreaterThan(40);
    expect(names).toEqual(
      expect.arrayContaining([...Object.keys(dependencies), 'workbox-precaching', 'fontkit']),
    );
    for (const { name, version } of shipped()) expect(text).toContain(`\n${name} ${version}`);
  });

  it('carry the licences of the letters, and of those who only name theirs', () => {
    expect(text).toContain('SIL OPEN FONT LICENSE');
    expect(text).toContain('Bitstream Vera Fonts Copyright');
    expect(text).toMatch(/fontkit 2[\s\S]{1,40}Copyright \(c\) Devon Govett/);
    expect(text).toMatch(/Apache License\s+Version 2\.0/);
  });

  it('are built beside the page, where it works without a network too, and into the package', () => {
    expect(readFileSync('dist/notices.txt', 'utf8')).toBe(text);
    expect(readFileSync('dist/web/notices.txt', 'utf8')).toBe(text);
    expect(readFileSync('dist/web/sw.js', 'utf8')).toContain('"notices.txt"');
    expect(files).toContain('dist/notices.txt');
  });

  it.each(['20.19.0', '22.12.0', '24.0.0'])(
    'Node %s, which we say is enough, is enough for all of them',
    (version) => {
      expect(nodeMeets(version, engines.node)).toBe(true);
      const short = shipped().filter(({ path }) => {
        const range: string = json(`${path}/package.json`).engines?.node ?? '*';
        // As npm means them: any is from 0, and without a minor number it is 0.
        const bounds = range.replaceAll(' ', '').replace('*', '>=0');
        return !nodeMeets(version, bounds.replace(/(\^|>=)(\d+)(?![\d.])/g, '$1$2.0'));
      });
      expect(short.map((s) => s.name)).toEqual([]);
    },
  );
});
