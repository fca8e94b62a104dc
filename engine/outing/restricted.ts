/** Temporary limits and closures of the line that this outing runs on. */
import { turnedStretch } from '../things/line/geometry.ts';
import type { Outing, Restriction } from './types.ts';

/** Of another line it is no matter of this one. In the running direction; ends that were written the wrong way round count. */
export const restrictionsHere = ({ restrictions = [], line, direction }: Outing): readonly Restriction[] =>
  restrictions
    .filter(({ of }) => of === line.name)
    .map((one) => (line.loop || one.from <= one.to ? one : { ...one, from: one.to, to: one.from }))
    .map((one) => (direction === 'reverse' ? turnedStretch(line, one) : one));

/** Beyond what was measured of the line: where it is meant nobody can tell. A tape ends a foot early or late. */
export const offLine = ({ from, to }: Restriction, { length }: Outing['line']): boolean =>
  Math.min(from, to) < -MISTAPED || Math.max(from, to) > length + MISTAPED;

/** m */
const MISTAPED = 0.3;
