/**
 * The identity of what was asked: its canonical text. Two outings have one identity only if every figure and name in
 * them is the same, so that an answer can be held against the outing that it was reckoned for. The text itself and
 * no hash of it: nothing is saved by one, and two different outings can never fall together.
 */

/** One text for one value: keys sorted, what is not given left out, every number told apart. */
export function identityOf(value: unknown): string {
  if (ArrayBuffer.isView(value)) return identityOf(Array.from(value as unknown as ArrayLike<unknown>));
  if (Array.isArray(value)) return `[${value.map(identityOf).join(',')}]`;
  // Numbers as such: JSON would take Infinity for null.
  if (typeof value !== 'object' || value === null)
    return typeof value === 'number' ? `${value}` : (JSON.stringify(value) ?? '');
  const given = Object.entries(value).filter(([, part]) => part !== undefined);
  given.sort(([a], [b]) => (a < b ? -1 : 1));
  return `{${given.map(([key, part]) => `${JSON.stringify(key)}:${identityOf(part)}`).join(',')}}`;
}
