/** The lines that a next train may run on: one's own, each once, none of an example. */
import { expect, it } from 'vitest';
import { ownLines } from '../../../desk/new/own-lines.ts';
import { examplePaper } from '../../support/papers.ts';

const own = (name: string, more = {}) => ({ line: { name }, host: { name: `Rules of ${name}` }, ...more });

it('each once by its name, as the first paper has it, with its rules', () => {
  const [first, second] = [own('Orchard'), own('Meadow')];
  expect(ownLines([first, own('Orchard', { host: { name: 'others' } }), second])).toEqual([
    { name: 'Orchard', ...first },
    { name: 'Meadow', ...second },
  ]);
});

it('none of an example, nor its rules', async () => {
  expect(ownLines([await examplePaper('heavy-air'), {}])).toEqual([]);
  const [{ name, host }] = ownLines([own('Orchard', { host: { name: 'x', invented: true } })]);
  expect([name, host]).toEqual(['Orchard', undefined]);
});
