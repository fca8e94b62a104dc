/** What a record of an incident or of a temporary limit says, from what somebody writes and the outing it was on. */
import type { Outing } from '../../engine/outing/types.ts';
import { slug } from '../../papers/compile/line.ts';
import type { Json } from '../../records/record.ts';
import { parseQuantity, printQuantity, type System } from '../../units/index.ts';

export interface Written {
  readonly what: string;
  readonly facts: string;
  readonly line?: string;
  readonly at?: string;
  readonly place?: string;
  readonly direction?: string;
  readonly vehicle?: string;
  readonly axle?: number;
  readonly side?: string;
  readonly speed?: string;
  readonly rail?: string;
  readonly hurt?: string;
  readonly departure?: string;
}

/** What does not fit the outing that it is said of. */
export class NoSuch extends Error {}

const metres = (text: string): number | undefined => {
  const read = parseQuantity(text, 'length');
  return read.ok ? read.si : undefined;
};

/** On the line, or refused: a record cannot be altered. What is no length its schema refuses. */
export function onLine(text: string, { line }: Pick<Outing, 'line'>, system: System): string {
  const at = metres(text);
  if (at !== undefined && (at < 0 || at > line.length + 0.3))
    throw new NoSuch(
      `${text} is beyond the end of ${line.name}, ${boards(line.length, system)} from its start`,
    );
  return text;
}

const boards = (at: number, system: System): string =>
  printQuantity(at, 'length', { system, unit: { imperial: 'ft', metric: 'm' }[system], digits: 1 });

/** Chainage of a place of the line, as its boards would say it; undefined: none is called so. */
export const placeAt = ({ line }: Pick<Outing, 'line'>, name: string, system: System): string | undefined => {
  const place = line.places.find((one) => slug(one.name) === slug(name));
  return place && boards(place.at, system);
};

/** @param outing that it was on, if one is at hand: line, way and chainage of a landmark come from it */
export function incidentContent(written: Written, outing: Outing | undefined, system: System): Json {
  const said = Object.fromEntries(
    Object.entries(written).filter(([, value]) => value !== undefined && value !== ''),
  ) as unknown as Written;
  if (!outing || (said.line !== undefined && said.line !== outing.line.name)) return { ...said };
  const { vehicle, place, direction = outing.direction } = said;
  const vehicles = outing.train.vehicles.map(({ name }) => name);
  if (vehicle !== undefined && !vehicles.includes(vehicle))
    throw new NoSuch(`${vehicle} is no vehicle of ${outing.train.name}; it has ${vehicles.join(', ')}`);
  const at = said.at ?? (place === undefined ? undefined : placeAt(outing, place, system));
  return {
    ...said,
    line: outing.line.name,
    direction,
    ...(at === undefined ? {} : { at: onLine(at, outing, system) }),
  };
}

export interface WrittenLimit {
  readonly line: string;
  readonly from: string;
  readonly to: string;
  /** Absent: shut. */
  readonly speed?: string;
  readonly why: string;
  /** Record that it comes from. */
  readonly because?: string;
}

export function restrictionContent(written: WrittenLimit, outing: Outing | undefined, system: System): Json {
  const { line, from, to } = written;
  if (outing && line === outing.line.name) for (const end of [from, to]) onLine(end, outing, system);
  return { ...written };
}
