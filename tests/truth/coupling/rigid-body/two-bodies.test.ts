import { Body, ContactMaterial, Material, Sphere, Spring, Vec3, World } from 'cannon-es';
import { describe, expect, it } from 'vitest';
import { type Row, runRow } from '../../../../engine/motion/row.ts';
import { beside } from '../../../support/measured.ts';

interface Case {
  readonly masses: readonly [number, number];
  /** m/s */
  readonly closing: number;
  readonly slack: number;
  readonly stiffness: number;
  /** Damping ÷ critical of the pair. */
  readonly share: number;
}

const cases: Case[] = [
  { masses: [600, 200], closing: 0.5, slack: 0.02, stiffness: 2e5, share: 0.1 },
  { masses: [900, 150], closing: 0.3, slack: 0.01, stiffness: 5e5, share: 0.05 },
  { masses: [120, 400], closing: 1.2, slack: 0.05, stiffness: 1e5, share: 0.2 },
  { masses: [250, 250], closing: 0.8, slack: 0.03, stiffness: 3e5, share: 0.02 },
  { masses: [80, 700], closing: 0.2, slack: 0.012, stiffness: 1e6, share: 0.15 },
];

const reduced = ([a, b]: readonly [number, number]): number => (a * b) / (a + b);
const damping = ({ masses, stiffness, share }: Case): number =>
  2 * share * Math.sqrt(stiffness * reduced(masses));

/** The body in front goes at `front`, the one behind at `rear`; half a slack away from contact. */
function ours(c: Case, front: number, rear: number) {
  const row: Row = {
    bodies: c.masses.map((mass) => ({ mass, rolling: 0, starting: 0 })),
    couplers: [{ slack: c.slack, stiffness: c.stiffness, damping: damping(c), start: 0 }],
    efforts: [],
    brakes: [],
    head: 0,
    speeds: [front, rear],
    time: c.slack / c.closing,
  };
  // Long enough to strike and come away, too short to run through the whole slack again.
  const end = runRow({
    ...row,
    time: row.time / 2 + 1.2 * Math.PI * Math.sqrt(reduced(c.masses) / c.stiffness),
  });
  return { speeds: end.speeds, pull: end.pull[0], push: end.push[0] };
}

function bodies(world: World, c: Case, front: number, rear: number, radius: number, apart: number) {
  const make = (mass: number, x: number, v: number): Body => {
    const body = new Body({ mass, position: new Vec3(x, 0, 0), linearDamping: 0, angularDamping: 0 });
    body.velocity.set(v, 0, 0);
    world.addBody(body);
    if (radius > 0) body.addShape(new Sphere(radius));
    return body;
  };
  return [make(c.masses[0], apart, front), make(c.masses[1], 0, rear)] as const;
}

function restitution(c: Case): number {
  const beta = damping(c) / (2 * reduced(c.masses));
  const omega = Math.sqrt(c.stiffness / reduced(c.masses) - beta * beta);
  return Math.exp((-beta / omega) * (Math.PI - Math.atan2(2 * beta * omega, omega * omega - beta * beta)));
}

function struck(c: Case): number[] {
  const world = new World({ gravity: new Vec3(0, 0, 0) });
  const steel = new Material('steel');
  world.addContactMaterial(
    new ContactMaterial(steel, steel, {
      friction: 0,
      restitution: restitution(c),
      contactEquationStiffness: 1e12,
      contactEquationRelaxation: 1e6,
    }),
  );
  const pair = bodies(world, c, 0, c.closing, 0.5, 1 + c.slack / 2);
  for (const body of pair) body.material = steel;
  const step = 1e-4;
  for (let t = 0; t < (1.5 * c.slack) / c.closing; t += step) world.step(step);
  return pair.map((b) => b.velocity.x);
}

function snatched(c: Case): { speeds: number[]; most: number } {
  const world = new World({ gravity: new Vec3(0, 0, 0) });
  const pair = bodies(world, c, c.closing, 0, 0, 10);
  const spring = new Spring(pair[1], pair[0], {
    restLength: 10 + c.slack / 2,
    stiffness: c.stiffness,
    damping: damping(c),
  });
  const step = 1e-5;
  let most = 0;
  const time = c.slack / 2 / c.closing + 1.2 * Math.PI * Math.sqrt(reduced(c.masses) / c.stiffness);
  for (let t = 0; t < time; t += step) {
    const apart = pair[0].position.x - pair[1].position.x;
    if (apart > spring.restLength) {
      const opening = pair[0].velocity.x - pair[1].velocity.x;
      const force = c.stiffness * (apart - spring.restLength) + damping(c) * opening;
      // A chain does not push, whatever the damping says.
      if (force > 0) spring.applyForce();
      most = Math.max(most, force);
    }
    world.step(step);
  }
  return { speeds: pair.map((b) => b.velocity.x), most };
}

const momentum = (c: Case, speeds: ArrayLike<number>): number =>
  c.masses[0] * speeds[0] + c.masses[1] * speeds[1];

describe('two vehicles take up their slack, against cannon-es', () => {
  const errors: number[] = [];
  const within = (error: number): void => {
    errors.push(error);
    expect(error).toBeLessThan(0.005);
  };
  it.each(cases)('run-in of $masses kg closing at $closing m/s', (c) => {
    const [mine, theirs] = [ours(c, 0, c.closing), struck(c)];
    expect(momentum(c, mine.speeds) / momentum(c, theirs)).toBeCloseTo(1, 6);
    for (const i of [0, 1]) within(Math.abs(mine.speeds[i] - theirs[i]) / c.closing);
  });
  it.each(cases)('snatch of $masses kg parting at $closing m/s', (c) => {
    const [mine, theirs] = [ours(c, c.closing, 0), snatched(c)];
    expect(momentum(c, mine.speeds) / momentum(c, theirs.speeds)).toBeCloseTo(1, 6);
    for (const i of [0, 1]) within(Math.abs(mine.speeds[i] - theirs.speeds[i]) / c.closing);
    within(Math.abs(mine.pull / theirs.most - 1));
  });

  beside(
    import.meta.url,
    'two vehicles that take up their slack: speeds after it, of the closing speed, and greatest pull',
    '`cannon-es`, a rigid-body engine',
    errors,
  );
});
