/** What is said of chains, of loads laid by hand: which gap is told, how it weighs, and what is asked for. */
import { describe, expect, it } from 'vitest';
import { exact } from '../../../engine/base/quantity.ts';
import { openOuting } from '../../../engine/outing/open.ts';
import type { ChainRow } from '../../../engine/questions/chains/row.ts';
import { chainFindings, heaviestLoad } from '../../../engine/questions/chains/say.ts';
import type { ChainGear } from '../../../engine/things/chain/chain.ts';
import { plain, rule } from '../../support/rules.ts';

const context = openOuting(plain(3));
const { 'chain-close': closer } = context.outing.assumed.practice;

/** Bears 1,000 N at work and breaks at 4,000 N. */
const chain = (changes: Partial<ChainGear> = {}): ChainGear => ({
  workingLoad: { value: 1000, by: 'chain', how: 'stated' },
  breaks: 4000,
  elongation: 0.15,
  part: null,
  slack: 0.02,
  length: exact(0.5),
  stiffness: exact(1e6),
  count: 1,
  difference: null,
  ...changes,
});
interface Laid extends Partial<Omit<ChainRow, 'snatch' | 'work' | 'chain'>> {
  readonly of?: Partial<ChainGear> | null;
  readonly peak?: number;
  readonly asks?: number;
}
/** By itself it holds: 500 N steady, a peak of 900 N, work that asks for 2,000 N. */
const row = ({ of = {}, peak = 900, asks = 2000, steadyOnOne = 500, ...more }: Laid = {}): ChainRow => ({
  steady: steadyOnOne,
  steadyMass: 300,
  steadyAt: 0,
  parting: 100,
  partingAt: 0,
  way: 'pulling',
  running: 50,
  gap: 1,
  chain: of && chain(of),
  steadyOnOne,
  snatch: { force: peak, head: 1, tail: 1, pull: 80, stiffness: 1e6, headSprung: 0, tailSprung: 0 },
  work: { breaks: asks, pull: 60, length: 0.5, fullness: 0.7 },
  slack: 0.05,
  tailBrakes: false,
  mustBreakAt: { 30: 1, 43: 1, 70: 1, 80: 1 },
  smallest: [],
  verdict: 'holds',
  ...more,
});
const said = (...rows: ChainRow[]) => chainFindings(context, rows);
const part = { name: 'S-hook', bears: 800, stated: true };

it('a chain that holds is nothing to say, nor is one that is not there', () => {
  expect(said(row(), row({ gap: 2 }))).toEqual([]);
  expect(said(row({ of: null, verdict: 'no chain' }))).toEqual([]);
});

describe('a chain too weak', () => {
  it.each([
    ['steady', { steadyOnOne: 1250 }, 1250, 1000, -0.25],
    ['stretch', { asks: 5000 }, 5000, 4000, -0.25],
    ['snatch', { of: { part }, peak: 1000 }, 1000, 800, -0.25],
  ] as const)('for %s forbids', (way, laid, found, bears, margin) => {
    const [only, ...more] = said(row({ ...laid, verdict: 'too weak' }));
    expect(more).toEqual([]);
    expect(only).toMatchObject({
      code: 'chain-too-weak',
      severity: 'forbids',
      where: { gap: 1, vehicle: 'car1' },
      found: { si: found },
      required: { si: bears },
      margin,
      facts: { way, tail: 'runs', others: 0 },
    });
  });
  it('is a note where every car behind brakes by itself', () => {
    expect(said(row({ steadyOnOne: 1250, verdict: 'too weak', tailBrakes: true }))).toMatchObject([
      { severity: 'notes', facts: { tail: 'braked' } },
    ]);
  });
  it('has the pull of its own reckoning', () => {
    const pull = (laid: Laid) => said(row({ ...laid, verdict: 'too weak' }))[0].facts;
    expect(pull({ asks: 5000 })).toMatchObject({ pull: { si: 60 } });
    expect(pull({ steadyOnOne: 1250 })).toMatchObject({ pull: { si: 80 } });
  });
  it('tells what would be strong enough: four times what hangs on it, or what the catch asks', () => {
    const facts = (laid: Laid) => said(row({ ...laid, verdict: 'too weak' }))[0].facts;
    expect(facts({ steadyOnOne: 1250 })).toMatchObject({ breaks: { si: 5000 } });
    expect(facts({ asks: 5500, steadyOnOne: 1250 })).toMatchObject({ breaks: { si: 5500 } });
    expect(facts({ of: { part }, peak: 9000, steadyOnOne: 1250 })).toMatchObject({ breaks: { si: 9000 } });
    // Hung closer where it hangs looser than is usual.
    expect(facts({ steadyOnOne: 1250 })).not.toHaveProperty('closer');
    expect(facts({ steadyOnOne: 1250, of: { slack: closer.value * 1.1 } })).toMatchObject({
      closer: { si: closer.value },
    });
  });
});

describe('a chain spent', () => {
  it('holds once: a note without a margin', () => {
    const [only] = said(row({ peak: 1500, verdict: 'holds, then replace' }));
    expect(only).toMatchObject({
      severity: 'notes',
      found: { si: 1500 },
      required: { si: 1000 },
      facts: { way: 'spent' },
    });
    expect(only.margin).toBeUndefined();
  });
});

describe('of several gaps', () => {
  const weak = (gap: number, steadyOnOne: number, tailBrakes = false): ChainRow =>
    row({ gap, steadyOnOne, tailBrakes, verdict: 'too weak' });
  it('one line tells the worst and how many others: thinner, forbidden, too weak before spent', () => {
    expect(said(weak(0, 1100), weak(1, 1300), weak(2, 1200))).toMatchObject([
      { where: { gap: 1 }, facts: { others: 2 } },
    ]);
    expect(said(weak(0, 1100), weak(2, 2000, true))).toMatchObject([
      { where: { gap: 0 }, severity: 'forbids' },
    ]);
    const spent = row({ gap: 2, peak: 9999, verdict: 'holds, then replace' });
    expect(said(spent, weak(1, 1100, true))).toMatchObject([{ where: { gap: 1 }, facts: { way: 'steady' } }]);
  });
});

describe('chains side by side', () => {
  it('have a sum where one takes all', () => {
    const of = (count: number, difference: number | null) =>
      said(row({ steadyOnOne: 1250, verdict: 'too weak', of: { count, difference } }))[0];
    expect(of(1, null).sum).toMatchObject({ id: 'grade-force', inputs: { mass: 300 } });
    expect(of(2, null).sum).toBeDefined();
    expect(of(2, 0.01).sum).toBeUndefined();
    expect(of(1, null).facts).toMatchObject({ shares: 'one' });
    expect(of(2, null).facts).toMatchObject({ shares: 'not known' });
    expect(of(2, 0.01).facts).toMatchObject({ shares: 'known' });
  });
});

describe('of whose strength nobody knows', () => {
  const size = (gap: number, steadyOnOne: number, tailBrakes = false): ChainRow =>
    row({ gap, steadyOnOne, tailBrakes, of: { workingLoad: null, breaks: null }, verdict: 'cannot tell' });
  const hook = (gap: number, peak: number): ChainRow =>
    row({ gap, peak, of: { part: { ...part, stated: false } }, verdict: 'cannot tell' });
  const code = 'chain-strength-unknown';

  it('the size is asked for, or what breaks the part in line with it', () => {
    expect(said(size(1, 500))).toMatchObject([
      {
        code,
        severity: 'unknown',
        measure: 'coupling.chain.size',
        required: { si: 500 },
        facts: { way: 'size' },
      },
    ]);
    expect(said(hook(2, 900))).toMatchObject([
      {
        code,
        severity: 'unknown',
        measure: 'coupling.chain.weakestPartBreaks',
        required: { si: 900 },
        facts: { way: 'part', part: 'S-hook', bears: { si: 800 } },
      },
    ]);
  });
  it('of a hook whose strength is known the size alone is asked for', () => {
    const [only] = said(row({ of: { workingLoad: null, breaks: null, part }, verdict: 'cannot tell' }));
    expect(only.measure).toBe('coupling.chain.size');
    expect(only.facts).not.toHaveProperty('part');
  });
  it('one line for each thing, of the gap that asks most and hangs on it', () => {
    expect(said(size(0, 500), size(1, 700), hook(2, 900), size(2, 600))).toMatchObject([
      { where: { gap: 1 }, facts: { others: 2 } },
      { where: { gap: 2 }, facts: { others: 0 } },
    ]);
    expect(said(size(0, 500), size(1, 700, true))).toMatchObject([
      { where: { gap: 0 }, severity: 'unknown' },
    ]);
    expect(said(size(1, 700, true), size(0, 500))).toMatchObject([{ where: { gap: 0 } }]);
    expect(said(size(1, 700, true))).toMatchObject([{ severity: 'notes' }]);
  });
});

describe('the host’s rule', () => {
  const outing = plain(3);
  const ruled = openOuting({ ...outing, host: { ...outing.host, chainLoad: rule(1200) } });
  const working = (value: number, gap: number): ChainRow =>
    row({ gap, of: { workingLoad: { value, by: 'chain', how: 'stated', size: 0.006, grade: 30 } } });
  it('forbids any that bears less, and tells the weakest', () => {
    expect(chainFindings(ruled, [working(1200, 0)])).toEqual([]);
    expect(chainFindings(ruled, [working(1100, 0), working(900, 1), working(1300, 2)])).toMatchObject([
      {
        severity: 'forbids',
        source: 'rule book, p. 3',
        where: { gap: 1 },
        margin: -0.25,
        facts: { way: 'rule', others: 1 },
        sum: { id: 'chain-working-load', inputs: { size: 0.006, 'grade-mark': 30 } },
      },
    ]);
    expect(chainFindings(ruled, [row({ of: { workingLoad: null } })])).toEqual([]);
  });
});

it('the heaviest load is the one with least to spare', () => {
  expect(heaviestLoad(row())).toMatchObject({ way: 'steady', spare: 0.5 });
  expect(heaviestLoad(row({ asks: 3000 }))).toMatchObject({ way: 'stretch', spare: 0.25 });
  expect(heaviestLoad(row({ of: { part }, peak: 720 }))).toMatchObject({
    way: 'snatch',
    spare: expect.closeTo(0.1, 9),
  });
  expect(heaviestLoad(row({ of: { breaks: null } }))).toBeUndefined();
});
