/** The schema of each kind of file, by which it is read and written. Its fields stand in `papers/<kind>/fields.ts`. */
import { testSchema } from '../test/fields.ts';
import { outingFiles } from './outing-files.ts';

export type { HostFile } from '../host/fields.ts';
export type { LineFile } from '../line/fields.ts';
export type { OutingFile } from '../outing/fields.ts';
export type { TestFile } from '../test/fields.ts';
export type { TrainFile } from '../train/fields.ts';
export type { VehicleFile } from '../vehicle/fields.ts';
export { VERSION } from './outing-files.ts';

export const schemas = { ...outingFiles, test: testSchema } as const;
export type FileKind = keyof typeof schemas;
