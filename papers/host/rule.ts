/** A rule of a host: what it says, and where it is written. */
import type * as z from 'zod/mini';
import { group, may, must, text } from '../describe.ts';

export const rule = <T extends z.ZodMiniType>(
  value: T,
  label: string,
  help: string,
  more?: Parameters<typeof may>[3],
) =>
  may(
    group({
      value: must(value, 'value', 'What the rule says.'),
      source: must(text(), 'source', 'Where it is written: book and number.'),
    }),
    label,
    help,
    more,
  );
