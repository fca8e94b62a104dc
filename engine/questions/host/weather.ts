/** Weather and night by the host's rules, as far as the day states them; what it does not state is said. */
import { amount } from '../../base/quantity.ts';
import type { Outing } from '../../outing/types.ts';
import type { Finding } from '../finding.ts';
import { makeFinding, marginOf } from '../make.ts';

export const askWeather = (outing: Outing): Finding[] => [
  ...lightning(outing),
  ...wind(outing),
  ...heat(outing),
  ...night(outing),
];

type Sign = 'lightning' | 'wind' | 'heat';

const notSaid = (sign: Sign, measure: string, source: string): Finding[] => [
  makeFinding('weather-not-said', 'notes', 'host', { facts: { sign }, measure, source }),
];

function lightning({ host: { lightningStops: rule }, conditions }: Outing): Finding[] {
  if (!rule?.value || conditions.lightning === false) return [];
  if (conditions.lightning === undefined)
    return notSaid('lightning', 'outing.conditions.lightning', rule.source);
  return [makeFinding('lightning-about', 'forbids', 'host', { source: rule.source })];
}

/** What blows across the line is wind too. */
function wind({ host: { mostWind: rule }, conditions }: Outing): Finding[] {
  if (!rule) return [];
  const blows = [conditions.wind, conditions.crosswind].filter((speed) => speed !== undefined);
  const found = Math.max(...blows);
  if (found > rule.value + 1e-6)
    return [
      makeFinding('too-windy', 'forbids', 'host', {
        found: amount(found, 'speed'),
        required: amount(rule.value, 'speed'),
        margin: marginOf(found, rule.value),
        source: rule.source,
      }),
    ];
  return conditions.wind === undefined ? notSaid('wind', 'outing.conditions.wind', rule.source) : [];
}

function heat({ host: { mostHeat: rule }, conditions: { temperature } }: Outing): Finding[] {
  if (!rule || (temperature !== undefined && temperature <= rule.value + 1e-6)) return [];
  if (temperature === undefined) return notSaid('heat', 'outing.conditions.temperature', rule.source);
  return [
    makeFinding('too-hot', 'forbids', 'host', {
      found: amount(temperature, 'temperature'),
      required: amount(rule.value, 'temperature'),
      source: rule.source,
    }),
  ];
}

function night({ host: { runsAtNight: rule }, conditions }: Outing): Finding[] {
  if (!rule || rule.value || !conditions.night) return [];
  return [makeFinding('no-running-at-night', 'forbids', 'host', { source: rule.source })];
}
