/** Feet, inches, pounds and miles per hour are written once (engine/base/constants.ts). */
import { readdirSync, readFileSync } from 'node:fs';
import { expect, it } from 'vitest';

const root = new URL('../../', import.meta.url).pathname;
const rooms = ['engine', 'units', 'papers', 'records', 'words', 'desk', 'views', 'cli', 'web'];
const factor = /(?<![\d.])(0\.44704|0\.0254|0\.3048|0\.45359237|4\.4482216\d*)(?!\d)/;

it('no file but that of the constants writes one of their factors', () => {
  const written = rooms.flatMap((room) =>
    readdirSync(`${root}${room}`, { recursive: true, encoding: 'utf8' })
      .filter((file) => /\.tsx?$/.test(file) && factor.test(readFileSync(`${root}${room}/${file}`, 'utf8')))
      .map((file) => `${room}/${file}`),
  );
  expect(written).toEqual(['engine/base/constants.ts']);
});
