/**
 * The same cars tipped by a general-purpose rigid-body engine (cannon-es): a body on four feet, in the field
 * of gravity and centrifugal force that it feels in the curve, on a canted plane, with people who lean.
 */
import {
  ContactMaterial,
  type GSSolver,
  Material,
  Plane,
  Quaternion,
  Body as Solid,
  Sphere,
  Vec3,
  World,
} from 'cannon-es';
import { describe, expect, it } from 'vitest';
import { GRAVITY } from '../../engine/base/constants.ts';
import type { Sum } from '../../engine/base/sum.ts';
import { type Body, leaning } from '../../engine/questions/balance/body.ts';
import { overturnOf, speedLeaving, type Under } from '../../engine/questions/balance/tipping.ts';
import { evaluateSum, findSum } from '../../engine/sums/register.ts';
import { randomBody } from '../support/balance.ts';
import { beside } from '../support/measured.ts';
import { drawer } from '../support/random-outings.ts';
import { runs } from '../support/tier.ts';

const FOOT = 0.002;
const STEP = 1 / 240;
const WATCHED = 2.5;

/** Does the car go over when it is let go in the field it feels at this speed? */
function goesOver(car: Body, under: Under, speed: number): boolean {
  // Gravity and centrifugal force as vectors in the level, turned into the canted plane by the engine itself.
  const field = new Vec3(0, -speed * speed * under.curvature, -GRAVITY);
  const canted = new Quaternion().setFromAxisAngle(new Vec3(1, 0, 0), under.cant);
  const world = new World({ gravity: canted.vmult(field) });
  (world.solver as GSSolver).iterations = 60;
  const rail = new Material('rail');
  const wheel = new Material('wheel');
  world.addContactMaterial(
    new ContactMaterial(rail, wheel, {
      friction: 4,
      restitution: 0,
      contactEquationStiffness: 1e8,
      contactEquationRelaxation: 4,
    }),
  );
  const ground = new Solid({ mass: 0, material: rail });
  ground.addShape(new Plane());
  world.addBody(ground);
  const solid = solidOf(car, wheel);
  world.addBody(solid);
  const up = new Vec3();
  for (let t = 0; t < WATCHED; t += STEP) {
    world.step(STEP);
    solid.quaternion.vmult(new Vec3(0, 0, 1), up);
    if (up.z < 0.97) return true;
  }
  return false;
}

/** A solid whose origin is the car's centre of gravity, on feet where its wheels touch. */
function solidOf({ mass, Z, Y, base, vehicle, groupMass }: Body, material: Material): Solid {
  const height = Z / mass;
  const [front, rear] = [vehicle.groups[0].at, vehicle.groups[1].at];
  const centre = groupMass.reduce((sum, m, i) => sum + m * vehicle.groups[i].at, 0) / mass;
  const solid = new Solid({ mass, material, position: new Vec3(0, 0, height) });
  for (const x of [front, rear]) {
    for (const y of [base / 2, -base / 2]) {
      solid.addShape(new Sphere(FOOT), new Vec3(centre - x, y - Y / mass, FOOT - height));
    }
  }
  // The inertia of a box of the car's size; it sets how fast the car goes over, not whether.
  solid.updateMassProperties();
  const [l, w, h] = [vehicle.length, base, 2 * height];
  const k = mass / 12;
  solid.inertia.set(k * (w * w + h * h), k * (l * l + h * h), k * (l * l + w * w));
  solid.invInertia.set(1 / solid.inertia.x, 1 / solid.inertia.y, 1 / solid.inertia.z);
  solid.updateInertiaWorld(true);
  return solid;
}

/** Speed at which it first goes over, by halving between stands and goes. */
function overturningByTrial(car: Body, under: Under, from: number, to: number): number {
  let [low, high] = [from, to];
  expect(goesOver(car, under, low)).toBe(false);
  expect(goesOver(car, under, high)).toBe(true);
  while (high - low > 0.004 * to) {
    const middle = (low + high) / 2;
    if (goesOver(car, under, middle)) high = middle;
    else low = middle;
  }
  return (low + high) / 2;
}

describe('overturning against a rigid-body engine', () => {
  it('random cars go over at the same speed within 2 %', () => {
    const draw = drawer(7);
    const errors: number[] = [];
    while (errors.length < runs(20, 60)) {
      const upright = randomBody(draw, 0.01);
      const hand = draw(0, 1) < 0.5 ? 1 : -1;
      const under = { curvature: hand / draw(8, 60), cant: hand * draw(-0.02, 0.06) };
      // A rider of 80 kg leans outward, or nobody does.
      const lean = draw(0, 1) < 0.5 ? 0 : draw(0, 0.1);
      const car = leaning(upright, -hand * 80 * lean);
      if (Math.abs(car.Y / car.mass) > 0.3 * car.base) continue;
      const ours = speedLeaving(overturnOf(car), under, 0);
      if (!(ours > 0.5) || ours > 15) continue;
      const theirs = overturningByTrial(car, under, ours * 0.9, ours * 1.1);
      errors.push(Math.abs(theirs / ours - 1));
    }
    beside(
      import.meta.url,
      'speed at which a car goes over in a curve',
      '`cannon-es`, a rigid-body engine',
      errors,
    );
    expect(Math.max(...errors)).toBeLessThan(0.02);
  });

  it('random cars stand with people who lean a little less than the sum allows, and go over at a little more', () => {
    const draw = drawer(8);
    for (let n = 0; n < runs(15, 40); n++) {
      const car = randomBody(draw, 0.01);
      const { mass, Y, base } = car;
      const hand = draw(0, 1) < 0.5 ? 1 : -1;
      const under = { curvature: hand / draw(8, 60), cant: hand * draw(-0.02, 0.06) };
      const speed = draw(0, 1.5);
      const inputs = {
        mass,
        people: 0.25 * mass,
        height: car.Z / mass,
        base,
        offset: (hand * Y) / mass,
        cant: hand * Math.sin(under.cant) * base,
        sideways: (speed * speed) / Math.abs(1 / under.curvature),
      };
      const outcome = evaluateSum(findSum('lean-to-lift') as Sum, inputs);
      if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
      const angle = under.cant * hand - Math.atan(inputs.sideways / GRAVITY);
      const toward = hand * Math.sign(inputs.height * Math.tan(angle) + inputs.offset);
      const shifted = (share: number): Body =>
        leaning(car, toward * share * outcome.values['lean'] * inputs.people);
      expect(outcome.values['lean']).toBeGreaterThan(0);
      expect(goesOver(shifted(0.96), under, speed)).toBe(false);
      expect(goesOver(shifted(1.04), under, speed)).toBe(true);
    }
  });
});
