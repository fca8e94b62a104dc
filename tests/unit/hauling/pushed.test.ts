/** A surge brake with an engine behind it comes on as it is pushed; with the engine in front it does not. */
import { describe, expect, it } from 'vitest';
import { applyChange } from '../../../engine/outing/change.ts';
import { openOuting } from '../../../engine/outing/open.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import { surgePushed } from '../../../engine/questions/haul/pushed.ts';
import { haulRemedies } from '../../../engine/questions/haul/remedies.ts';
import { brakedTrain } from '../../support/braked-trains.ts';
import { plain } from '../../support/rules.ts';

const [engine, one, two] = brakedTrain('surge', 2).vehicles;
const [, air] = brakedTrain('automatic-air', 1).vehicles;
const of = (...vehicles: Outing['train']['vehicles']): Outing => {
  const base = plain(2);
  const named = vehicles.map((v, i) => ({ ...v, id: `v${i}`, name: `V${i}` }));
  return { ...base, train: { ...base.train, vehicles: named } };
};
const said = (outing: Outing): string[] =>
  surgePushed(openOuting(outing)).map((f) => `${f.severity} ${f.code} ${Object.values(f.facts).join()}`);

describe('a surge brake', () => {
  it('is pulled by an engine in front', () => expect(said(of(engine, one, two))).toEqual([]));
  it('is pushed by one behind', () =>
    expect(said(of(one, two, engine))).toEqual(['limits surge-pushed V0, V1']));
  it('is pushed by a second engine behind it, whatever leads', () =>
    expect(said(of(engine, one, engine, two))).toEqual(['limits surge-pushed V1']));
  it('is another matter than air', () => expect(said(of(air, engine))).toEqual([]));
  it('is cleared by the engine in front', () => {
    const outing = of(one, two, engine);
    const [finding] = surgePushed(openOuting(outing));
    const [family] = haulRemedies['surge-pushed']?.(outing, finding) ?? [];
    expect(said(applyChange(outing, family.changes[0]))).toEqual([]);
  });
});
