/** The schema of each kind of file, by which it is read and written. Its fields stand in `papers/<kind>/fields.ts`. */
import { hostSchema } from '../host/fields.ts';
import { lineSchema } from '../line/fields.ts';
import { outingSchema } from '../outing/fields.ts';
import { testSchema } from '../test/fields.ts';
import { trainSchema } from '../train/fields.ts';
import { vehicleSchema } from '../vehicle/fields.ts';

export type { HostFile } from '../host/fields.ts';
export type { LineFile } from '../line/fields.ts';
export type { OutingFile } from '../outing/fields.ts';
export type { TestFile } from '../test/fields.ts';
export type { TrainFile } from '../train/fields.ts';
export type { VehicleFile } from '../vehicle/fields.ts';

export const schemas = {
  line: lineSchema,
  vehicle: vehicleSchema,
  train: trainSchema,
  host: hostSchema,
  outing: outingSchema,
  test: testSchema,
} as const;
export type FileKind = keyof typeof schemas;

/** Newest version of every kind of file. */
export const VERSION = 1;
