/** Stops as they were measured beside what the papers had said of them. */
import { distance, say, type Voice } from '../voice.ts';

interface Predicted {
  readonly speed: number;
  readonly measured: number;
  readonly likely: number;
  readonly careful: number;
  readonly inside: boolean;
}

type Shown = Pick<Voice, 'system'>;

/** "10 of 12 stops were no longer than the careful figure." */
export function predictedWords(stops: readonly Predicted[]): string {
  const inside = stops.filter((s) => s.inside).length;
  const told = `${inside} of ${stops.length} ${stops.length === 1 ? 'stop was' : 'stops were'} no longer than the careful figure of the papers`;
  return inside === stops.length
    ? `${told}.`
    : `${told}; of a hundred no more than one should be longer: look at the papers, and at how well speed and place were read.`;
}

/** One stop in a line. */
export const stopWords = ({ speed, measured, likely, careful, inside }: Predicted, shown: Shown): string =>
  `From ${say(shown, { si: speed, kind: 'speed' })}: ${distance(shown, measured, 'nearest')} measured; likely ${length(likely, shown)}, careful ${length(careful, shown)}${inside ? '' : ': LONGER than careful'}.`;

const length = (si: number, shown: Shown): string =>
  Number.isFinite(si) ? distance(shown, si, 'up') : 'never';

/** Undefined where every brake was put on. */
export const withWords = (brakes: readonly string[] | undefined): string | undefined =>
  brakes === undefined
    ? undefined
    : `The stops were made with ${brakes.map((b) => b.replace(/-/g, ' ')).join(' and ')} alone; the papers' figures are with all brakes that the driver has, so a stop with all is shorter than these.`;
