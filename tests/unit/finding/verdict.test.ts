/** What findings add up to, and in which order they are told. */
import { describe, expect, it } from 'vitest';
import { ranked, verdictOf, worse } from '../../../engine/answer/verdict.ts';
import type { Finding, Severity, Verdict } from '../../../engine/questions/finding.ts';
import { makeFinding } from '../../../engine/questions/make.ts';

const finding = (severity: Severity, name: string, margin?: number): Finding =>
  makeFinding('too-many-cars', severity, 'host', {
    source: name,
    ...(margin === undefined ? {} : { margin }),
  });
const order = (...findings: Finding[]): string[] => ranked(findings).map((f) => f.source);

describe('the verdict', () => {
  const worst = (...severities: Severity[]) => verdictOf(severities.map((s) => finding(s, s)));

  it('holds if anything forbids, whatever else is there', () => {
    expect(worst('forbids')).toBe('hold');
    expect(worst('assumed', 'notes', 'limits', 'unknown', 'forbids')).toBe('hold');
  });
  it('cannot tell if what could forbid is missing', () => {
    expect(worst('unknown')).toBe('unknown');
    expect(worst('limits', 'unknown', 'notes')).toBe('unknown');
  });
  it('goes within limits if something limits', () => {
    expect(worst('limits')).toBe('limits');
    expect(worst('notes', 'limits', 'assumed')).toBe('limits');
  });
  it('goes on notes and assumptions, and on nothing', () => {
    expect(worst('notes', 'assumed')).toBe('go');
    expect(worst()).toBe('go');
  });
});

it('hold is the worst word, then cannot tell, then limits; none is worse than itself', () => {
  const words: Verdict[] = ['go', 'limits', 'unknown', 'hold'];
  const worseThan = (b: Verdict): Verdict[] => words.filter((a) => worse(a, b));
  expect(words.map(worseThan)).toEqual([['limits', 'unknown', 'hold'], ['unknown', 'hold'], ['hold'], []]);
});

describe('the order of findings', () => {
  it('is by severity, whatever the margin', () => {
    expect(
      order(
        finding('assumed', 'e', -5),
        finding('notes', 'd', -4),
        finding('limits', 'c', -3),
        finding('unknown', 'b', -2),
        finding('forbids', 'a', 9),
      ),
    ).toEqual(['a', 'b', 'c', 'd', 'e']);
  });
  it('tells what makes other figures idle before them, and never before what is worse', () => {
    const noBrake = makeFinding('no-brake-answers', 'forbids', 'brakes', {
      source: 'cause',
      facts: { fitted: false },
    });
    const thin = finding('forbids', 'thin', -9);
    expect(order(thin, noBrake)).toEqual(['cause', 'thin']);
    expect(order(thin, { ...noBrake, severity: 'limits' })).toEqual(['thin', 'cause']);
  });
  it('is by the thinner margin among equals; without a margin last', () => {
    const [none, thin, wide] = [
      finding('limits', 'none'),
      finding('limits', 'thin', -1),
      finding('limits', 'wide', 2),
    ];
    for (const given of [
      [none, thin, wide],
      [wide, thin, none],
      [thin, none, wide],
      [wide, none, thin],
    ])
      expect(order(...given)).toEqual(['thin', 'wide', 'none']);
  });
  it('is so of many too: by margin, then those without, each in the order found', () => {
    const given = Array.from({ length: 64 }, (_, i) =>
      finding('notes', `${i}`, i % 3 === 0 ? undefined : (i * 7) % 5),
    );
    const wanted = [0, 1, 2, 3, 4, undefined].flatMap((margin) => given.filter((f) => f.margin === margin));
    expect(order(...given)).toEqual(wanted.map((f) => f.source));
    expect(order(...given.toReversed())).toEqual(
      [0, 1, 2, 3, 4, undefined].flatMap((margin) =>
        given
          .filter((f) => f.margin === margin)
          .map((f) => f.source)
          .reverse(),
      ),
    );
  });
  it('is as found where margins are alike', () => {
    expect(order(finding('notes', '1'), finding('notes', '2'), finding('notes', '3'))).toEqual([
      '1',
      '2',
      '3',
    ]);
    expect(order(finding('notes', '1', 0), finding('notes', '2', 0))).toEqual(['1', '2']);
    expect(order(finding('notes', '2', 0), finding('notes', '1', 0))).toEqual(['2', '1']);
  });
});

it('a finding says what it is given, and nothing that it is not', () => {
  expect(makeFinding('too-many-cars', 'forbids', 'host', { source: 'rules', margin: -1 })).toStrictEqual({
    code: 'too-many-cars',
    severity: 'forbids',
    question: 'host',
    where: {},
    facts: {},
    sure: 'stated',
    remedies: [],
    source: 'rules',
    margin: -1,
  });
});
