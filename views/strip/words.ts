/** The strip's words and figures in a voice. */

import { actLine, drivenSpeed } from '../../desk/driven.ts';
import { FOOT } from '../../engine/base/constants.ts';
import { printQuantity } from '../../units/index.ts';
import { reasonWords } from '../../words/findings/speed.ts';
import { tellRail } from '../../words/rails.ts';
import { chainage, distance, trade, type Voice } from '../../words/voice.ts';
import { shareLeft } from '../../words/wheels.ts';
import type { StripWords } from './model.ts';
import { roundFigures } from './scale.ts';

export function stripWords(voice: Voice): StripWords {
  const imperial = voice.system === 'imperial';
  const long = imperial ? FOOT : 1;
  const even = (from: number, to: number, count: number, unit: number): number[] =>
    roundFigures(from / unit, to / unit, count).map((n) => n * unit);
  return {
    chainage: (m) => chainage(voice, m),
    length: (m) => distance(voice, m, 'up'),
    speed: (v) => drivenSpeed(voice, v),
    speedTick: (v) => drivenSpeed(voice, v).replace(/ .*/, ''),
    chainageTicks: (from, to, count) => even(from, to, count, long),
    grade: (rise) => {
      const way = rise > 0 ? 'up' : 'down';
      return voice.wording === 'uk'
        ? `${printQuantity(Math.abs(rise), 'grade', { system: voice.system, unit: '1 in n' })} ${way}`
        : `${(Math.abs(rise) * 100).toFixed(1)} % ${way}`;
    },
    radius: (m) => `${distance(voice, m, 'down').replace('.0 ', ' ')} curve`,
    reason: ({ kind, what }) =>
      kind === 'host-place' && what !== '' ? what : (shortReason[kind] ?? reasonWords(kind)),
    place: (place) => place.name,
    rail: (state) => `${tellRail(state)} rail`,
    // Whose it is stands in the list: beside the strip of a phone there is no room for a name.
    lightest: ({ at, share }) => `lightest wheel: ${shareLeft(share)} left at ${chainage(voice, at)}`,
    level: 'level',
    straight: 'straight',
    left: 'left',
    right: 'right',
    heightsTimes: `${trade(voice.wording, 'grade')}s drawn ×`,
    toStop: (m) => `${distance(voice, m, 'up')} to stop`,
    gapOf: (m) => `gap ${distance(voice, m, 'up')}`,
    act: (point) => actLine(point, voice),
    never: 'does not stop',
  };
}

/** Reasons short enough to stand along the curve. */
const shortReason: Readonly<Record<string, string>> = {
  'stopping-sight': 'sight',
  'stopping-visibility': 'seen today',
  'stopping-signal': 'signal',
  'stopping-assumed-sight': 'sight not stated',
  'stopping-end': 'end of line',
  'host-line': "host's limit",
  'host-place': "host's limit",
  vehicle: 'vehicle',
  curve: 'curve',
  balance: 'balance',
  flange: 'flange',
  agreed: 'agreed',
  temporary: 'temporary limit',
  'looked-no-higher': 'no limit looked above this',
  'cannot-stop': 'cannot stop',
};
