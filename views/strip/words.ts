/** The strip's words and figures in a voice. */
import { printQuantity } from '../../units/index.ts';
import { tellRail } from '../../words/finding.ts';
import { reasonWords } from '../../words/findings/speed.ts';
import { chainage, distance, say, trade, type Voice } from '../../words/voice.ts';
import { tellLightWheel } from '../../words/wheels.ts';
import type { StripWords } from './model.ts';
import { roundFigures } from './scale.ts';

export function stripWords(voice: Voice): StripWords {
  const imperial = voice.system === 'imperial';
  const [long, fast] = imperial ? [0.3048, 0.44704] : [1, 1 / 3.6];
  const even = (from: number, to: number, count: number, unit: number): number[] =>
    roundFigures(from / unit, to / unit, count).map((n) => n * unit);
  return {
    chainage: (m) => chainage(voice, m),
    length: (m) => distance(voice, m, 'up'),
    speed: (v) => say(voice, { si: v, kind: 'speed' }),
    speedTick: (v) => `${Math.round(v / fast)}`,
    speedUnit: imperial ? 'mph' : 'km/h',
    speedTicks: (most) => even(0, most, 4, fast).filter((v) => v > 0),
    chainageTicks: (from, to, count) => even(from, to, count, long),
    grade: (rise) => {
      const arrow = rise > 0 ? '↗' : '↘';
      return voice.wording === 'uk'
        ? `${arrow} ${printQuantity(Math.abs(rise), 'grade', { system: voice.system, unit: '1 in n' })}`
        : `${arrow} ${(Math.abs(rise) * 100).toFixed(1)} %`;
    },
    radius: (m) => `R ${distance(voice, m, 'down')}`,
    reason: (reason) => shortReason[reason.kind] ?? reasonWords(reason.kind),
    place: (place) => place.name,
    rail: (state) => `${tellRail(state)} rail`,
    lightest: (worst) => `lightest wheel: ${tellLightWheel(voice, worst)}`,
    level: 'level',
    straight: 'straight',
    left: 'left',
    right: 'right',
    heightsTimes: `${trade(voice.wording, 'grade')}s drawn ×`,
    likely: 'likely',
    cautious: 'cautious stop',
    gap: 'gap',
    never: 'does not stop',
  };
}

/** Reasons short enough to stand along the curve. */
const shortReason: Readonly<Record<string, string>> = {
  'stopping-sight': 'sight',
  'stopping-signal': 'signal',
  'stopping-assumed-sight': 'sight not stated',
  'stopping-end': 'end of line',
  'host-line': "host's limit",
  'host-place': "host's limit here",
  vehicle: 'vehicle',
  curve: 'curve',
  balance: 'balance',
  flange: 'flange',
  agreed: 'agreed',
  'looked-no-higher': 'no limit looked above this',
  'cannot-stop': 'cannot stop',
};
