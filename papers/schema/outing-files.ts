/** The schemas of the files that an outing is made of: what is read before there is an answer, and nothing else. */
import { hostSchema } from '../host/fields.ts';
import { lineSchema } from '../line/fields.ts';
import { outingSchema } from '../outing/fields.ts';
import { trainSchema } from '../train/fields.ts';
import { vehicleSchema } from '../vehicle/fields.ts';

export const outingFiles = {
  line: lineSchema,
  vehicle: vehicleSchema,
  train: trainSchema,
  host: hostSchema,
  outing: outingSchema,
} as const;
export type OutingPart = keyof typeof outingFiles;

/** Newest version of every kind of file. */
export const VERSION = 1;
