/** Weather and night by the host's rules, and the tried stop that a host asks for. */
import { describe, expect, it } from 'vitest';
import { openOuting } from '../../../engine/outing/open.ts';
import type { Conditions, HostRules } from '../../../engine/outing/types.ts';
import { askWeather } from '../../../engine/questions/host/weather.ts';
import { askPractice } from '../../../engine/questions/practice/ask.ts';
import { altered, hostSays, rider, rule, withHost } from '../../support/rules.ts';

const told = (host: Partial<HostRules>, sky: Partial<Conditions>): string[] => {
  const of = withHost(1, host);
  return askWeather({ ...of, conditions: { ...of.conditions, night: false, ...sky } }).map(
    ({ severity, code }) => `${severity} ${code}`,
  );
};

describe('the host’s weather', () => {
  it.each([
    [{ lightningStops: rule(true) }, { lightning: true }, ['forbids lightning-about']],
    [{ lightningStops: rule(true) }, { lightning: false }, []],
    [{ lightningStops: rule(true) }, {}, ['notes weather-not-said']],
    [{ lightningStops: rule(false) }, { lightning: true }, []],
    [{ mostWind: rule(10) }, { wind: 10 }, []],
    [{ mostWind: rule(10) }, { wind: 10.1 }, ['forbids too-windy']],
    [{ mostWind: rule(10) }, {}, ['notes weather-not-said']],
    [{ mostWind: rule(10) }, { crosswind: 10.1 }, ['forbids too-windy']],
    // What blows across says nothing of what blows along.
    [{ mostWind: rule(10) }, { crosswind: 3 }, ['notes weather-not-said']],
    [{ mostHeat: rule(308.15) }, { temperature: 308.15 }, []],
    [{ mostHeat: rule(308.15) }, { temperature: 308.2 }, ['forbids too-hot']],
    [{ mostHeat: rule(308.15) }, {}, ['notes weather-not-said']],
    [{ runsAtNight: rule(false) }, { night: true }, ['forbids no-running-at-night']],
    [{ runsAtNight: rule(false) }, {}, []],
    [{ runsAtNight: rule(true) }, { night: true }, []],
    [{}, { lightning: true, wind: 40, temperature: 330, night: true }, []],
  ] as const)('%j on a day of %j', (host, sky, found) => expect(told(host, sky)).toEqual(found));
});

describe('a stop tried first', () => {
  const tried = (host: Partial<HostRules>, brakeTried?: boolean, of = withHost(1, host)) => {
    const { brakeTried: _, ...rest } = of.conditions;
    const conditions = brakeTried === undefined ? rest : { ...rest, brakeTried };
    return askPractice(openOuting({ ...of, conditions }))
      .filter(({ code }) => code === 'brake-not-tried')
      .map(({ severity, source }) => `${severity} ${source}`);
  };
  it('is asked by the trade, and by a host that asks for it before anybody gets on', () => {
    expect([tried({}, true), tried({}, false), tried({})]).toEqual([
      [],
      ['limits common practice, no source'],
      ['notes common practice, no source'],
    ]);
    const asks = { stopTried: rule(true) };
    expect([tried(asks, true), tried(asks, false), tried(asks)]).toEqual([
      [],
      ['forbids rule book, p. 3'],
      ['unknown rule book, p. 3'],
    ]);
    expect(tried({ stopTried: rule(false) })).toEqual(['notes common practice, no source']);
  });
  it('is asked before a borrowed engine leaves, and of no borrowed car', () => {
    const lent = (index: number, brakeTried?: boolean) =>
      tried({}, brakeTried, altered(withHost(1, {}), index, { borrowed: true }));
    expect([lent(0, true), lent(0, false), lent(0)]).toEqual([
      [],
      ['forbids common practice, no source'],
      ['unknown common practice, no source'],
    ]);
    expect(lent(1)).toEqual(['notes common practice, no source']);
  });
});

describe('a guard at night', () => {
  const found = (night: boolean, host: Partial<HostRules>, riders = withHost(1, {}).riders) => {
    const of = withHost(1, host, { riders });
    return hostSays({ ...of, conditions: { ...of.conditions, night } }).map(({ code }) => code);
  };
  const rides = [rider('g', '1', { duty: 'guard' })];
  it('rides after dark where the host says so, however short the train', () => {
    const asks = { guardAtNight: rule(true) };
    expect(found(true, asks)).toEqual(['no-guard-at-night']);
    expect(found(false, asks)).toEqual([]);
    expect(found(true, { guardAtNight: rule(false) })).toEqual([]);
    expect(found(true, asks, rides)).toEqual([]);
  });
});
