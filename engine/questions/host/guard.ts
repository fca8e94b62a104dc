/** A guard rides from so many cars or riders on, and after dark. */
import { amount } from '../../base/quantity.ts';
import type { Outing } from '../../outing/types.ts';
import { isCar } from '../../things/train/cars.ts';
import type { Finding } from '../finding.ts';
import { makeFinding } from '../make.ts';

export function askGuard(outing: Outing): Finding[] {
  const { host, train, riders } = outing;
  if (riders.some(({ duty }) => duty === 'guard')) return [];
  const from = [
    { rule: host.guardFromCars, found: train.vehicles.filter(isCar).length, of: 'cars' },
    { rule: host.guardFromRiders, found: riders.filter(({ duty }) => duty === 'rider').length, of: 'riders' },
  ] as const;
  return [
    ...from.flatMap(({ rule, found, of }) =>
      !rule || found < rule.value
        ? []
        : [
            makeFinding('guard-missing', 'forbids', 'host', {
              found: amount(found, 'count'),
              required: amount(rule.value, 'count'),
              facts: { of },
              source: rule.source,
            }),
          ],
    ),
    ...atNight(outing),
  ];
}

const atNight = ({ host: { guardAtNight: rule }, conditions }: Outing): Finding[] =>
  rule?.value && conditions.night
    ? [makeFinding('no-guard-at-night', 'forbids', 'host', { source: rule.source })]
    : [];
