/** What people write, to SI and back. */
export { accepted, parseQuantity, unitsOf } from './parse.ts';
export { printQuantity, type System, type Toward } from './print.ts';
