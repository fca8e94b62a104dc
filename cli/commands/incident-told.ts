/** heedway incident patterns and duties: whether they gather somewhere, and whom laws may ask to be told. */
import { ASK, dutiesFor } from '../../desk/incident/duties.ts';
import { type Hurt, hurts, type IncidentKind, incidentKinds } from '../../papers/record/incident-fields.ts';
import { patterns } from '../../records/patterns.ts';
import { CAVEAT, tellGround, tellLook } from '../../words/records/patterns.ts';
import { type Options, type Outcome, UsageFault } from '../command.ts';
import { quantityOf } from '../open.ts';
import { inStore, lookAt, type StoreOptions } from '../records.ts';
import { wrap } from '../screen.ts';

export interface PatternOptions extends Options, StoreOptions {
  readonly kind: string;
  readonly within?: string;
  readonly firstDays: string;
}

export function kindOf(kind: string): IncidentKind {
  if (incidentKinds.includes(kind as IncidentKind)) return kind as IncidentKind;
  throw new UsageFault(`found ${kind}; expected ${incidentKinds.join(', ')}`);
}

export function hurtOf(hurt: string): Hurt {
  if (hurts.includes(hurt as Hurt)) return hurt as Hurt;
  throw new UsageFault(`--hurt: found ${hurt}; expected ${hurts.join(', ')}`);
}

export const told = (options: PatternOptions): Promise<Outcome> =>
  inStore(options, async (store) => {
    const kind = kindOf(options.kind);
    const within = options.within ?? { imperial: '100 ft', metric: '30 m' }[options.units];
    const firstDays = Number(options.firstDays);
    if (!Number.isInteger(firstDays) || firstDays < 1)
      throw new UsageFault(`--first-days: found ${options.firstDays}; expected how many days`);
    const asked = { within: quantityOf(within, 'length', '--within'), firstDays };
    const all = patterns((await lookAt(store)).entries, kind, asked);
    const looks = all.looks.map((look) => tellLook(look, all.looked, { system: options.units }));
    return {
      text: [
        ...tellGround(all, within, firstDays),
        ...looks.map(({ where, word, figures, odds }) => `${word}: ${where}: ${figures}; ${odds}.`),
        CAVEAT,
      ]
        .flatMap((line) => wrap(line, '  '))
        .join('\n'),
      json: { ...all, words: looks },
      exit: 0,
    };
  });

export function duties(
  kind: string | undefined,
  options: Options & { country?: string; hurt?: string },
): Outcome {
  const said = {
    ...(kind === undefined ? {} : { what: kindOf(kind) }),
    ...(options.hurt === undefined ? {} : { hurt: hurtOf(options.hurt) }),
  };
  const found = dutiesFor(said, options.country);
  return {
    text: [
      ...wrap(ASK, '  '),
      ...found.flatMap(({ country, where, says, deadline, source }) =>
        wrap(`- ${country} (${where}): ${says} Deadline: ${deadline}. Source: ${source}.`, '  '),
      ),
      ...(found.length === 0 ? ['None of the examples is about that.'] : []),
    ].join('\n'),
    json: found,
    exit: 0,
  };
}
