/** Each brake kind has its page and its drawing, and the drawings are what the script draws. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { brakeDrawing, drawnKinds } from '../../scripts/brake-drawings.ts';

const read = (name: string): string =>
  readFileSync(new URL(`../../docs/brakes/${name}`, import.meta.url), 'utf8');

describe.each(drawnKinds)('%s', (kind) => {
  it('drawing is up to date', () => {
    expect(read(`${kind}.svg`)).toBe(brakeDrawing(kind));
  });

  it('page shows it, and says what happens on parting and what to measure', () => {
    const page = read(`${kind}.md`);
    expect(page).toContain(`(${kind}.svg)`);
    for (const heading of [
      'What Heedway reckons',
      'When the train parts or the engine fails',
      'Measure it on your own train',
      'Cautions',
    ]) {
      expect(page).toContain(`## ${heading}`);
    }
    expect(read('README.md')).toContain(`(${kind}.md)`);
  });
});

it('draws all eight kinds', () => expect(drawnKinds).toHaveLength(8));
