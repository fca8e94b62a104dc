/**
 * A phone as a level: which way it feels its weight, against the way it felt it where that was set level. Laid down a
 * second time turned half round, the floor's own slope falls out. Pure.
 */

/** Gravity in the phone's own axes, of any length. */
export type Felt = readonly [x: number, y: number, z: number];

const RIGHT_ANGLE = Math.PI / 2;
/** Spread of one look at it, rad: more, and it was not held still. */
const STILL = 0.01;

const unit = ([x, y, z]: Felt): Felt => {
  const size = Math.hypot(x, y, z);
  return [x / size, y / size, z / size];
};

const sum = (a: Felt, b: Felt): Felt => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];

/** Between two directions, rad; well told for small ones too. */
export function angleBetween(a: Felt, b: Felt): number {
  const cross = Math.hypot(a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]);
  return Math.atan2(cross, a[0] * b[0] + a[1] * b[1] + a[2] * b[2]);
}

/** Mean of some looks; undefined: none, or it was not held still. */
export function steady(looks: readonly Felt[]): Felt | undefined {
  if (looks.length === 0) return undefined;
  const mean = unit(looks.map(unit).reduce(sum));
  return looks.every((look) => angleBetween(look, mean) < STILL) ? mean : undefined;
}

/**
 * Where it is level: as it lay once, or, of it laid on the same spot both ways round, the middle: what the floor falls
 * one way in the phone's axes it falls the other way in them when the phone is turned.
 */
export const levelOf = (once: Felt, turned?: Felt): Felt =>
  unit(turned ? sum(unit(once), unit(turned)) : once);

/** rad; undefined: upside down, or laid on its edge. */
export function tiltFrom(level: Felt, now: Felt): number | undefined {
  const angle = angleBetween(level, now);
  return angle < RIGHT_ANGLE ? angle : undefined;
}
