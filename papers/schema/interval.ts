/** A field that holds how long something stands, as it is written. */
import * as z from 'zod/mini';
import { EXPECTED, readInterval } from '../due/interval.ts';

export const interval = () =>
  z.string().check(
    z.maxLength(200),
    z.refine((text) => readInterval(text) !== undefined, EXPECTED),
  );
