/**
 * A flag behind a train that stands, on level track where every place is like every other: from the following
 * driver's stop D, what he sees S and the margin m it must stand D + m − S behind, to the next whole metre. All made up.
 */
import { describe, expect, it } from 'vitest';
import { stopDistance } from '../../../engine/motion/stop.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import type { Finding } from '../../../engine/questions/finding.ts';
import { askFlag } from '../../../engine/questions/flag/ask.ts';
import type { FlagPlace, FlagQuestion } from '../../../engine/questions/flag/flag.ts';
import type { Line } from '../../../engine/things/line/types.ts';
import { factOf } from '../../support/facts.ts';
import { assumedValues } from '../../support/random-outings.ts';
import { modelFor, ready } from '../../support/ready.ts';
import { plain, rule } from '../../support/rules.ts';

const LENGTH = 400;
const STEP = 0.5;
const SPEED = 3;
const MARGIN = 5;

interface Changed {
  readonly sights?: Line['sights'];
  readonly loop?: boolean;
  readonly rule?: number;
  readonly following?: Outing['following'];
}

const sees = (distance: number, more: Partial<Line['sights'][number]> = {}): Line['sights'] => [
  { from: 0, to: LENGTH, distance, direction: 'both', ...more },
];

function questionOf({ sights = sees(10), loop = false, rule: flag, following }: Changed): FlagQuestion {
  const base = plain(2);
  const r = ready({
    ...base,
    host: {
      name: 'made up',
      stopMargin: rule(MARGIN),
      ...(flag === undefined ? {} : { flagDistance: rule(flag) }),
    },
    ...(following === undefined ? {} : { following }),
    line: {
      ...base.line,
      loop,
      length: LENGTH,
      sights,
      heights: [
        { at: 0, height: 0 },
        { at: LENGTH, height: 0 },
      ],
    },
  });
  const speeds = new Float64Array(LENGTH / STEP + 1).fill(SPEED);
  return { context: r.context, model: modelFor(r), speeds, step: STEP };
}

const ask = (changed: Changed): { findings: Finding[]; data: FlagPlace[]; question: FlagQuestion } => {
  const question = questionOf(changed);
  const { findings, data } = askFlag(question);
  return { findings: [...findings], data, question };
};
const WALKING_PACE = assumedValues.practice['walking-pace'].value;
const stopAt = ({ model }: FlagQuestion, speed = SPEED): number => stopDistance(model, 200, speed);
const at = (data: readonly FlagPlace[], rear: number): FlagPlace => {
  const place = data.find((p) => p.rear === rear);
  if (!place) throw new Error(`no place at ${rear}`);
  return place;
};

describe('where the flag must stand', () => {
  it('is asked every 5 m of where the train can stand, and not at all without a rule or a train behind', () => {
    expect(ask({}).data).toEqual([]);
    const { data, question } = ask({ rule: 500 });
    expect(data.slice(0, 3).map((p) => p.rear)).toEqual([0, 5, 10]);
    const last = data[data.length - 1].rear;
    const { length } = question.context.loaded;
    expect(last + length).toBeLessThanOrEqual(LENGTH);
    expect(last + 5 + length).toBeGreaterThan(LENGTH);
  });

  it.each([4, 5.3, 6.7, 8.1, 10])('is the stop and the margin less the %f m that are seen', (sight) => {
    const { data, question } = ask({ rule: 500, sights: sees(sight) });
    const stop = stopAt(question);
    const place = at(data, 200);
    const needed = stop + MARGIN - sight;
    expect(needed).toBeGreaterThan(1);
    expect(place.distance).toBeGreaterThanOrEqual(needed);
    // To a whole metre, and to the node of half a metre at which it is first seen.
    expect(place.distance).toBeLessThan(needed + 1 + STEP);
    expect(place.stop).toBeCloseTo(stop, 6);
    expect(place.speed).toBe(SPEED);
    expect(place.walk).toBeCloseTo((place.distance ?? 0) / WALKING_PACE, 12);
    expect(place.seenAt + stop + MARGIN).toBeLessThanOrEqual(200);
  });

  it('is at the train where that is seen from far enough, and where no sight shortens the view', () => {
    expect(at(ask({ rule: 500, sights: sees(100) }).data, 200).distance).toBe(0);
    // A sight elsewhere, or for the other direction, shortens nothing here.
    const elsewhere = sees(4, { from: 300, to: 350 });
    expect(at(ask({ rule: 500, sights: elsewhere }).data, 200).distance).toBe(0);
    const other = [...sees(100), ...sees(4, { direction: 'reverse' })];
    expect(at(ask({ rule: 500, sights: other }).data, 200).distance).toBe(0);
  });

  it('counts the shortest of two sights, and none known as none', () => {
    const [one] = [at(ask({ rule: 500, sights: [...sees(10), ...sees(4)] }).data, 200)];
    expect(one.distance).toBe(at(ask({ rule: 500, sights: sees(4) }).data, 200).distance);
    const blind = ask({ rule: 500, sights: [] });
    expect(at(blind.data, 200).distance).toBeGreaterThanOrEqual(stopAt(blind.question) + MARGIN);
  });

  it('is walked to at 3 mph', () => expect(WALKING_PACE).toBeCloseTo(3 * 0.44704, 2));

  it('is nowhere close to the beginning of a line, and behind the seam of a loop', () => {
    const line = ask({ rule: 500 });
    expect(at(line.data, 0)).toMatchObject({ distance: null, walk: Infinity, seenAt: 0 });
    // The first place with room for a flag has all of the line before it.
    const room = stopAt(line.question) + MARGIN;
    for (const place of line.data) expect(place.distance === null, `${place.rear}`).toBe(place.rear < room);
    const loop = ask({ rule: 500, loop: true });
    expect(at(loop.data, 0).distance).toBe(at(loop.data, 200).distance);
    expect(at(loop.data, 395).distance).toBe(at(loop.data, 200).distance);
  });
});

describe('the host’s rule', () => {
  it('is far enough: nothing; too near: a note with the farthest place', () => {
    // On a loop every place is alike.
    const needed = at(ask({ rule: 500, loop: true }).data, 200).distance ?? NaN;
    expect(ask({ rule: needed, loop: true }).findings).toEqual([]);
    const [found, ...none] = ask({ rule: needed - 1, loop: true }).findings;
    expect(none).toEqual([]);
    expect(found).toMatchObject({
      code: 'flag-farther-than-rule',
      severity: 'notes',
      source: 'rule book, p. 3',
      sure: 'assumed',
      found: { si: needed - 1 },
      required: { si: needed },
      facts: { enough: true, share: { si: 1 }, speed: { si: SPEED } },
    });
    expect(found.margin).toBeCloseTo((needed - 1) / needed - 1, 12);
    expect(found.sum).toMatchObject({
      id: 'flag-distance',
      differs: 'metres',
      inputs: { margin: MARGIN, 'walking-speed': WALKING_PACE },
    });
    expect(found.sum?.inputs['sight']).toBeLessThanOrEqual(10);
    expect(found.sum?.inputs['sight']).toBeGreaterThan(9);
  });

  it('is told at the farthest place of all, wherever on the line that is', () => {
    for (const from of [100, 250]) {
      const sights = [...sees(10), ...sees(4, { from, to: from + 60 })];
      const { findings, data } = ask({ rule: 5, loop: true, sights });
      const farthest = Math.max(...data.map((p) => p.distance ?? Infinity));
      expect(findings[0].required?.si).toBe(farthest);
      expect(at(data, findings[0].where.from ?? Number.NaN).distance).toBe(farthest);
      expect(at(data, 5).distance).toBeLessThan(farthest);
    }
  });

  it('is told as not enough anywhere where no place on the line is', () => {
    const { findings, data } = ask({ rule: 100 });
    const none = data.filter((p) => p.distance === null).length;
    expect(none).toBeGreaterThan(0);
    const [found] = findings;
    expect(found.facts).toMatchObject({ enough: false, share: { si: none / data.length } });
    expect(found.where).toEqual({ from: 0, to: 0 });
    expect(found.required?.si).toBe(0);
    expect(found.margin).toBe(-1);
    expect(found.sum).toBeUndefined();
  });
});

describe('the time until the following train comes', () => {
  const behind = (after: number, speed = SPEED) => ask({ following: { after, speed }, loop: true });

  it('is the time behind less the way from our head to where its driver sees the flag', () => {
    const { data, question } = behind(60);
    const place = at(data, 200);
    const way = 200 + question.context.loaded.length - place.seenAt;
    expect(place.arrives).toBeCloseTo(60 - way / SPEED, 9);
    // One that is nearer than that is there at once.
    expect(at(behind(1).data, 200).arrives).toBe(0);
  });

  it('takes the following train’s own speed where it is told', () => {
    const { data, question } = behind(60, 1.5);
    const place = at(data, 200);
    expect(place.speed).toBe(1.5);
    expect(place.stop).toBeCloseTo(stopAt(question, 1.5), 6);
  });

  it('is enough to walk: nothing; too short: a note with the way and the least time', () => {
    const late = behind(1);
    const [found, ...none] = late.findings;
    expect(none).toEqual([]);
    const place = at(late.data, 200);
    expect(place.distance).toBeGreaterThan(0);
    expect(found).toMatchObject({
      code: 'flag-too-late',
      severity: 'notes',
      source: 'common practice, no source',
      found: { si: 0 },
      facts: { enough: true, share: { si: 1 }, way: { si: place.distance } },
      sum: { id: 'flag-distance' },
    });
    expect(found.required?.si).toBeCloseTo(place.walk, 9);
    expect(behind(200).findings).toEqual([]);
    // A flag that must stand at the train itself is never late.
    expect(ask({ following: { after: 1, speed: SPEED }, loop: true, sights: sees(100) }).findings).toEqual(
      [],
    );
  });

  it('is told where most of it is lacking', () => {
    for (const from of [100, 250]) {
      const sights = [...sees(10), ...sees(4, { from, to: from + 60 })];
      const { findings, data } = ask({ following: { after: 8, speed: SPEED }, loop: true, sights });
      const lack = (p: FlagPlace): number => p.walk - (p.arrives ?? Number.NaN);
      const worst = at(data, findings[0].where.from ?? Number.NaN);
      expect(lack(worst)).toBe(Math.max(...data.map(lack)));
      expect(lack(at(data, 5))).toBeLessThan(lack(worst));
      expect(findings[0].found?.si).toBe(worst.arrives);
      expect(factOf(findings[0], 'way')).toMatchObject({ si: worst.distance });
    }
  });

  it('has no end where no place is far enough', () => {
    const [found] = ask({ following: { after: 8, speed: 0.5 } }).findings;
    expect(found).toMatchObject({ code: 'flag-too-late', facts: { enough: false, way: { si: 0 } } });
    expect(found.required).toBeUndefined();
    expect(found.sum).toBeUndefined();
  });

  it('of a train that stands is not told', () => expect(at(behind(60, 0).data, 200).arrives).toBeNull());
});

it('a rule that no place is far enough for: the way from where its driver looked farthest back is asked for', () => {
  // Out of sight everywhere: a flag is seen as it is passed, and the whole line behind is too little for the stop.
  const { findings, data } = ask({ rule: 1, sights: sees(0) });
  const none = data.filter((p) => p.distance === null);
  expect(none.length).toBeGreaterThan(0);
  const [found] = findings;
  expect(found).toMatchObject({ code: 'flag-farther-than-rule', margin: -1, facts: { enough: false } });
  const worst = at(data, found.where.from ?? Number.NaN);
  expect(worst.distance).toBeNull();
  expect(found.required?.si).toBe(worst.rear - worst.seenAt);
});
