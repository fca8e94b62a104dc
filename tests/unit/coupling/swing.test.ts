/** What is said of couplers that swing: forbidden, near, asked for, nothing; and what clears it. */

import { describe, expect, it } from 'vitest';
import { familiesFor } from '../../../engine/answer/families.ts';
import { inquire } from '../../../engine/answer/inquiry.ts';
import { isCleared } from '../../../engine/answer/remedies.ts';
import { exact } from '../../../engine/base/quantity.ts';
import { applyChange, type Change } from '../../../engine/outing/change.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import type { Finding } from '../../../engine/questions/finding.ts';
import { swing } from '../../../engine/questions/swing/question.ts';
import { evaluateSum, findSum } from '../../../engine/sums/register.ts';
import { guidesOf } from '../../../engine/things/coupler/bend.ts';
import { angleOfPlay } from '../../../engine/things/coupler/play.ts';
import type { CurveElement } from '../../../engine/things/line/types.ts';
import type { AxleGroup, Coupling, Vehicle } from '../../../engine/things/vehicle/types.ts';
import { tellChange } from '../../../words/change.ts';
import { tellFinding } from '../../../words/finding.ts';
import { factOf } from '../../support/facts.ts';
import { plain } from '../../support/rules.ts';

const arc = (from: number, to: number, radius: number): CurveElement => ({
  from,
  to,
  startCurvature: 1 / radius,
  endCurvature: 1 / radius,
  gaugeWidening: 0,
});
const coupling = (changes: Partial<Coupling> = {}): Coupling => ({
  type: 'knuckle',
  shank: 0.15,
  ...changes,
});
const group = (at: number): AxleGroup => ({
  id: `${at}`,
  name: `${at}`,
  at,
  axles: 2,
  wheelBase: 0.3,
  driven: false,
});

/** A long engine before short cars, all with the same couplers, round one curve. */
function outingOf(on: Coupling, curves = [arc(20, 60, 14)], cars = 2, changes: Partial<Outing> = {}): Outing {
  const base = plain(cars);
  const [length, at] = [
    [3.6, 2],
    [0.9, 0.45],
  ];
  const vehicles = base.train.vehicles.map((v, i): Vehicle => {
    const k = i === 0 ? 0 : 1;
    return { ...v, length: length[k], groups: [group(at[k]), group(length[k] - at[k])], front: on, rear: on };
  });
  return { ...base, line: { ...base.line, curves }, train: { ...base.train, vehicles }, ...changes };
}

const found = (outing: Outing): readonly Finding[] => inquire(outing).of(swing).findings;
/** The play of flanges is listed wherever anything bends. */
const said = (outing: Outing): string[] =>
  found(outing)
    .filter((f) => factOf(f, 'key') !== 'coupler/play')
    .map((f) => `${f.severity} ${f.code}${f.measure === undefined ? '' : ` ${f.measure}`}`);
const most = (outing: Outing): number =>
  Math.max(
    ...inquire(outing)
      .of(swing)
      .data.ends.map((e) => e.needed),
  );
const needed = most(outingOf(coupling()));

describe('swing of couplers', () => {
  it('forbids what asks more than is stated, names the end and the place, and no more beyond it', () => {
    const outing = outingOf(coupling({ swing: exact(needed * 0.99) }));
    expect(said(outing)).toEqual(['forbids coupler-swing-short']);
    const [finding] = found(outing);
    expect(finding.found?.si).toBeCloseTo(needed, 9);
    expect(finding.margin).toBeLessThan(0);
    expect(finding.where.gap).toBe(0);
    expect(finding.where.vehicle).toBe(outing.train.vehicles[0].id);
    expect(factOf(finding, 'end')).toBe('rear');
    // The curve begins at once, and its end lies as sudden behind.
    expect(factOf(finding, 'lie')).toBe('ends');
    const { what, why } = tellFinding(finding, { system: 'imperial', wording: 'us', outing });
    expect(what).toMatch(
      /^The rear coupler of .+ must swing \d+(\.\d)?° toward .+ where a curve begins or ends, at .+; it strikes at/,
    );
    expect(why).toContain('Slower does not help');
  });

  const play = inquire(outingOf(coupling())).of(swing).data.ends[0].play;

  it('notes what is near, and says nothing where there is room', () => {
    const withPlay = needed + play;
    expect(said(outingOf(coupling({ swing: exact(withPlay * 1.05) })))).toEqual([
      'notes coupler-swing-short',
    ]);
    expect(said(outingOf(coupling({ swing: exact(withPlay * 1.2) })))).toEqual([]);
  });

  it('limits what the play of the flanges takes beyond, and wider gauge takes more', () => {
    const outing = outingOf(coupling({ swing: exact(needed + play * 0.9) }));
    expect(said(outing)).toEqual(['limits coupler-swing-short']);
    const [finding] = found(outing);
    expect(finding.found?.si).toBeCloseTo(needed + play, 9);
    expect(finding.sum?.id).toBe('coupler-angle');
    expect(tellFinding(finding, { system: 'imperial', wording: 'us', outing }).why).toContain(
      'play of the flanges',
    );
    const wide = {
      ...outing,
      line: { ...outing.line, curves: outing.line.curves.map((c) => ({ ...c, gaugeWidening: 0.006 })) },
    };
    const [more] = inquire(wide).of(swing).data.ends;
    expect(more.needed).toBeCloseTo(needed, 9);
    expect(more.play / play).toBeCloseTo((0.002032 + 0.006) / 0.002032, 6);
  });

  it('is that of two frames laid aslant by hand', () => {
    // Both guides of each off the middle by p, to opposite sides; pivots and bar from the four points.
    const [own, its] = [
      { guides: 1.2, overhang: 0.4, shank: 0.15 },
      { guides: 0.9, overhang: 0.3, shank: 0.12 },
    ];
    const p = 0.002;
    const slope = (2 * p) / own.guides;
    const pivot = p + slope * (own.overhang - own.shank);
    const other = -(p + ((2 * p) / its.guides) * (its.overhang - its.shank));
    const bar = Math.asin((other - pivot) / (own.shank + its.shank));
    expect(angleOfPlay(own, its, 2 * p)).toBeCloseTo(Math.atan(slope) - bar, 4);
  });

  it('counts the least of what is stated, and side play as the angle that it makes', () => {
    const spread = { ...exact(needed * 1.5), low: needed * 0.9 };
    expect(said(outingOf(coupling({ swing: spread })))).toEqual(['forbids coupler-swing-short']);
    const sidePlay = (angle: number): Outing => outingOf(coupling({ sidePlay: 0.15 * Math.sin(angle) }));
    expect(said(sidePlay(needed * 0.999))).toEqual(['forbids coupler-swing-short']);
    expect(said(sidePlay((needed + play) * 1.2))).toEqual([]);
  });

  it('asks for the swing only beyond what the stiffest usual coupler gives, and lists that it stood in', () => {
    expect(said(outingOf(coupling()))).toContain('unknown coupler-swing-unknown coupling.swing');
    // What some usual coupler gives is pushed round by hand first.
    const { low, high } = outingOf(coupling()).assumed.coupler.swing;
    const between = outingOf(coupling(), [arc(20, 60, 40)]);
    expect(most(between)).toBeGreaterThan(low);
    expect(most(between)).toBeLessThan(high);
    expect(said(between)).toContain('limits coupler-swing-unknown coupling.swing');
    const gentle = outingOf(coupling(), [arc(20, 60, 90)]);
    expect(most(gentle)).toBeLessThan(gentle.assumed.coupler.swing.low);
    expect(found(gentle).map((f) => [f.severity, factOf(f, 'key')])).toEqual([
      ['assumed', 'coupler/swing'],
      ['assumed', 'coupler/play'],
    ]);
    expect(said(outingOf(coupling(), []))).toEqual([]);
  });

  it('never forbids by a shank that nobody stated: it asks, and takes short ones', () => {
    const { shank: _, ...without } = coupling({ swing: exact(needed) });
    const outing = outingOf(without);
    expect(most(outing)).toBeGreaterThan(needed);
    expect(said(outing)).toContain('unknown coupler-swing-unknown coupling.shank');
    const { swing: _s, ...play } = { ...without, sidePlay: 0.02 };
    expect(said(outingOf(play))).toContain('unknown coupler-swing-unknown coupling.shank');
  });

  it('has it behind what the play limits and what is near too: in one curve the angle is short by just the play', () => {
    const circle = (on: Coupling): Outing => {
      const outing = outingOf(on);
      const curves = [arc(0, outing.line.length, outing.line.length / (2 * Math.PI))];
      return { ...outing, line: { ...outing.line, loop: true, curves } };
    };
    const [end] = inquire(circle(coupling())).of(swing).data.ends;
    expect(end.lie).toBe('curve');
    for (const swings of [end.needed + 0.9 * end.play, 1.05 * (end.needed + end.play)]) {
      const [{ sum, found: told }] = found(circle(coupling({ swing: exact(swings) })));
      expect(sum?.differs).toBe('play');
      const outcome = evaluateSum(findSum('coupler-angle')!, sum!.inputs);
      expect((outcome.ok ? outcome.values['angle'] : 0) + end.play).toBeCloseTo(told!.si, 6);
    }
    for (const swings of [needed + 0.9 * play, 1.05 * (needed + play)])
      expect(found(outingOf(coupling({ swing: exact(swings) })))[0].sum?.id).toBe('coupler-angle');
  });

  it('has the closed form behind it, of the curve that is sharpest under the two', () => {
    const outing = outingOf(coupling({ swing: exact(0.01) }));
    const [finding] = found(outing);
    const inputs = finding.sum?.inputs ?? {};
    expect(finding.sum).toMatchObject({ id: 'coupler-angle', differs: 'throughout' });
    expect(inputs['radius']).toBeCloseTo(14, 9);
    const sum = findSum('coupler-angle');
    const outcome = sum && evaluateSum(sum, inputs);
    const angle = outcome?.ok ? outcome.values['angle'] : 0;
    expect(angle).toBeGreaterThan(0.5 * needed);
    expect(angle).toBeLessThan(needed);
  });

  it('is the same on the reversed line with the train turned', () => {
    const outing = outingOf(coupling({ swing: exact(needed * 0.99) }));
    expect(most({ ...outing, direction: 'reverse' })).toBeCloseTo(needed, 5);
  });

  it('is held by the driving wheels of an engine whose end trucks swing aside', () => {
    const driven = { ...group(1.5), wheelBase: 0.8, driven: true };
    expect(guidesOf({ groups: [group(0.4), driven, group(2.8)] })).toEqual([1.1, 1.9]);
    expect(guidesOf({ groups: [group(0.4), driven] })).toEqual([0.4, 1.5]);
    expect(guidesOf({ groups: [driven] })).toEqual([1.1, 1.9]);
  });
});

describe('what clears it', () => {
  const clearing = (outing: Outing): Change[] => {
    const [finding] = found(outing);
    return familiesFor(outing, finding)
      .flatMap((f) => f.changes)
      .filter((c) => isCleared(finding, inquire(applyChange(outing, c))));
  };

  it('is a longer bar, said in words, and never a lower speed', () => {
    const outing = outingOf(coupling({ swing: exact(needed * 0.9) }), undefined, 1);
    const changes = clearing(outing);
    const bar = changes.find((c) => c.kind === 'longer-coupling');
    expect(bar && tellChange(bar, { system: 'imperial', wording: 'us', outing })).toMatch(
      /^fit a bar .+ in longer behind vehicle 1$/,
    );
    const longer = bar && applyChange(outing, bar);
    expect(longer && most(longer)).toBeLessThanOrEqual(needed * 0.9);
    expect(changes.map((c) => c.kind)).not.toContain('slower');
    const [finding] = found(outing);
    const slower = applyChange(outing, { kind: 'slower-everywhere', speed: 0.5 });
    expect(isCleared(finding, inquire(slower))).toBe(false);
  });

  it('is another neighbour: a car that overhangs as the engine does between it and the short ones', () => {
    // Where a curve begins at once the neighbour still stands on the straight, and is no help.
    const eased = [
      { from: 12, to: 20, startCurvature: 0, endCurvature: 1 / 14, gaugeWidening: 0 },
      arc(20, 60, 14),
      { from: 60, to: 68, startCurvature: 1 / 14, endCurvature: 0, gaugeWidening: 0 },
    ];
    const asks = most(outingOf(coupling(), eased));
    const outing = outingOf(coupling({ swing: exact(asks * 0.9) }), eased);
    const [engine, a, b] = outing.train.vehicles;
    const wide = coupling({ swing: exact(1) });
    const suits: Vehicle = {
      ...b,
      length: 3.2,
      groups: [group(1.1), group(2.1)],
      front: wide,
      rear: wide,
    };
    const mixed = { ...outing, train: { ...outing.train, vehicles: [engine, a, suits] } };
    expect(clearing(mixed).map((c) => c.kind)).toContain('order');
  });
});
