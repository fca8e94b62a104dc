/** A sentence for every refusal, in both wordings, with nothing left open in it. */
import { describe, expect, it } from 'vitest';
import {
  type Refusal,
  type RefusalCode,
  type RefusalFacts,
  refuse,
} from '../../../engine/calibrate/refusal.ts';
import { tellRefusal } from '../../../words/measured/refusals.ts';

const facts: { readonly [C in RefusalCode]: RefusalFacts[C] } = {
  'too-few-readings': { found: 1, needed: 3 },
  'runs-backwards': { reading: 2 },
  'coast-speeds-up': { reading: 3 },
  'readings-disagree': { reading: 4, found: 20, expected: 2, kind: 'time', slip: 'tenfold' },
  'does-not-fit': { times: 5.2 },
  'no-fit': {},
  'not-told-apart': { keys: ['rolling/1', 'curveConstant'], further: 'other-way' },
  'out-of-range': { field: 'tilts.0.angle', found: -1, low: 0, high: 2 },
  'not-stated': { field: 'outing' },
  'upside-down': { angle: 2 },
  'no-such-brake': { found: 'hand', has: ['hand brake'] },
  'stop-too-high': { found: 0.05, most: 0.02 },
};

describe.each(Object.keys(facts) as RefusalCode[])('%s', (code) => {
  it.each(['us', 'uk'] as const)('in %s wording', (wording) => {
    const said = tellRefusal(refuse(code, facts[code] as never) as Refusal, { system: 'imperial', wording });
    expect(said).toMatch(/^[A-Za-z].*\.$/);
    expect(said).not.toMatch(/undefined|NaN|\{|\}/);
  });
});
