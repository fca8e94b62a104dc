/** The worked example of a sum, as texts by symbol. */
import { sumWords } from '../../../words/sums.ts';

export function example(id: string): Record<string, string> {
  return Object.fromEntries(
    sumWords[id].example.split(' ').map((part) => {
      const cut = part.indexOf('=');
      return [
        part.slice(0, cut),
        part
          .slice(cut + 1)
          .replace(/_/g, ' ')
          .replace(/^([+-]?[\d.]+)(?=[a-z%])/i, '$1 '),
      ];
    }),
  );
}
