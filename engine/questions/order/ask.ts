/**
 * Is what the host asks to be in date in date? Of several certificates of a thing the best counts: one that is out
 * takes nothing from another, and adds nothing where there is none.
 */
import { amount } from '../../base/quantity.ts';
import { offLine, restrictionsHere } from '../../outing/restricted.ts';
import type { Outing } from '../../outing/types.ts';
import type { InDateHolder, InDateRule, Shown } from '../../things/in-date.ts';
import type { Finding } from '../finding.ts';
import { makeFinding } from '../make.ts';

export const askOrder = (outing: Outing): Finding[] => [
  ...(outing.host.inDate ?? []).flatMap((rule) =>
    holders(outing, rule.of).flatMap((holder) => about(outing, rule, holder)),
  ),
  ...defects(outing),
  ...restricted(outing),
];

/** Where the line is shut or slow. One that lies beyond its end limits nothing that anybody could find there. */
const restricted = (outing: Outing): Finding[] =>
  restrictionsHere(outing).flatMap((one): Finding[] => {
    const { from, to, speed, why, since, source } = one;
    if (offLine(one, outing.line))
      return [
        makeFinding('limit-off-line', 'unknown', 'host', {
          facts: { why, since, end: amount(outing.line.length, 'length') },
          source,
          measure: 'outing.restrictions',
        }),
      ];
    const details = { where: { from, to }, facts: { why, since }, source };
    return [
      speed === undefined
        ? makeFinding('line-closed', 'forbids', 'host', details)
        : makeFinding('line-slow', 'limits', 'host', { ...details, found: amount(speed, 'speed') }),
    ];
  });

/** Of this train and this line; what is amiss elsewhere is no matter of it. */
function defects({ defects = [], train, line }: Outing): Finding[] {
  return defects.flatMap(({ of, what, rejects, since }) => {
    const vehicle = train.vehicles.find(({ name }) => name === of);
    if (!vehicle && of !== line.name) return [];
    return [
      makeFinding('defect-open', rejects ? 'forbids' : 'limits', 'host', {
        where: vehicle ? { vehicle: vehicle.id } : {},
        facts: { what, of, since },
        source: 'an inspection, as it was recorded',
      }),
    ];
  });
}

interface Holder {
  /** Absent: the club. */
  readonly name?: string;
  readonly vehicle?: string;
}

function holders({ train, riders }: Outing, of: InDateHolder): readonly Holder[] {
  switch (of) {
    case 'engine':
    case 'vehicle':
      return train.vehicles
        .filter(({ role }) => of === 'vehicle' || role === 'engine')
        .map(({ id, name }) => ({ name, vehicle: id }));
    case 'driver':
    case 'guard':
      return riders.filter(({ duty }) => duty === of).map(({ name }) => ({ name }));
    case 'club':
      return [{}];
  }
}

const better: readonly Shown['state'][] = ['stands', 'grace', 'unknown', 'out'];

/** The best; of two as good the longer. */
function bestOf(shown: readonly Shown[]): Shown | undefined {
  return [...shown].sort(
    (a, b) => better.indexOf(a.state) - better.indexOf(b.state) || ((a.last ?? '') < (b.last ?? '') ? 1 : -1),
  )[0];
}

function about({ shown = [] }: Outing, { what, source }: InDateRule, { name, vehicle }: Holder): Finding[] {
  const best = bestOf(shown.filter((one) => one.what === what && one.of === name));
  const facts = { what, of: name ?? 'the club', ...(best?.last === undefined ? {} : { last: best.last }) };
  const details = { where: vehicle === undefined ? {} : { vehicle }, facts, source };
  switch (best?.state) {
    case 'stands':
      return [];
    case 'grace':
      return [makeFinding('in-grace', 'notes', 'host', details)];
    case 'out':
      return [makeFinding('out-of-date', 'forbids', 'host', details)];
    default:
      return [
        makeFinding('not-shown', 'unknown', 'host', {
          ...details,
          facts: { what, of: facts.of },
          measure: 'outing.shown',
        }),
      ];
  }
}
