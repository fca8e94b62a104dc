/** What people write, to SI and back. */
export { accepted, type Parsed, parseQuantity, type UnitProblem, unitsOf } from './parse.ts';
export { type PrintOptions, printQuantity, roundToward, type System, type Toward } from './print.ts';
