/** Which kinds of couplers the host's sheet takes. */
import type { OutingContext } from '../../outing/open.ts';
import { sameKind, tellsKind } from '../../things/coupler/linked.ts';
import type { Finding } from '../finding.ts';
import { makeFinding } from '../make.ts';

/** One line for the train of those of another kind, and one of those of which nobody wrote the kind. */
export function otherKinds({ outing }: OutingContext): Finding[] {
  const rule = outing.host.couplerKinds;
  if (!rule) return [];
  const ends = outing.train.vehicles.flatMap((v) =>
    (['front', 'rear'] as const).map((end) => ({ v, end, type: v[end].type, said: tellsKind(v[end]) })),
  );
  const unsaid = ends.filter(({ said }) => !said);
  const other = ends.filter(({ type, said }) => said && !rule.value.some((kind) => sameKind(kind, type)));
  const { source } = rule;
  const namesOf = (of: typeof ends): string => [...new Set(of.map(({ v }) => v.name))].join(', ');
  return [
    ...other.slice(0, 1).map(({ v, end, type }) =>
      makeFinding('coupler-kind-refused', 'forbids', 'host', {
        where: { vehicle: v.id },
        facts: { end, kind: type, kinds: rule.value.join(', '), others: other.length - 1 },
        source,
      }),
    ),
    ...unsaid.slice(0, 1).map(({ v }) =>
      makeFinding('coupler-kind-unknown', 'unknown', 'host', {
        where: { vehicle: v.id },
        facts: { vehicles: namesOf(unsaid), kinds: rule.value.join(', ') },
        measure: 'coupling.type',
        source,
      }),
    ),
  ];
}
