import {
  Body,
  ContactMaterial,
  type GSSolver,
  Material,
  Plane,
  Quaternion,
  Sphere,
  Vec3,
  World,
} from 'cannon-es';
import { describe, expect, it } from 'vitest';
import { GRAVITY } from '../../../../engine/base/constants.ts';
import { emptyRoll, noTraffic, roll } from '../../../../engine/questions/part/roll.ts';
import type { Path } from '../../../../engine/questions/part/types.ts';
import { beside } from '../../../support/measured.ts';
import { onPlane } from '../../../support/plane.ts';

const STEP = 1 / 240;
const TIME = 12;

/** Place along the plane (m, uphill positive) and speed after a time, and the farthest it went. */
function slide(angle: number, friction: number, v0: number): { way: number; speed: number; most: number } {
  // The library takes the bound of friction, µ·m·g, for an impulse each step: hence µ times the step.
  // The plane lies level; the field is tilted instead: x points uphill.
  const world = new World({ gravity: new Vec3(-GRAVITY * Math.sin(angle), 0, -GRAVITY * Math.cos(angle)) });
  (world.solver as GSSolver).iterations = 40;
  const [ground, block] = [new Material('ground'), new Material('block')];
  world.addContactMaterial(new ContactMaterial(ground, block, { friction: friction * STEP, restitution: 0 }));
  const plane = new Body({ mass: 0, material: ground, quaternion: new Quaternion() });
  plane.addShape(new Plane());
  world.addBody(plane);
  const body = new Body({ mass: 400, material: block, position: new Vec3(0, 0, 0.1), linearDamping: 0 });
  body.angularFactor.set(0, 0, 0);
  body.addShape(new Sphere(0.1));
  body.velocity.set(v0, 0, 0);
  world.addBody(body);
  let most = 0;
  for (let t = 0; t < TIME - STEP / 2; t += STEP) {
    world.step(STEP);
    most = Math.max(most, body.position.x);
  }
  return { way: body.position.x, speed: body.velocity.x, most };
}

const at = (path: Path, t: number): { way: number; speed: number } => {
  let i = 3;
  while (i < path.length - 3 && path[i] < t) i += 3;
  const share = (t - path[i - 3]) / (path[i] - path[i - 3]);
  const between = (k: number): number => path[i - 3 + k] + share * (path[i + k] - path[i - 3 + k]);
  return { way: between(1), speed: between(2) };
};

describe('a tail rolling on a plane against a block sliding in cannon-es', () => {
  const errors: number[] = [];
  it.each([
    [0.02, 0.006, 2],
    [0.03, 0.01, 3],
    [0.05, 0.008, 2.5],
    [0.06, 0.02, 4],
    [0.08, 0.012, 1.5],
  ])('grade %f, resistance %f, parted at %f m/s', (grade, rolling, v0) => {
    const { tail, basis } = onPlane(grade, rolling);
    const path: Path = [];
    const start = 1200;
    roll(tail, Math.round(start / basis.grid.step), v0, noTraffic, emptyRoll(), path);
    // Grade is rise over length of track here; friction acts on the part of the weight that presses on the plane.
    const angle = Math.asin(grade);
    const solid = slide(angle, rolling / Math.cos(angle), v0);
    const ours = at(path, TIME);
    const most = Math.max(...path.filter((_, i) => i % 3 === 1)) - start;
    for (const ratio of [
      most / solid.most,
      ours.speed / solid.speed,
      (ours.way - start - most) / (solid.way - solid.most),
    ]) {
      errors.push(Math.abs(ratio - 1));
      expect(Math.abs(ratio - 1)).toBeLessThan(0.02);
    }
  });

  beside(
    import.meta.url,
    'a tail rolling on a plane: way up, way back, speed',
    '`cannon-es`, a rigid-body engine',
    errors,
  );
});
