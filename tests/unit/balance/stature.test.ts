/** A child sits lower than a grown person on the same seat: its weight lies lower, in every bound. */
import { expect, it } from 'vitest';
import { exact } from '../../../engine/base/quantity.ts';
import { riderCentre } from '../../../engine/questions/balance/body.ts';
import { rider } from '../../support/rules.ts';

it('lowers the centre of a child, and of no adult', () => {
  const adult = exact(0.25);
  const of = (ageGroup: 'adult' | 'child') => riderCentre(rider('a', '1', { ageGroup }), adult);
  const child = of('child');
  for (const bound of ['low', 'value', 'high'] as const) expect(child[bound]).toBeLessThan(adult[bound]);
  expect(of('adult').value).toBeCloseTo(adult.value, 12);
});
