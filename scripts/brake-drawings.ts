/**
 * Draws the brake kinds for their pages: `docs/brakes/<kind>.svg`. Plain schematics on paper: air lines thick,
 * mechanical parts thin, every part named. Run with `npx tsx scripts/brake-drawings.ts`; a test holds the
 * drawings to this script.
 */
import { writeFileSync } from 'node:fs';
import type { BrakeKind } from '../engine/things/brake/kinds/index.ts';
import { drawings, titles } from './brake-drawings/kinds.ts';
import { HEIGHT, INK, PAPER, text, WIDTH } from './brake-drawings/pen.ts';

export function brakeDrawing(kind: BrakeKind): string {
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${WIDTH} ${HEIGHT}" role="img" aria-label="${titles[kind]}" font-family="sans-serif" fill="${INK}">
<rect width="${WIDTH}" height="${HEIGHT}" fill="${PAPER}"/>
${text(20, 34, titles[kind], 'start', 18)}
${drawings[kind].join('\n')}
</svg>
`;
}

export const drawnKinds = Object.keys(drawings) as BrakeKind[];

if (process.argv[1]?.endsWith('brake-drawings.ts')) {
  for (const kind of drawnKinds) {
    writeFileSync(new URL(`../docs/brakes/${kind}.svg`, import.meta.url), brakeDrawing(kind));
  }
}
