/** A test's record against its schema. */
import type * as z from 'zod/mini';
import { type Checked, checkAs } from '../check.ts';
import { testSchema } from './fields.ts';

export const checkTest = (json: unknown): Checked<z.output<typeof testSchema>> =>
  checkAs('test', testSchema, json);
