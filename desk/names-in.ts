/** Whose names an outing's paper knows: its vehicles, its line, and who is aboard. */
import { slug } from '../papers/compile/line.ts';
import { meant, sameName } from '../papers/compile/named.ts';

type Json = Readonly<Record<string, unknown>>;

export interface Names {
  readonly isVehicle: (name: string) => boolean;
  readonly isLine: (name: string) => boolean;
  /** By the letters by which the papers tell people apart. */
  readonly isAboard: (name: string) => boolean;
  /** Of those who work the train or stand by to. */
  readonly isCrew: (name: string) => boolean;
}

/** @param paper an outing's with all parts in it */
export function namesIn(paper: Json): Names {
  const vehicles = vehicleNames(paper);
  const riders = (paper['riders'] ?? []) as readonly { readonly name: string }[];
  const aboard = new Set(riders.map(({ name }) => slug(name)));
  const crew = (paper['crew'] ?? []) as readonly { readonly name: string }[];
  const listed = new Set(crew.map(({ name }) => slug(name)));
  const line = (paper['line'] as Json | undefined)?.['name'];
  return {
    isVehicle: (name) => meant(name, vehicles).length > 0,
    isLine: (name) => typeof line === 'string' && sameName(name, line),
    isAboard: (name) => aboard.has(slug(name)),
    isCrew: (name) => listed.has(slug(name)),
  };
}

/** As the outing calls them: those that a count stands for by their numbers. */
function vehicleNames(paper: Json): readonly string[] {
  const members = ((paper['train'] as Json | undefined)?.['vehicles'] ?? []) as readonly {
    readonly name?: string;
    readonly count?: number;
    readonly vehicle: { readonly name: string };
  }[];
  return members.flatMap(({ name, count = 1, vehicle }) => {
    const label = name ?? vehicle.name;
    return count === 1 ? [label] : Array.from({ length: count }, (_, i) => `${label} ${i + 1}`);
  });
}
