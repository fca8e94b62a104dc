/** After a change only what it touches is asked again, and the answer is as if all had been. */
import { expect, it } from 'vitest';
import { remediesOf } from '../../engine/answer/families.ts';
import { questions } from '../../engine/answer/questions.ts';
import { bundled } from '../support/bundled.ts';
import { runs } from '../support/tier.ts';

it('what stands after a change is what it would say asked anew', async () => {
  const { askedAnew } = await bundled<typeof import('../support/asked-anew.ts')>('asked-anew.ts');
  let stood = 0;
  for (let seed = 1; seed <= runs(3, 200); seed++) {
    const { differ, stood: some } = askedAnew(seed);
    expect(differ).toEqual([]);
    stood += some;
  }
  expect(stood).toBeGreaterThan(runs(3, 200) * 12);
});

it('a question knows changes for findings of its own alone', () => {
  for (const [id, remedies] of Object.entries(remediesOf)) {
    const findings = questions.find((q) => q.id === id)?.findings ?? {};
    expect(Object.keys(remedies).filter((code) => !(code in findings))).toEqual([]);
  }
});
