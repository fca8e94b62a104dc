/** Whether the records were asked for an answer, and what of them is in force in it: stands over the answer. */
import { restrictionsHere } from '../../engine/outing/restricted.ts';
import type { Outing } from '../../engine/outing/types.ts';

/** What of the records stands in an outing: of its line, its vehicles, its people and the club. */
export interface InForce {
  readonly closures: number;
  readonly limits: number;
  readonly defects: number;
  readonly certificates: number;
}

export type Sight =
  | { readonly store: string; readonly asked: false }
  | ({
      readonly store: string;
      readonly asked: true /** Records that count for nothing. */;
      readonly amiss: number;
    } & InForce);

export function inForce(outing: Outing): InForce {
  const here = restrictionsHere(outing);
  const closures = here.filter(({ speed }) => speed === undefined).length;
  const names = [outing.line.name, ...outing.train.vehicles.map(({ name }) => name)];
  return {
    closures,
    limits: here.length - closures,
    defects: (outing.defects ?? []).filter(({ of, ground }) => ground !== undefined || names.includes(of))
      .length,
    certificates: outing.shown?.length ?? 0,
  };
}

/** @param count records that are not as they were written */
export const amissWords = (count: number): string =>
  `SOMETHING IS AMISS in the records (${count}): what it hides counts for nothing in this answer.`;

const some = (count: number, one: string): readonly string[] =>
  count === 0 ? [] : [`${count} ${one}${count === 1 ? '' : 's'}`];

export function asked({
  store,
  amiss,
  closures,
  limits,
  defects,
  certificates,
}: Sight & { asked: true }): string {
  const list = [
    ...some(closures, 'closure'),
    ...some(limits, 'temporary limit'),
    ...some(defects, 'open defect'),
    ...some(certificates, 'certificate'),
  ];
  const trouble = amiss === 0 ? '' : ` ${amissWords(amiss)} heedway verify ${store} tells what.`;
  return `Records asked: ${store}. In force here: ${list.join(', ') || 'nothing'}.${trouble}`;
}

export const NOT_ASKED = 'RECORDS NOT ASKED';

export const notAsked = (store: string): string =>
  `${NOT_ASKED}: ${store} lies here, and no temporary limit, closure, defect or certificate of it is in this answer.`;
