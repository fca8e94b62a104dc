/** A field that has no value is not there: `undefined` never stands for "not stated". */
export type Present<T> = {
  [K in keyof T as undefined extends T[K] ? never : K]: T[K];
} & {
  [K in keyof T as undefined extends T[K] ? K : never]?: Exclude<T[K], undefined>;
};

/** The fields that have a value. */
export function dropAbsent<T extends object>(fields: T): Present<T> {
  return Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined)) as Present<T>;
}
