/** Incidents, measures, temporary limits, how long records are kept: in words that name what was seen and nobody's doing. */

import type { Content } from '../../papers/record/fields.ts';
import type { Hurt, IncidentKind } from '../../papers/record/incident-fields.ts';
import { nameIn } from '../../records/names.ts';
import type { Named } from '../../records/store.ts';
import { tellRail } from '../rails.ts';

/** What is amiss with it until somebody has looked. */
export const offTheRails = ({ whole }: { readonly whole: boolean }): string =>
  whole
    ? 'something left the rails there, and nobody has gone through the track since by a list for after a derailment'
    : 'it left the rails, and nobody has gone through it since by a list for after a derailment';

export const incidentWords: Readonly<Record<IncidentKind, string>> = {
  derailment: 'derailment',
  'near-miss': 'near miss',
  uncoupling: 'uncoupling',
  runaway: 'runaway',
  burn: 'burn',
  fall: 'fall',
  collision: 'collision',
  'track-defect': 'track defect',
  complaint: 'complaint',
};

export const hurtWords: Readonly<Record<Hurt, string>> = {
  nobody: 'nobody was hurt',
  'first aid': 'first aid was given',
  doctor: 'somebody was taken to a doctor',
  hospital: 'somebody was taken to a hospital',
  death: 'somebody died',
};

const short = (hash: string): string => hash.slice(0, 8);

/** What a record says, before or after its figures were read. */
type Loose<T> = { readonly [K in keyof T]: K extends 'at' | 'speed' | 'from' | 'to' ? T[K] | string : T[K] };

/** "at 380 ft, near Mill Lane crossing, running forward". */
export function whereabouts({ line, at, place, direction }: Loose<Partial<Content<'incident'>>>): string {
  return [
    ...(at === undefined ? [] : [`at ${at}`]),
    ...(place === undefined ? [] : [`near ${place}`]),
    ...(line === undefined ? [] : [`on ${line}`]),
    ...(direction === undefined ? [] : [`running ${direction}`]),
  ].join(', ');
}

/** "Car 2, axle 1, left". */
const wheel = ({ vehicle, axle, side }: Loose<Partial<Content<'incident'>>>): string =>
  [vehicle, ...(axle === undefined ? [] : [`axle ${axle}`]), side]
    .filter((word) => word !== undefined)
    .join(', ');

export const speedOrShut = (speed: number | string | undefined): string =>
  speed === undefined ? 'shut' : `no faster than ${speed}`;

type Tell<
  K extends 'incident' | 'measure' | 'measured' | 'restriction' | 'lifted' | 'retention' | 'removal',
> = {
  readonly [Q in K]: (content: Content<Q>, names: readonly Named[]) => string;
};

export const tellIncidents: Tell<
  'incident' | 'measure' | 'measured' | 'restriction' | 'lifted' | 'retention' | 'removal'
> = {
  incident: (said) =>
    [
      incidentWords[said.what],
      whereabouts(said),
      wheel(said),
      ...(said.speed === undefined ? [] : [`at ${said.speed}`]),
      ...(said.rail === undefined ? [] : [`${tellRail(said.rail)} rail`]),
      ...(said.hurt === undefined ? [] : [hurtWords[said.hurt]]),
    ]
      .filter((part) => part !== '')
      .join('; ')
      .concat(`: ${said.facts}`),
  measure: ({ incident, what, by, person }, names) =>
    `to be done after ${short(incident)}${by === undefined ? '' : ` by ${by}`}${person === undefined ? '' : ` (${nameIn(names, person)})`}: ${what}`,
  measured: ({ measure, what }) => `done, of ${short(measure)}: ${what}`,
  restriction: ({ line, from, to, speed, why }) =>
    `${line} from ${from} to ${to} ${speedOrShut(speed)}, until it is lifted: ${why}`,
  lifted: ({ restriction, why, person }, names) =>
    `lifted, ${short(restriction)}${person === undefined ? '' : ` by ${nameIn(names, person)}`}: ${why}`,
  retention: ({ kind, keep, source }) => `records of kind ${kind} are kept for ${keep} (${source})`,
  removal: ({ removed }) =>
    `${removed.length} ${removed.length === 1 ? 'record' : 'records'} removed, since their time had ended: ${removed
      .slice(0, 5)
      .map(({ hash }) => short(hash))
      .join(', ')}${removed.length > 5 ? ' …' : ''}`,
};

/** Words that say whose doing it was, where only what was seen belongs. */
const BLAME =
  /\b(blame\w*|careless\w*|negligen\w*|reckless\w*|stupid\w*|incompeten\w*|guilty|fault of|(?:his|her|their|whose|driver['’]s|guard['’]s) fault|should have known|failed to pay)\b/i;

/** The first such word; a complaint is taken down as it is made. */
export const blameIn = (what: IncidentKind, facts: string): string | undefined =>
  what === 'complaint' ? undefined : BLAME.exec(facts)?.[0];
