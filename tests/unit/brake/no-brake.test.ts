/** A train on which no brake answers the driver may not leave, however level its line. */
import { expect, it } from 'vitest';
import { sentence } from '../../../desk/sentence.ts';
import { answerOnly } from '../../../engine/answer/answer.ts';
import { answerOuting } from '../../../engine/answer/complete.ts';
import type { Answer, CarCount } from '../../../engine/answer/types.ts';
import { exact } from '../../../engine/base/quantity.ts';
import { applyChange } from '../../../engine/outing/change.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import { brakeGearRemedies } from '../../../engine/questions/brakes/gear-remedies.ts';
import type { Finding } from '../../../engine/questions/finding.ts';
import type { BrakeGear } from '../../../engine/things/vehicle/types.ts';
import { tellFinding } from '../../../words/finding.ts';
import { plain, rider } from '../../support/rules.ts';

const codes = (outing: Outing): string[] => answerOnly(outing).findings.map((f) => f.code);
const braked = (keep: boolean): Outing => {
  const outing = plain(2);
  const vehicles = outing.train.vehicles.map((v) => (keep ? v : { ...v, brakes: [] }));
  return { ...outing, train: { ...outing.train, vehicles } };
};

it('holds without any brake', () => {
  expect(codes(braked(false))).toContain('no-brake-answers');
  expect(answerOnly(braked(false)).verdict).toBe('hold');
});

it('does not say so of a train that brakes, nor where a force is only not known', () => {
  expect(codes(braked(true))).not.toContain('no-brake-answers');
  const outing = braked(true);
  const vehicles = outing.train.vehicles.map((v) => ({
    ...v,
    brakes: v.brakes.map(({ rigging: _rigging, force: _force, ...gear }) => gear),
  }));
  expect(codes({ ...outing, train: { ...outing.train, vehicles } })).not.toContain('no-brake-answers');
});

it('offers a lever beside the driver, and the train leaves with it as with any brake of that strength', () => {
  const found = answerOnly(braked(false));
  const offered =
    answerOuting(braked(false), { counts: false }).findings.find((f) => f.code === 'no-brake-answers')
      ?.remedies ?? [];
  expect(offered.map((r) => r.change.kind)).toEqual(['driver-brake']);
  const fitted = applyChange(braked(false), offered[0].change);
  expect(codes(fitted)).not.toContain('no-brake-answers');
  expect([found.verdict, offered[0].verdict]).toEqual(['hold', answerOnly(fitted).verdict]);
  // 15 % of the engine's empty weight, in newtons.
  const [engine] = fitted.train.vehicles;
  expect(engine.brakes.map((b) => b.force?.value)).toEqual([0.15 * engine.tare.value * 9.80665]);
});

it('offers it on the car that the driver sits on where that is the heavier, as in the small gauges', () => {
  const outing = braked(false);
  const [engine, car] = outing.train.vehicles;
  const behind = (tare: number): Outing => ({
    ...outing,
    riders: [rider('d', '1', { vehicle: car.id, duty: 'driver', mass: exact(80) })],
    train: {
      ...outing.train,
      vehicles: outing.train.vehicles.map((v) => (v === engine ? { ...v, tare: exact(tare) } : v)),
    },
  });
  const offered = (of: Outing) =>
    brakeGearRemedies['no-brake-answers']?.(of, {} as Finding).flatMap(({ changes }) => changes);
  const loaded = car.tare.value + 80;
  expect(offered(behind(loaded - 1))).toEqual([
    { kind: 'driver-brake', vehicle: car.id, force: expect.closeTo(0.15 * loaded * 9.80665, 6) },
  ]);
  expect(offered(behind(loaded + 1))).toMatchObject([{ vehicle: engine.id }]);
});

it('says why once, in the sentence under the word: not as the reason of the count again', () => {
  const outing = braked(false);
  const { railState } = outing.conditions;
  const counted = { railState, least: null, by: 'stopped', leastSets: { what: 'no-brake' } } as CarCount;
  const answer = { ...answerOnly(outing), cars: [counted] };
  const told = (of: Answer): string => sentence(of, { system: 'imperial', wording: 'us', outing });
  expect(told(answer)).toBe('The driver has no brake at all; no number of cars.');
  const others = answer.findings.filter((f) => f.code !== 'no-brake-answers');
  expect(told({ ...answer, findings: others })).toMatch(/no number of cars \(no brake answers the driver\)/);
});

it('of a brake that only parks it says that, not that there is none', () => {
  const screw = {
    id: 's',
    name: 'hand screw',
    kind: 'mechanical',
    parking: true,
    workedBy: 'driver',
  } as BrakeGear;
  const outing = braked(false);
  const vehicles = outing.train.vehicles.map((v, i) => (i === 0 ? { ...v, brakes: [screw] } : v));
  const parked = { ...outing, train: { ...outing.train, vehicles } };
  const finding = answerOnly(parked).findings.find((f) => f.code === 'no-brake-answers');
  const { what, why } = tellFinding(finding as Finding, {
    system: 'imperial',
    wording: 'us',
    outing: parked,
  });
  expect(what).toBe('The driver has no brake that stops the train.');
  expect(why).toContain('(hand screw)');
  expect(why).toContain('wound on when the train stands');
});
