/** The picture of each sum: what its symbols are in the thing itself. Not to scale; shapes are likenesses. */
import type { Scene } from '../strip/scene.ts';
import * as curves from './curves.ts';
import * as gear from './gear.ts';
import * as motion from './motion.ts';
import { type Picture, type Say, sheet } from './tools.ts';

const pictures: Readonly<Record<string, Picture>> = {
  'stopping-distance': motion.brakingCurve,
  'mean-deceleration': motion.plainStop,
  'sight-stopping-distance': motion.sightStop,
  'brake-ratio': gear.ratio,
  'coasting-distance': motion.rolling,
  'coast-down-resistance': motion.coasting,
  'runaway-speed': motion.runaway,
  'rotating-energy': motion.gyration,
  'in-train-force': motion.coupler,
  'signal-headway': motion.headway,
  'flag-distance': motion.flag,
  'gap-time': motion.gapOfTime,
  'grade-force': motion.onGrade,
  'curve-resistance': curves.curveDrag,
  'curve-resistance-by-degree': curves.degree,
  'davis-resistance': curves.axlesOnRail,
  'small-gauge-resistance': motion.onGrade,
  'tractive-effort': gear.steamCylinder,
  'tractive-power-per-pressure': gear.steamCylinder,
  'haulable-load': motion.hauled,
  'army-trailing-load': motion.hauled,
  'heywood-load': gear.steamCylinder,
  'adhesion-limit': motion.drivenWheel,
  'adhesion-by-speed': motion.drivenWheel,
  'steam-power-pull': motion.pullAtSpeed,
  'orifice-flow': gear.orifice,
  'reservoir-equalisation': gear.twoVessels,
  'standard-atmosphere': gear.airColumn,
  'vacuum-limit': gear.airColumn,
  'brake-from-cylinder': gear.rigging,
  'block-friction': gear.blockOnWheel,
  'vessel-filling': gear.filling,
  'vessel-emptying': gear.emptying,
  'draw-down-time': gear.sucked,
  'pump-up-time': gear.pumped,
  'cylinder-from-reduction': gear.twoVessels,
  'vacuum-chamber': gear.chamber,
  'hand-brake': gear.handBrake,
  'equilibrium-cant': curves.crossSection,
  'curve-speed': curves.crossSection,
  'curve-speed-by-degree': curves.degree,
  'centrifugal-force': curves.aroundCurve,
  'overturning-speed': curves.crossSection,
  'lean-to-lift': curves.leaningCar,
  'tilt-to-height': curves.tilt,
  'nadal-limit': curves.flange,
  'radius-of-degree': curves.degree,
  'degree-of-radius': curves.degree,
  'radius-of-versine': curves.versine,
  'versine-of-radius': curves.versine,
  'coupler-angle': curves.coupled,
  'chain-working-load': gear.chainSize,
  'weakest-link': gear.chainInLine,
  'chain-snatch': gear.snatch,
  'chain-energy': gear.stretched,
  'two-chains': gear.twoChains,
  impact: gear.collision,
  'buffer-stop': gear.bufferStop,
  'bar-snatch': gear.bar,
  'frog-angle': curves.frog,
  'frog-number': curves.frog,
  'turnout-lead': curves.turnout,
  'turnout-radius': curves.turnout,
  'turnout-closure': curves.turnout,
  'fouling-point': curves.turnout,
  'track-warp': curves.warp,
  'wheel-fit': curves.wheelset,
  'grade-of-rise': motion.riseRun,
};

/**
 * @param say words for a symbol of this sum; a picture shared by several sums leaves out what is not theirs
 *   when this gives an empty text
 */
export function sumPicture(id: string, title: string, say: Say): Scene | undefined {
  const draw = pictures[id];
  return draw && sheet(title, draw(say));
}
