/** A train made over to a brake that comes on by itself is told as what it is: work, by the name that the trade gives it. */
import { expect, it } from 'vitest';
import { automaticKinds } from '../../../engine/things/brake/kinds/index.ts';
import { tellChange } from '../../../words/change.ts';
import { changedExample } from '../../support/changed-examples.ts';

const outing = await changedExample('battery-vacuum', () => undefined);

it.each(automaticKinds)('%s: no key of a file, and nothing for today', (brake) => {
  const told = tellChange({ kind: 'brake-kind', brake }, { system: 'imperial', wording: 'us', outing });
  expect(told).toBe(`make the train brake an ${brake.replace('-', ' ')} brake, in the workshop`);
});
