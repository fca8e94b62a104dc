/** What stands beside the speed of a zone. */
import { expect, it } from 'vitest';
import { type DrivenRow, tellZone } from '../../../desk/driven.ts';

const row = {
  zone: { cautiousStop: 20 },
  from: '10 ft',
  to: '90 ft',
  begins: 'at 10 ft',
  ends: 'at 90 ft',
  posts: '100 ft in 16 s',
  cautiousStop: '67 ft',
} as DrivenRow;

it('the seconds from post to post and the stop, by landmarks where there are any', () => {
  expect(tellZone(row)).toBe('no faster than 100 ft in 16 s · cautious stop 67 ft');
  expect(tellZone({ ...row, begins: 'at Mill Lane' })).toBe(
    'from Mill Lane to 90 ft · no faster than 100 ft in 16 s · cautious stop 67 ft',
  );
});

it('where the brake does not hold the fall there are no seconds to keep to', () => {
  const zone = { ...row.zone, cautiousStop: Infinity };
  expect(tellZone({ ...row, zone, posts: '', cautiousStop: 'does not stop' })).toBe('does not stop');
});
