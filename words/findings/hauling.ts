/** Words for hauling and holding. */
import type { FactsOf } from '../../engine/questions/findings.ts';
import type { Tellers, Tools } from './teller.ts';

type Standing = 'does-not-hold' | 'holds-only-while-brake-is-tight';

/** What riders can do for a standing train, each at a screw. */
const withRiders = ({ riders }: FactsOf<Standing>, t: Tools<Standing>): string =>
  riders === 'hold' ? ` With a rider winding every screw it stands: ${t.fact('everybody', 'down')}.` : '';

/** Never more seldom than it is. */
const oneIn = (fails: number): number => Math.max(1, Math.floor(1 / Math.max(fails, 0.01)));

/** @param others stretches beside the one that is told */
const more = (others: number): string =>
  others > 0 ? `, nor on ${others} other ${others === 1 ? 'stretch' : 'stretches'}` : '';

export const haulingWords = {
  'cannot-start': (f, t) => ({
    what:
      f.severity === 'forbids'
        ? `It likely stalls ${t.where}: the pull is less than ${t.word('grade')} and resistance there.`
        : `Do not stop ${t.where}${more(f.facts.stretches.si - 1)}: one start in ${oneIn(f.facts.fails.si)} fails there${f.facts.places === '' ? '' : `, and ${t.fact('places')} may ask for it`}.`,
    why: `On the worst day in twenty it pulls ${t.found('down')} and needs ${t.required('up')}; likely ${t.fact('likelyPull', 'down')} against ${t.fact('likelyNeed', 'up')}. The pull is never more than adhesion allows.`,
  }),
  'slow-on-grade': (_f, t) => ({
    what: `On the ruling ${t.word('grade')} ${t.where} the train keeps up no more than ${t.found('down')}.`,
    why: 'There the pull at that speed equals grade, curve and rolling resistance on a bad day. It may stall without a run-up.',
  }),
  'traction-unknown': (_f, t) => ({
    what: `Nobody has said how hard ${t.vehicle} pulls.`,
    why: 'Give cylinders, wheels and pressure, or a drawbar pull measured with a spring balance.',
  }),
  'does-not-hold': (f, t) => {
    const holds = `all that driver and guard can put on holds ${t.found('down')}, and the ${t.word('grade')} pulls ${t.required('up')}`;
    if (f.severity === 'unknown') {
      const at = t.at(f.where.from ?? 0);
      return {
        what: `Nobody has measured a brake of ${t.vehicle}; without it, standing at ${at}, ${holds}.`,
        why: `Measured, it may hold.${withRiders(f.facts, t)}`,
      };
    }
    return {
      what: `Standing ${t.where}, ${holds}.`,
      why: `Weak brakes and little adhesion are reckoned with. The train would roll away.${withRiders(f.facts, t)}`,
    };
  },
  'holds-only-while-brake-is-tight': (f, t) => ({
    what: `Standing ${t.where}, what driver and guard can put on and does not leak off holds ${t.found('down')}, and the ${t.word('grade')} pulls ${t.required('up')}.`,
    why: `Air, vacuum and steam leak off. Hold it with the driver on the brake, and set chocks before anyone leaves it.${withRiders(f.facts, t)}`,
  }),
  'no-parking-brake': () => ({
    what: 'No vehicle has a brake that holds by itself.',
    why: 'Air, vacuum and steam leak off: a standing train needs a screw, lever, clamp or chock.',
  }),
} satisfies Partial<Tellers>;
