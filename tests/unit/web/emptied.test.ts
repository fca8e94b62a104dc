/** Fields are emptied once they are recorded, but for what was typed in the meantime. */
import { signal } from '@preact/signals';
import { expect, it } from 'vitest';
import { emptied } from '../../../web/parts/emptied.ts';

it('what is typed while it is being recorded stays', () => {
  const [what, who] = [signal('grit the steps'), signal('A. Larch')];
  const empty = emptied([what, who]);
  what.value = 'paint the edge';
  empty();
  expect([what.value, who.value]).toEqual(['paint the edge', '']);
});
