/** Hours of duty and rest against the host's limits: each as it will be when the outing is over. */
import { type Amount, amount } from '../../base/quantity.ts';
import type { HostRules, Outing, Rule } from '../../outing/types.ts';
import type { Hours } from '../../things/duty.ts';
import type { Finding } from '../finding.ts';
import { makeFinding, marginOf } from '../make.ts';
import { type AtWork, measureOf, whereOf } from './at-work.ts';
import type { hourLimits } from './findings.ts';

type LimitName = (typeof hourLimits)[number];

interface Limit {
  readonly name: LimitName;
  readonly rule: Rule<number>;
  readonly of: keyof Hours;
  /** As much of it or more is asked for; else no more of it is allowed. */
  readonly least: boolean;
}

const limit = (host: HostRules, name: LimitName, of: keyof Hours, least = false): Limit[] => {
  const rule = host[name];
  return rule ? [{ name, rule, of, least }] : [];
};

/** Those that whoever works is held to today. */
function limitsOf({ host, conditions: { night } }: Outing, { duty }: AtWork): Limit[] {
  const driving = night && host.mostDrivingAtNight ? 'mostDrivingAtNight' : 'mostDriving';
  return [
    ...limit(host, 'mostOnDuty', 'onDuty'),
    ...(duty === 'driver' ? limit(host, driving, 'driving') : []),
    ...limit(host, 'mostWithoutBreak', 'sinceBreak'),
    ...limit(host, 'leastRest', 'rest', true),
    ...limit(host, 'mostInDay', 'inDay'),
    ...limit(host, 'mostInWeek', 'inWeek'),
    ...limit(host, 'mostDays', 'days'),
  ];
}

export const askHours = (outing: Outing, worker: AtWork): Finding[] => [
  ...limitsOf(outing, worker).flatMap((one) => against(one, worker)),
  ...afterFullTurn(outing.host, worker),
];

function against({ name, rule, of, least }: Limit, worker: AtWork): Finding[] {
  const { name: who, said } = worker;
  const found = said?.hours?.[of];
  const details = { where: whereOf(worker), facts: { who, limit: name }, source: rule.source };
  const asked = amountOf(of, rule.value);
  if (found === undefined)
    return [
      makeFinding('hours-not-said', 'unknown', 'host', {
        ...details,
        required: asked,
        measure: measureOf(worker, `hours.${of}`),
      }),
    ];
  if (least ? found >= rule.value - HAIR : found <= rule.value + HAIR) return [];
  return [
    makeFinding('out-of-hours', 'forbids', 'host', {
      ...details,
      found: amountOf(of, found),
      required: asked,
      margin: least ? (found - rule.value) / rule.value : marginOf(found, rule.value),
    }),
  ];
}

/** s: hours that were written and read again are the same. */
const HAIR = 1e-3;

const amountOf = (of: keyof Hours, value: number): Amount => amount(value, of === 'days' ? 'count' : 'time');

/** After a turn of the most hours on duty; where no such limit stands, after any. Who rested as long needs not say. */
function afterFullTurn({ restAfterFullTurn: rule, mostOnDuty }: HostRules, worker: AtWork): Finding[] {
  if (!rule) return [];
  const { turnBefore, rest } = worker.said?.hours ?? {};
  const full =
    mostOnDuty === undefined || (turnBefore !== undefined && turnBefore >= mostOnDuty.value - HAIR);
  if (full) return against({ name: 'restAfterFullTurn', rule, of: 'rest', least: true }, worker);
  if (turnBefore !== undefined || (rest !== undefined && rest >= rule.value - HAIR)) return [];
  return against({ name: 'restAfterFullTurn', rule, of: 'turnBefore', least: true }, worker);
}
