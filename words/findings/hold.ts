/** Words for holding a standing train. */
import type { FactsOf } from '../../engine/questions/findings.ts';
import type { Tellers, Tools } from './teller.ts';

type Standing = 'does-not-hold' | 'holds-only-while-brake-is-tight';

/** What riders can do for a standing train, each at a screw. */
const withRiders = ({ riders }: FactsOf<Standing>, t: Tools<Standing>): string =>
  riders === 'hold' ? ` With a rider winding every screw it stands: ${t.fact('everybody', 'down')}.` : '';

export const holdWords = {
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
    what: `Standing at ${t.at(f.where.from ?? 0)}, what driver and guard can put on and does not leak off holds ${t.found('down')}, and the ${t.word('grade')} pulls ${t.required('up')}.`,
    why: `Air, vacuum and steam leak off. Hold it with the driver on the brake, and set chocks before anyone leaves it.${f.measure === undefined ? '' : ` Nobody has measured how hard the brake of ${t.vehicle} that parks holds: it counts for nothing until then.`}${withRiders(f.facts, t)}`,
  }),
  'no-parking-brake': () => ({
    what: 'No vehicle has a brake that is said to hold by itself.',
    why: 'Air, vacuum and steam leak off: a standing train needs a screw, lever, clamp or chock.',
  }),
} satisfies Partial<Tellers>;
