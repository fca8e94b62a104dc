/** Faults inside a question, trains that do not fit, speeds that round to nothing: never "go". */

import { describe, expect, it, vi } from 'vitest';
import type { Answer } from '../../../engine/answer/types.ts';
import { exact } from '../../../engine/base/quantity.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import type { Finding } from '../../../engine/questions/finding.ts';
import { tellFinding } from '../../../words/finding.ts';
import type { Voice } from '../../../words/voice.ts';
import { factOf } from '../../support/facts.ts';
import { drawer, randomLine, randomOuting } from '../../support/random-outings.ts';

/** Where each question is asked: the module and the function that is made to fail. */
const rooms: Readonly<Record<string, readonly [string, string]>> = {
  host: ['questions/host/ask.ts', 'askHost'],
  practice: ['questions/practice/ask.ts', 'askPractice'],
  ratings: ['questions/ratings/ask.ts', 'askLoads'],
  haul: ['questions/haul/ask.ts', 'askHauling'],
  hold: ['questions/hold/ask.ts', 'askHolding'],
  brakeGear: ['questions/brakes/gear.ts', 'askBrakeGear'],
  sight: ['questions/sight/ask.ts', 'askSight'],
  survey: ['questions/survey/ask.ts', 'askSurvey'],
  assumptions: ['questions/assumptions/ask.ts', 'askAssumptions'],
  balance: ['questions/balance/ask.ts', 'askBalance'],
  speed: ['questions/speed/ask.ts', 'askSpeeds'],
  gap: ['questions/gap/ask.ts', 'askGap'],
  chains: ['questions/chains/ask.ts', 'askChains'],
  couplers: ['questions/couplers/ask.ts', 'askCouplers'],
  swing: ['questions/swing/ask.ts', 'askSwing'],
  crests: ['questions/crests/ask.ts', 'askCrests'],
  pitch: ['questions/pitch/ask.ts', 'askPitch'],
  humps: ['questions/humps/ask.ts', 'askHumps'],
  wheels: ['questions/wheels/ask.ts', 'askWheels'],
  clearance: ['questions/clearance/ask.ts', 'askClearance'],
  order: ['questions/order/ask.ts', 'askOrder'],
  crew: ['questions/crew/ask.ts', 'askCrew'],
  standards: ['questions/standards/ask.ts', 'askStandards'],
  part: ['questions/part/ask.ts', 'askParting'],
  singleFailures: ['questions/failures/ask.ts', 'askFailures'],
  flag: ['questions/flag/ask.ts', 'askFlag'],
  brakes: ['questions/brakes/ask.ts', 'askBrakes'],
  wayBack: ['outing/moves.ts', 'wayBack'],
};

const root = '../../../engine/';
const voice = (outing: Outing): Voice => ({ wording: 'us', system: 'imperial', outing }) as never;

/** The function that is out of order. */
let broken = '';

const functions = new Map<string, string[]>();
for (const [module, name] of Object.values(rooms))
  functions.set(module, [...(functions.get(module) ?? []), name]);
for (const [module, names] of functions) {
  vi.doMock(`${root}${module}`, async (original) => {
    const whole = await original<Record<string, (...given: unknown[]) => unknown>>();
    const failing = names.map((name) => [
      name,
      (...given: unknown[]) => {
        if (name === broken) throw new Error(`${name} is out of order`);
        return whole[name](...given);
      },
    ]);
    return { ...whole, ...Object.fromEntries(failing) };
  });
}
// Loaded after the functions that can be made to fail.
const { answerOnly } = await import('../../../engine/answer/answer.ts');
const { questions } = await import('../../../engine/answer/questions.ts');

/** With few samples: nothing here hangs on how near a figure is. */
const checked = (outing: Outing): Answer => answerOnly(outing, { step: 1, samples: 40, couplerRuns: 3 });

/** The answer where one question throws. */
function withFault(name: string, outing: Outing): Answer {
  broken = name;
  try {
    return checked(outing);
  } finally {
    broken = '';
  }
}

describe('a fault inside a question', () => {
  const outing: Outing = { ...randomOuting(4, 2), line: randomLine(drawer(4), 0.02, false, 450) };
  it.each(Object.entries(rooms))('%s: cannot tell, and which one is said', (asked, [, name]) => {
    const { verdict, findings } = withFault(name, outing);
    expect(['unknown', 'hold']).toContain(verdict);
    const failed = findings.filter((f) => f.code === 'question-failed');
    expect(failed.map((f) => f.facts)).toEqual([{ asked, message: `${name} is out of order` }]);
    expect(failed[0].severity).toBe('unknown');
    const told = tellFinding(failed[0], voice(outing));
    expect(`${told.what} ${told.why}`).toContain(`${name} is out of order`);
    expect(told.what).not.toContain(`for ${asked}.`);
  });

  it('a line that cannot be read: cannot tell, and which one is said', async () => {
    const line = Object.defineProperty({ ...outing.line }, 'heightQuality', {
      get: () => {
        throw new Error('no such survey');
      },
    });
    const answer = checked({ ...outing, direction: 'forward', line });
    // Whatever reckons with how true the grades are says so too.
    const failed = answer.findings.filter((f) => f.code === 'question-failed').map((f) => f.facts);
    expect(failed).toContainEqual({ asked: 'survey', message: 'no such survey' });
    expect(['unknown', 'hold']).toContain(answer.verdict);
  });

  it('no question is left out', () => {
    expect(questions.map(({ id }) => id).sort()).toEqual(Object.keys(rooms).sort());
  });

  it('is never told as go: the outing by itself has no such finding', async () => {
    expect(checked(outing).findings.map((f) => f.code)).not.toContain('question-failed');
  });
});

const level = (length: number): Outing['line']['heights'] => [
  { at: 0, height: 0 },
  { at: length, height: 0 },
];
const onLine = (length: number, loop: boolean, more: Partial<Outing> = {}): Outing => {
  const o = randomOuting(4, 2);
  const line = {
    ...o.line,
    loop,
    length,
    heights: level(length),
    curves: [],
    cants: [],
    places: [],
    speedLimits: [],
    sights: [],
  };
  return { ...o, line, direction: 'forward', plannedSpeed: 2, ...more };
};
const trainLength = randomOuting(4, 2).train.vehicles.reduce((sum, v) => sum + v.length, 0);
const find = (a: Answer, code: string): Finding | undefined => a.findings.find((f) => f.code === code);

describe('a train longer than its line', () => {
  it.each([0.001, 0.3, 5])('by %f m holds, on a loop too', async (by) => {
    for (const loop of [false, true]) {
      const outing = onLine(trainLength - by, loop);
      const answer = checked(outing);
      expect(answer.verdict).toBe('hold');
      const longer = find(answer, 'train-longer-than-line');
      expect(longer?.severity).toBe('forbids');
      expect(longer && tellFinding(longer, voice(outing)).what).toMatch(/train is .* long, the line/);
      expect(find(answer, 'question-failed')).toBeUndefined();
    }
  });

  it('is not said of one that is shorter', async () => {
    expect(find(checked(onLine(trainLength + 100, true)), 'train-longer-than-line')).toBeUndefined();
  });

  it('parts nowhere, and the look at partings says why', async () => {
    const { openPartings } = await import('../../../desk/parting.ts');
    const look = openPartings(onLine(trainLength - 0.001, false)).look();
    expect(look.gaps).toEqual([]);
    expect(look.findings.map((f) => f.code)).toContain('train-longer-than-line');
  });
});

describe('a speed that rounds to nothing', () => {
  it('holds, whatever sets it', async () => {
    const why = { from: 60, to: 80, speed: 0.04, why: 'soft ground', source: 'host' };
    for (const extra of [{}, { plannedSpeed: 0.03 }]) {
      const outing = onLine(trainLength + 200, true, extra);
      const slow = checked({ ...outing, line: { ...outing.line, speedLimits: [why] } });
      const none = find(slow, 'cannot-stop');
      expect(slow.verdict).toBe('hold');
      expect(factOf(none, 'reason')).toBe('host-place');
      expect(none && tellFinding(none, voice(outing)).what).toMatch(/No speed is permitted/);
    }
  });

  it('holds where a short line lets the train not leave its place', async () => {
    const answer = checked(onLine(trainLength + 2, false));
    expect(answer.verdict).toBe('hold');
    expect(factOf(find(answer, 'cannot-stop'), 'reason')).toBe('stopping-end');
  });

  it('holds where the fall to the end of the line lets nothing creep', async () => {
    const length = trainLength + 300;
    const outing = onLine(length, false);
    const heights = [
      { at: 0, height: 0 },
      { at: length - 150, height: 0 },
      { at: length, height: -45 },
    ];
    const answer = checked({ ...outing, line: { ...outing.line, heights } });
    expect(answer.verdict).toBe('hold');
  });

  it('is what every train comes to at the end of a line, and only noted there', async () => {
    const codes = checked(onLine(trainLength + 200, false)).findings.filter(
      (f) => factOf(f, 'reason') === 'stopping-end',
    );
    expect(codes.map((f) => f.severity)).toEqual(['notes']);
  });
});

describe('a rating of nothing', () => {
  it('is said without a share of infinity', async () => {
    const o = onLine(trainLength + 200, true);
    const [engine, ...cars] = o.train.vehicles;
    const rated = cars.map((v) => ({
      ...v,
      ratings: { load: 0, riders: 0, axleLoad: 0 },
      loads: [{ name: 'tools', mass: exact(5), at: 1, across: 0, height: 0.3 }],
    }));
    const outing = { ...o, train: { ...o.train, vehicles: [engine, ...rated] } };
    const { findings } = checked(outing);
    const over = findings.filter((f) => f.code.endsWith('overloaded'));
    expect(over.length).toBeGreaterThan(1);
    for (const f of over) {
      const told = tellFinding(f, voice(outing));
      expect(JSON.stringify(told)).not.toMatch(/Infinity|NaN/);
      expect(f.margin).toBe(-1);
      if (f.code === 'car-overloaded') expect(told.what).toMatch(/rated for nothing/);
    }
  });
});
