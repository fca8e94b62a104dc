/** What makes the careful stop long, and what would shorten it, in sentences. */
import type { TestKind } from '../../engine/calibrate/tests/index.ts';
import { chainage, distance, inWording, say, type Voice } from '../voice.ts';
import { testNames } from './tests.ts';

/** What caution takes for unlucky. */
export type Lengthens =
  | 'reaction'
  | 'adhesion'
  | 'brakes'
  | 'timing'
  | 'rolling'
  | 'mass'
  | 'grade'
  | 'spot'
  | 'driver'
  | 'wet';

export interface StopPart {
  readonly key: Lengthens;
  /** So much shorter it would be if this alone were no worse than likely, m. */
  readonly adds: number;
}

export interface CarefulStop {
  /** Chainage of the head, m. */
  readonly at: number;
  /** m/s */
  readonly speed: number;
  /** m; Infinity: it does not stop. */
  readonly likely: number;
  readonly careful: number;
  /** The longest first. */
  readonly parts: readonly StopPart[];
}

type Shown = Pick<Voice, 'system' | 'wording'>;

interface Mended {
  readonly what: string;
  /** Which test tells it, or what one does instead. */
  readonly by: TestKind | string;
}

const mended: Readonly<Record<Lengthens, Mended>> = {
  reaction: { what: "the driver's reaction", by: 'stop test from a signal that he does not expect' },
  adhesion: { what: 'how the rail holds', by: 'locked-wheels' },
  brakes: { what: 'the force of the brakes', by: 'brake-pull' },
  timing: { what: 'dead time and build-up of the brakes', by: 'apply-time' },
  rolling: { what: 'rolling resistance', by: 'coast-down' },
  mass: { what: 'what train and riders weigh', by: 'weighing' },
  grade: { what: 'the {grade} that the survey may have missed', by: 'level the steepest stretch' },
  spot: { what: 'a bad spot on the rail', by: 'walk the line, and clean what is greasy or lies in leaves' },
  driver: { what: 'a driver who lets wheels slide', by: 'practise braking without a slide' },
  wet: { what: 'wet brake blocks', by: 'make the stop test in the wet' },
};

const length = (si: number, shown: Shown): string =>
  Number.isFinite(si) ? distance(shown, si, 'up') : 'never';

const carefulWords = ({ speed, at, likely, careful }: CarefulStop, shown: Shown): string =>
  `The longest careful stop, from ${say(shown, { si: speed, kind: 'speed' })} at ${chainage(shown, at)}: ${length(careful, shown)}, where ${length(likely, shown)} is likely.`;

/** So many are told: the rest is little. */
const TOLD = 4;

/** The careful stop, and what it is so long for, a line each with what would shorten it. */
export const longWords = (
  stop: CarefulStop,
  shown: Shown,
): { readonly what: string; readonly parts: readonly string[] } => ({
  what: `${carefulWords(stop, shown)}${stop.parts.length > 0 ? ' What makes it longer than that, each by itself:' : ''}`,
  parts: stop.parts.slice(0, TOLD).map(({ key, adds }) => {
    const { what, by } = mended[key];
    const far = Number.isFinite(adds) ? distance(shown, adds, 'nearest') : 'all of it';
    const how = by in testNames ? testNames[by as TestKind] : by;
    return inWording(`${far} for ${what} (${how})`, shown.wording);
  }),
});

/** "careful stop from 5 mph at 320 ft: 118 ft → 104 ft" */
export const shorterWords = (was: CarefulStop, now: CarefulStop, shown: Shown): string => {
  const [before, after] = [length(was.careful, shown), length(now.careful, shown)];
  return `careful stop from ${say(shown, { si: was.speed, kind: 'speed' })} at ${chainage(shown, was.at)}: ${before === after ? `${before}, as before` : `${before} → ${after}`}`;
};
