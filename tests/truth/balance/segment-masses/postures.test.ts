/** A seated person's centre of gravity above the seat, added up from segments of the body. */
import { describe, expect, it } from 'vitest';
import { assumed, defaultRow } from '../../../../data/index.ts';
import { type Posture, postures } from '../../../../engine/things/vehicle/types.ts';
import { printedIn } from '../../../support/measured.ts';

/** Share of the mass, and where along the segment its own centre lies. */
const segments = {
  head: [0.0694, 0.5002],
  trunk: [0.4346, 0.5138],
  upperArm: [0.0271, 0.5772],
  forearm: [0.0162, 0.4574],
  hand: [0.0061, 0],
  thigh: [0.1416, 0.4095],
  shank: [0.0433, 0.4395],
  foot: [0.0137, 0],
} as const;
/** m, of a man of 1.741 m */
const lengths = {
  head: 0.2429,
  trunk: 0.6033,
  shoulders: 0.5155,
  upperArm: 0.2817,
  thigh: 0.4222,
  shank: 0.4403,
};
const HIP = 0.075;
const [SHORT, MIDDLING, TALL] = [1.52 / 1.741, 1, 1.88 / 1.741];

interface Pose {
  /** Degrees above the horizontal, from hip to knee and from knee to ankle. */
  readonly thigh: number;
  readonly shank: number;
  /** Degrees that the trunk leans. */
  readonly lean: number;
}

const sin = (degrees: number): number => Math.sin((degrees * Math.PI) / 180);
const cos = (degrees: number): number => Math.cos((degrees * Math.PI) / 180);

function centreAbove({ thigh, shank, lean }: Pose, size: number): number {
  const upright = cos(lean);
  const neck = HIP + lengths.trunk * upright;
  const shoulder = HIP + lengths.shoulders * upright;
  const elbow = shoulder - lengths.upperArm;
  const knee = HIP + lengths.thigh * sin(thigh);
  const ankle = knee + lengths.shank * sin(shank);
  // Hands in the lap, or on the knees where those are higher.
  const hand = Math.max(elbow, knee);
  const at = ([, along]: readonly [number, number], from: number, to: number): number =>
    from + along * (to - from);
  const once: [keyof typeof segments, number][] = [
    ['head', at(segments.head, neck + lengths.head, neck)],
    ['trunk', at(segments.trunk, neck, HIP)],
  ];
  const twice: [keyof typeof segments, number][] = [
    ['upperArm', at(segments.upperArm, shoulder, elbow)],
    ['forearm', at(segments.forearm, elbow, hand)],
    ['hand', hand],
    ['thigh', at(segments.thigh, HIP, knee)],
    ['shank', at(segments.shank, knee, ankle)],
    ['foot', ankle],
  ];
  const sum = (of: typeof once): number => of.reduce((s, [name, z]) => s + segments[name][0] * z, 0);
  return size * (sum(once) + 2 * sum(twice));
}

const pose = (thigh: number, shank: number, lean: number): Pose => ({ thigh, shank, lean });
const poses: Readonly<Record<Posture, readonly [low: Pose, likely: Pose, high: Pose]>> = {
  chair: [pose(-5, -90, 15), pose(0, -85, 0), pose(5, -70, 0)],
  'legs-forward': [pose(0, -10, 15), pose(8, -8, 0), pose(15, -8, 0)],
  'knees-up': [pose(35, -35, 15), pose(48, -42, 0), pose(60, -55, 0)],
  astride: [pose(-30, -90, 15), pose(-10, -75, 0), pose(10, -60, 0)],
};

const paper = printedIn(import.meta.url, 'B');
const added = printedIn(import.meta.url, 'D');

describe('segments of the body', () => {
  it('add up to a whole one', () => {
    const { head, trunk, ...limbs } = segments;
    const whole = head[0] + trunk[0] + 2 * Object.values(limbs).reduce((s, [share]) => s + share, 0);
    paper.figure('whole body', whole, 1, 0.0005);
  });

  it.each(postures)(
    '%s: the assumed height is their sum, short and slumped to tall and drawn up',
    (posture) => {
      const [low, likely, high] = poses[posture];
      const row = assumed(`rider-centre/${posture}`);
      added.figure(`${posture}, lowest`, row.low, centreAbove(low, SHORT), 1e-3, 'm');
      added.figure(`${posture}, likely`, row.value, centreAbove(likely, MIDDLING), 1e-3, 'm');
      added.figure(`${posture}, highest`, row.high, centreAbove(high, TALL), 1e-3, 'm');
    },
  );

  it('legs forward and knees up lie above what is usual for a chair', () => {
    const chair = assumed('rider-centre/chair');
    expect(chair.value).toBeGreaterThan(0.242);
    expect(chair.value).toBeLessThan(0.263);
    expect(assumed('rider-centre/legs-forward').value).toBeGreaterThan(0.27);
    expect(assumed('rider-centre/knees-up').value).toBeGreaterThan(
      assumed('rider-centre/legs-forward').value,
    );
  });

  it('a posture that is not stated covers every posture', () => {
    const open = defaultRow('rider-centre');
    expect(open.high).toBe(Math.max(...postures.map((p) => assumed(`rider-centre/${p}`).high)));
    expect(open.low).toBe(Math.min(...postures.map((p) => assumed(`rider-centre/${p}`).low)));
    expect(open.value).toBeGreaterThan(assumed('rider-centre/chair').value);
  });
});
