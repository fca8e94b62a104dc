/**
 * Is what the host asks to be in date in date? Of several certificates of a thing the best counts: one that is out
 * takes nothing from another, and adds nothing where there is none.
 */
import { amount } from '../../base/quantity.ts';
import { nameOfLine } from '../../outing/moves.ts';
import { offLine, restrictionsHere } from '../../outing/restricted.ts';
import type { Outing } from '../../outing/types.ts';
import {
  type GroundKind,
  type GroundRule,
  groundWords,
  type InDateHolder,
  type InDateRule,
  type Shown,
} from '../../things/in-date.ts';
import { atWork, whereOf } from '../crew/at-work.ts';
import type { Finding, Severity } from '../finding.ts';
import { makeFinding } from '../make.ts';
import { type Unfit, unaccepted, unfit, worse } from './signed-for.ts';

export const askOrder = (outing: Outing): Finding[] => [
  ...(outing.host.inDate ?? []).flatMap((rule) =>
    holders(outing, rule.of).flatMap((holder) => about(outing, rule, holder)),
  ),
  ...defects(outing),
  ...askGround(outing),
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

const INVENTED = 'an inspection by an example list, whose figures are invented';

const byInvented = (invented: boolean | undefined) => (invented ? { invented } : {});

/** Of this train and this line; what is amiss elsewhere is no matter of it. */
function defects(outing: Outing): Finding[] {
  const { defects = [], train } = outing;
  return defects.flatMap(({ of, what, rejects, invented, since }) => {
    const vehicle = train.vehicles.find(({ name }) => name === of);
    if (!vehicle && of !== nameOfLine(outing)) return [];
    return [
      makeFinding('defect-open', rejects ? 'forbids' : 'limits', 'host', {
        where: vehicle ? { vehicle: vehicle.id } : {},
        facts: { what, of, since, ...byInvented(invented) },
        source: invented ? INVENTED : 'an inspection, as it was recorded',
      }),
    ];
  });
}

/**
 * First aid and fire gear are for whoever is burned or falls, on the train as beside it: while they are rejected nobody rides as if they were
 * there. The bay is for lighting up, fuelling and lifting: a train that runs is none of it. Common practice, no source, until the host says otherwise.
 */
export function askGround(outing: Outing): Finding[] {
  const { defects = [], host } = outing;
  return defects.flatMap(({ of, ground, what, rejects, invented, since }) => {
    if (ground === undefined) return [];
    const rule = strictest((host.ground ?? []).filter((one) => one.what === ground));
    return [
      makeFinding('ground-amiss', rejects ? groundSeverity(ground, rule, outing) : 'notes', 'host', {
        facts: { ground, what, of, since, rejects, ...byInvented(invented) },
        source: rule?.source ?? 'common practice, no source',
      }),
    ];
  });
}

function groundSeverity(ground: GroundKind, rule: GroundRule | undefined, { riders }: Outing): Severity {
  if (rule) return bySaid[rule.rejected];
  return ground === 'first-aid-and-fire' && riders.some(({ duty }) => duty === 'rider') ? 'limits' : 'notes';
}

/** Of several that a host has of one thing; undefined: of none. */
const strictest = (rules: readonly GroundRule[]): GroundRule | undefined =>
  groundWords.flatMap((word) => rules.find(({ rejected }) => rejected === word) ?? [])[0];

const bySaid: Readonly<Record<GroundRule['rejected'], Severity>> = {
  hold: 'forbids',
  limits: 'limits',
  told: 'notes',
};

interface Holder {
  /** Absent: the club. */
  readonly name?: string;
  readonly vehicle?: string;
  /** Id of the rider, of whoever drives. */
  readonly driver?: string;
}

function holders(outing: Outing, of: InDateHolder): readonly Holder[] {
  switch (of) {
    case 'engine':
    case 'vehicle':
      return outing.train.vehicles
        .filter(({ role }) => of === 'vehicle' || role === 'engine')
        .map(({ id, name }) => ({ name, vehicle: id }));
    case 'driver':
    case 'guard':
    case 'lookout':
      return atWork(outing)
        .filter(({ duty }) => duty === of)
        .map((one) => ({
          name: one.name,
          ...whereOf(one),
          ...(of === 'driver' ? { driver: one.id } : {}),
        }));
    case 'club':
      return [{}];
  }
}

const better: readonly Shown['state'][] = ['stands', 'grace', 'unknown', 'out'];

/** One that is for this train here, or may be, before one that is not; then the best; of two as good the longer. */
function bestOf(shown: readonly Shown[], unfitOf: (one: Shown) => Unfit | undefined): Shown | undefined {
  const rank = (one: Shown): number => {
    const fits = unfitOf(one)?.fits ?? 'yes';
    return (fits === 'no' ? 10 : fits === 'unknown' ? 2 : 0) + better.indexOf(one.state);
  };
  return [...shown].sort((a, b) => rank(a) - rank(b) || ((a.last ?? '') < (b.last ?? '') ? 1 : -1))[0];
}

function about(outing: Outing, rule: InDateRule, { name, vehicle, driver }: Holder): Finding[] {
  const { what, source } = rule;
  const mine = (outing.shown ?? []).filter((one) => one.what === what && one.of === name);
  const unfitOf = (one: Shown): Unfit | undefined =>
    worse(unaccepted(rule, one), one.signedFor && unfit(one.signedFor, outing, driver));
  const best = bestOf(mine, unfitOf);
  const [asked, not] = [{ what, of: name ?? 'the club' }, best && unfitOf(best)];
  const facts = { ...asked, ...(best?.last === undefined ? {} : { last: best.last }) };
  const details = { where: vehicle === undefined ? {} : { vehicle }, facts, source };
  if (not && (not.fits === 'no' || best?.state === 'stands' || best?.state === 'grace'))
    return [notForThis(not, rule, asked, details.where)];
  switch (best?.state) {
    case 'stands':
      return [];
    case 'grace':
      return [makeFinding('in-grace', 'notes', 'host', details)];
    case 'out':
      return [makeFinding('out-of-date', 'forbids', 'host', details)];
    default:
      return [
        makeFinding('not-shown', 'unknown', 'host', { ...details, facts: asked, measure: 'outing.shown' }),
      ];
  }
}

/** Of an engine of which nobody said what drives it, that is to be said; of a certificate, who gave it. */
function notForThis(
  { fits, why, engine }: Unfit,
  { by = [], source }: InDateRule,
  asked: { readonly what: InDateRule['what']; readonly of: string },
  aboard: Finding['where'],
): Finding {
  const where = fits === 'unknown' && engine ? { vehicle: engine.id } : aboard;
  return makeFinding('not-signed-for-this', fits === 'no' ? 'forbids' : 'unknown', 'host', {
    where,
    facts: {
      ...asked,
      why,
      ...(engine ? { engine: engine.name } : {}),
      ...(why === 'by' ? { accepted: by.join(', ') } : {}),
    },
    ...(fits === 'no' ? {} : { measure: why === 'by' ? 'outing.shown' : 'vehicle.power' }),
    source,
  });
}
