/** What some replies make of others. */
import { brakeKinds, isThrough as isThroughKind } from '../../engine/things/brake/kinds/index.ts';
import type { Replies } from './field.ts';

export const hasCars = (r: Replies): boolean => r['cars.count'] !== '0';
export const throughBrakes = brakeKinds.filter(isThroughKind).map((kind) => kind.replace('-', ' '));
/** A brake that runs through the train and that the engine must be able to work. */
export const isThrough = (brake: string | undefined): boolean => throughBrakes.includes(brake ?? '');
export const isSteam = (r: Replies): boolean => r['engine.kind'] === 'steam';
/** Of a brake that is put on and left. */
export const staysOn = (holds: string | undefined): boolean =>
  holds === 'by a lever' || holds === 'by a screw';
/** Cylinders, wheels and pressure, all of them: as good as a pull. */
export const steamKeys = [
  'engine.cylinders',
  'engine.bore',
  'engine.stroke',
  'engine.wheel',
  'engine.pressure',
] as const;
export const pullIsKnown = (r: Replies): boolean =>
  r['engine.pull'] !== undefined ||
  r['engine.power'] !== undefined ||
  steamKeys.every((key) => r[key] !== undefined);
