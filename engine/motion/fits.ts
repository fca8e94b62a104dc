/** What of a stop was measured together: the brakes' force and times, the reaction, the rolling resistance. */
import { FitDraws } from '../base/fit-draws.ts';
import type { Quantity, SharedFit } from '../base/quantity.ts';
import { type BrakedGroup, forceAtRest } from '../things/brake/force.ts';
import type { LoadedTrain } from '../things/train/loaded.ts';
import type { Own, Scenario } from './scenario.ts';

/** Absent, by vehicle or altogether: not measured with anything else. */
export interface InputFits {
  readonly reaction: SharedFit | undefined;
  /** By vehicle. */
  readonly brake: readonly (SharedFit | undefined)[];
  readonly resistance: readonly (SharedFit | undefined)[];
  /** Dead times and build-ups, with the share that each has in the spread of all. */
  readonly timing: readonly { readonly share: number; readonly fit: SharedFit | undefined }[];
}

export function fitsOf(
  loaded: LoadedTrain,
  groups: readonly BrakedGroup[],
  reaction: Quantity,
): InputFits | undefined {
  const first = loaded.vehicles[0]?.index ?? 0;
  const fits = {
    reaction: reaction.fit,
    brake: loaded.vehicles.map((_, j) => strongest(groups.filter((g) => g.vehicle - first === j))?.block.fit),
    resistance: loaded.vehicles.map((v) => v.vehicle.resistance.rolling.fit),
    timing: timingOf(groups),
  };
  const all = [fits.reaction, ...fits.brake, ...fits.resistance, ...fits.timing.map((t) => t.fit)];
  return all.some((f) => f) ? fits : undefined;
}

const strongest = (groups: readonly BrakedGroup[]): BrakedGroup | undefined =>
  [...groups].sort((a, b) => forceAtRest(b) - forceAtRest(a))[0];

function timingOf(groups: readonly BrakedGroup[]): InputFits['timing'] {
  const terms = groups.flatMap((g) => [
    { fit: g.deadTime.fit, width: forceAtRest(g) * (g.deadTime.high - g.deadTime.low) },
    { fit: g.buildUp.fit, width: (forceAtRest(g) * (g.buildUp.high - g.buildUp.low)) / 2 },
  ]);
  const whole = terms.reduce((sum, { width }) => sum + width, 0);
  return whole > 0 ? terms.map(({ fit, width }) => ({ fit, share: width / whole })) : [];
}

/** Puts what goes together in place of what was drawn of each by itself; all else stays as it was drawn. */
export class StopFits {
  readonly #fits: InputFits;
  readonly #draws: FitDraws;

  constructor(fits: InputFits, seed: number) {
    this.#fits = fits;
    this.#draws = new FitDraws(seed);
  }

  next(scenario: Scenario, own: Own): void {
    const { reaction, brake, resistance, timing } = this.#fits;
    const draws = this.#draws;
    draws.next();
    brake.forEach((fit, j) => {
      if (fit) own.brake[j] = draws.position(fit);
    });
    resistance.forEach((fit, j) => {
      if (fit) own.resistance[j] = draws.position(fit);
    });
    // Later and slower is the unsafe side.
    if (reaction) scenario.reaction = -draws.position(reaction);
    const { timing: drawn } = scenario;
    scenario.timing = timing.reduce(
      (sum, { share, fit }) => sum + share * (fit ? -draws.position(fit) : drawn),
      timing.length > 0 ? 0 : drawn,
    );
  }
}
