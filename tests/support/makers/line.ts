/** Outings that make findings of the line, and the papers as they are. */
import type { KeptApart, Outing, Restriction } from '../../../engine/outing/types.ts';
import { plain, rule, withHost } from '../rules.ts';
import type { Makers } from './index.ts';
import { car1, onLine, steep, tight } from './shared.ts';

const restricted = (more: Partial<Restriction>): Outing => {
  const outing = plain(2);
  const of = outing.line.name;
  const one = {
    of,
    from: 30,
    to: 50,
    why: 'soft bank',
    since: '2026-05-30',
    source: 'record 1a2b3c4d',
    ...more,
  };
  return { ...outing, restrictions: [one] };
};
const keptApart = (value: KeptApart): Outing =>
  withHost(2, { keptApart: rule(value) }, { otherTrains: 'either-way' });

const unreadable = (): Outing => {
  const outing = plain(2);
  const line = Object.defineProperty({ ...outing.line }, 'heightQuality', {
    get: () => {
      throw new Error('cannot be read');
    },
  });
  return { ...outing, line };
};

export const line: Makers = {
  'line-closed': () => restricted({}),
  'line-slow': () => restricted({ speed: 1 }),
  'limit-off-line': () => restricted({ to: 1e5 }),
  'train-longer-than-line': () =>
    onLine({
      loop: false,
      length: 4,
      heights: [
        { at: 0, height: 0 },
        { at: 4, height: 0 },
      ],
    }),
  'question-failed': unreadable,
  'gauge-differs': () => car1({ gauge: 0.19 }),
  'curve-too-tight': () => onLine({ curves: [tight] }),
  'grade-beyond-range': () => onLine({ loop: false, length: 200, heights: steep }),
  'heights-poor': () => onLine({ heightQuality: 'gps' }),
  assumed: () =>
    plain(1, { assumptions: [{ of: 'a mass', where: 'car 1', key: 'mass', source: 'made up' }] }),
  'others-not-said': () => {
    const { otherTrains: _, ...outing } = onLine({ loop: false });
    return outing;
  },
  'all-out-first': () => ({ ...onLine({ loop: false }), otherTrains: 'same-way' }),
  'kept-apart-not-said': () => ({ ...plain(2), otherTrains: 'either-way' }),
  'kept-apart-by-sight': () => keptApart('sight'),
  'one-train-only': () => keptApart('one-train'),
  'kept-apart': () => keptApart('staff'),
  // Out it climbs, back it falls.
  'way-back': () => {
    const { wayBack: _, ...outing } = onLine({
      loop: false,
      length: 200,
      heights: [
        { at: 0, height: 0 },
        { at: 200, height: 4 },
      ],
    });
    return outing;
  },
  'other-move': () => {
    const outing = plain(1);
    return { ...outing, moves: [{ number: 2, line: outing.line, turned: true }] };
  },
};
