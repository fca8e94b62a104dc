/** Records that are being written: from a file they come beside those of this device, which stay. */
import { expect, it, vi } from 'vitest';

const stored = new Map<string, string>();
vi.stubGlobal('localStorage', {
  getItem: (key: string) => stored.get(key) ?? null,
  setItem: (key: string, value: string) => stored.set(key, value),
  removeItem: (key: string) => stored.delete(key),
});
const { allDrafts, draftHere, put, takeDrafts } = await import('../../../web/parts/drafts.ts');

it('those of a file are taken, and never in place of one that is written here', () => {
  put('tilt', { record: { name: 'mine, half written' } });
  takeDrafts({
    tilt: { record: { name: 'theirs' } },
    'coast-down': { record: { name: 'their coast' }, vehicle: 'car-1' },
  });
  expect(draftHere('tilt')?.record['name']).toBe('mine, half written');
  expect(draftHere('coast-down')).toEqual({ record: { name: 'their coast' }, vehicle: 'car-1' });
  // Kept on the device at once.
  expect(JSON.parse(stored.get('heedway-measuring') ?? '{}')).toEqual(allDrafts());
  put('tilt', undefined);
  expect(Object.keys(allDrafts())).toEqual(['coast-down']);
});
