/** Words for hauling and holding. */
import type { Teller, Tools } from './teller.ts';

/** What riders can do for a standing train, each at a screw. */
const withRiders = (t: Tools): string =>
  t.fact('riders') === 'hold'
    ? ` With a rider winding every screw it stands: ${t.fact('everybody', 'down')}.`
    : '';

export const haulingWords = {
  'cannot-start': (f, t) => ({
    what:
      f.severity === 'forbids'
        ? `The engine cannot start the train ${t.where}.`
        : `The engine may fail to start the train ${t.where}: do not stop there.`,
    why: `On a bad day it pulls ${t.found('down')} and needs ${t.required('up')}; likely ${t.fact('likelyPull', 'down')} against ${t.fact('likelyNeed', 'up')}. The pull is never more than adhesion allows.`,
  }),
  'slow-on-grade': (_f, t) => ({
    what: `On the ruling ${t.word('grade')} ${t.where} the train keeps up no more than ${t.found('down')}.`,
    why: 'There the pull at that speed equals grade, curve and rolling resistance on a bad day. It may stall without a run-up.',
  }),
  'traction-unknown': (_f, t) => ({
    what: `Nobody has said how hard ${t.vehicle} pulls.`,
    why: 'Give cylinders, wheels and pressure, or a drawbar pull measured with a spring balance.',
  }),
  'does-not-hold': (_f, t) => ({
    what: `Standing ${t.where}, all that driver and guard can put on holds ${t.found('down')}, and the ${t.word('grade')} pulls ${t.required('up')}.`,
    why: `Weak brakes and little adhesion are reckoned with. The train would roll away.${withRiders(t)}`,
  }),
  'holds-only-while-brake-is-tight': (_f, t) => ({
    what: `Standing ${t.where}, what driver and guard can put on and does not leak off holds ${t.found('down')}, and the ${t.word('grade')} pulls ${t.required('up')}.`,
    why: `Air, vacuum and steam leak off. Hold it with the driver on the brake, and set chocks before anyone leaves it.${withRiders(t)}`,
  }),
  'no-parking-brake': () => ({
    what: 'No vehicle has a brake that holds by itself.',
    why: 'Air, vacuum and steam leak off: a standing train needs a screw, lever, clamp or chock.',
  }),
} satisfies Record<string, Teller>;
