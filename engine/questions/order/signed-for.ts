/** Whether what somebody is signed off for is what this train and line are, by somebody whom this host accepts. */
import { nameOfLine } from '../../outing/moves.ts';
import type { Outing } from '../../outing/types.ts';
import type { SignedFor } from '../../things/duty.ts';
import type { InDateRule, Shown } from '../../things/in-date.ts';
import { driverReach } from '../../things/train/crew.ts';
import type { Vehicle } from '../../things/vehicle/types.ts';

/** A hair of a millimetre: the same gauge written in inches and in millimetres. */
const SAME_GAUGE = 0.001;

/** What of a sign-off does not fit, or of which nobody can tell. */
export interface Unfit {
  readonly fits: 'no' | 'unknown';
  readonly why: 'line' | 'gauge' | 'engine' | 'weight' | 'power' | 'by';
  readonly engine?: Vehicle;
}

/** Whose papers count here is the host's to say; of one that nobody says who gave nobody can tell. */
export function unaccepted({ by: accepted }: InDateRule, { by }: Shown): Unfit | undefined {
  if (!accepted || (by !== undefined && accepted.includes(by))) return undefined;
  return { fits: by === undefined ? 'unknown' : 'no', why: 'by' };
}

/** Of two the one that is in the way for certain. */
export const worse = (a: Unfit | undefined, b: Unfit | undefined): Unfit | undefined =>
  a?.fits === 'no' ? a : b?.fits === 'no' ? b : (a ?? b);

/**
 * The worst of what does not fit; undefined: it is for this train here.
 * @param driver id of the rider who drives; absent: the sign-off is not a driver's, and engines are no matter of it
 */
export function unfit(signed: SignedFor, outing: Outing, driver?: string): Unfit | undefined {
  const { line } = outing;
  if (signed.line !== undefined && signed.line !== nameOfLine(outing)) return { fits: 'no', why: 'line' };
  if (signed.gauge !== undefined && Math.abs(signed.gauge - line.gauge) > SAME_GAUGE)
    return { fits: 'no', why: 'gauge' };
  if (driver === undefined) return undefined;
  const found = enginesOf(outing, driver).flatMap((engine) => unfitEngine(signed, engine) ?? []);
  return found.find(({ fits }) => fits === 'no') ?? found[0];
}

function unfitEngine({ engines, heaviest, powers }: SignedFor, engine: Vehicle): Unfit | undefined {
  if (engines && !engines.includes(engine.name)) return { fits: 'no', why: 'engine', engine };
  if (heaviest !== undefined && engine.tare.high > heaviest + 1e-6)
    return { fits: 'no', why: 'weight', engine };
  if (!powers || (engine.power !== undefined && powers.includes(engine.power))) return undefined;
  return { fits: engine.power === undefined ? 'unknown' : 'no', why: 'power', engine };
}

/** Those within reach of whoever drives; within nobody's reach, every engine of the train. */
function enginesOf(outing: Outing, driver: string): Vehicle[] {
  const { vehicles } = outing.train;
  const own = outing.riders.filter(({ id }) => id === driver);
  const reach = driverReach({ train: outing.train, riders: own });
  const engines = vehicles.filter(({ role }) => role === 'engine');
  const within = own.some(({ vehicle }) => vehicle !== undefined)
    ? engines.filter((v) => reach.has(vehicles.indexOf(v)))
    : [];
  return within.length > 0 ? within : engines;
}
