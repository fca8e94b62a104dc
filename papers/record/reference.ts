/** What a record names by its hash alone: another record, or a person whose name stands apart. */
import * as z from 'zod/mini';

export const hash = () => z.string().check(z.regex(/^[0-9a-f]{64}$/, 'a hash of 64 hexadecimal digits'));

/** A person in a record is a salted hash; the name stands apart, and may be struck out. */
export const person = () => hash();
