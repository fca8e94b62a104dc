/** What stands where the word would, while the outing on the screen has none. */
import { asked, fault, problems } from '../state/session.ts';

export const RECKONING = 'reckoning …';

export function noWord(): string {
  const [first] = problems.value;
  if (first) return `cannot be read${first.path === '' ? '' : `: ${fieldWords(first.path)}`}`;
  if (fault.value !== '' && asked.value) return 'no answer';
  return RECKONING;
}

/** `train.vehicles[2].vehicle.centreHeight` → "the field centre height of train, vehicles 3, vehicle" */
export function fieldWords(path: string): string {
  const parts = path
    .replace(/\[(\d+)\]/g, (_, index) => ` ${Number(index) + 1}`)
    .replace(/([a-z])([A-Z])/g, (_, low, high) => `${low} ${high.toLowerCase()}`)
    .split('.');
  const field = parts.pop();
  return `the field ${field}${parts.length > 0 ? ` of ${parts.join(', ')}` : ''}`;
}
