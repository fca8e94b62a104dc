/** Words for hauling. */
import type { Tellers } from './teller.ts';

/** Never more seldom than it is. */
const startsThatFail = (fails: number): string => {
  const one = Math.max(1, Math.floor(1 / Math.max(fails, 0.01)));
  return one === 1 ? 'most starts fail' : `one start in ${one} fails`;
};

/** @param others stretches beside the one that is told */
const more = (others: number): string =>
  others > 0 ? `, nor on ${others} other ${others === 1 ? 'stretch' : 'stretches'}` : '';

export const haulWords = {
  'cannot-start': (f, t) => ({
    what:
      f.severity === 'forbids'
        ? `It likely stalls ${t.where}: the pull is less than ${t.word('grade')} and resistance there.`
        : `Do not stop ${t.where}${more(f.facts.stretches.si - 1)}: ${startsThatFail(f.facts.fails.si)} there${f.facts.places === '' ? '' : `, and ${t.fact('places')} may ask for it`}.`,
    why: `On the worst day in twenty it pulls ${t.found('down')} and needs ${t.required('up')}; likely ${t.fact('likelyPull', 'down')} against ${t.fact('likelyNeed', 'up')}. The pull is never more than adhesion allows.`,
  }),
  'slow-on-grade': (_f, t) => ({
    what: `On the ruling ${t.word('grade')} ${t.where} the train keeps up no more than ${t.found('down')}.`,
    why: 'There the pull at that speed equals grade, curve and rolling resistance on a bad day. It may stall without a run-up.',
  }),
  'surge-pushed': ({ facts }) => ({
    what: `An engine pushes ${facts.vehicles} from behind, and a surge brake comes on when it is pushed.`,
    why: 'What it drags is not in the pull that is reckoned here, its blocks get hot, and in a curve what is squeezed leaves the rail first. Lock it out for the push where its maker provides for that, and unlock it before it is pulled again: until then it is no brake. Or put the engine in front.',
  }),
  'traction-unknown': (_f, t) => ({
    what: `Nobody has said how hard ${t.vehicle} pulls.`,
    why: 'Give cylinders, wheels and pressure, or a drawbar pull measured with a spring balance.',
  }),
} satisfies Partial<Tellers>;
