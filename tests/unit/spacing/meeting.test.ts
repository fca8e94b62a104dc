/** May a train come the other way? What a driver of long standing expects, by line, by what is said and by the host's rule. */
import { describe, expect, it } from 'vitest';
import { sentenceParts } from '../../../desk/sentence.ts';
import type { Answer } from '../../../engine/answer/types.ts';
import { applyChange } from '../../../engine/outing/change.ts';
import type { KeptApart, OtherTrains, Outing } from '../../../engine/outing/types.ts';
import { askMeeting } from '../../../engine/questions/gap/meeting.ts';
import { gapRemedies } from '../../../engine/questions/gap/remedies.ts';
import { changedPaper } from '../../../papers/changed.ts';
import { changedExample } from '../../support/changed-examples.ts';
import { plain, rule } from '../../support/rules.ts';

const { otherTrains: _none, ...base } = plain(2);
const on = (loop: boolean, others?: OtherTrains, kept?: KeptApart): Outing => ({
  ...base,
  line: { ...base.line, loop },
  ...(others ? { otherTrains: others } : {}),
  host: { name: 'host', ...(kept ? { keptApart: rule(kept) } : {}) },
});
const word = (outing: Outing): string =>
  askMeeting(outing)
    .map((f) => f.severity)
    .join() || 'nothing';

const LOOP = true;
const TWO_ENDS = false;

describe('a train that comes the other way', () => {
  it.each<[line: boolean, others: OtherTrains | undefined, kept: KeptApart | undefined, expected: string]>([
    // Round and round, one behind the other: the gap guards.
    [LOOP, undefined, undefined, 'nothing'],
    [LOOP, 'same-way', undefined, 'nothing'],
    [LOOP, 'none', undefined, 'nothing'],
    // Out and back on the same rails: nobody has said that it is alone.
    [TWO_ENDS, undefined, undefined, 'limits'],
    [TWO_ENDS, undefined, 'sight', 'limits'],
    [TWO_ENDS, 'none', undefined, 'nothing'],
    [TWO_ENDS, 'same-way', undefined, 'notes'],
    // They do come, wherever it is.
    [LOOP, 'either-way', undefined, 'unknown'],
    [TWO_ENDS, 'either-way', undefined, 'unknown'],
    [LOOP, 'either-way', 'sight', 'forbids'],
    [TWO_ENDS, 'either-way', 'sight', 'forbids'],
    [TWO_ENDS, 'either-way', 'staff', 'notes'],
    [TWO_ENDS, 'either-way', 'signals', 'notes'],
    [TWO_ENDS, 'either-way', 'word', 'notes'],
    [TWO_ENDS, undefined, 'staff', 'notes'],
    // One at a time is the host's rule, and others are on it.
    [TWO_ENDS, undefined, 'one-train', 'nothing'],
    [TWO_ENDS, 'none', 'one-train', 'nothing'],
    [TWO_ENDS, 'same-way', 'one-train', 'forbids'],
    [LOOP, 'same-way', 'one-train', 'forbids'],
    [TWO_ENDS, 'either-way', 'one-train', 'forbids'],
  ])('loop %s, others %s, kept apart by %s: %s', (line, others, kept, expected) => {
    expect(word(on(line, others, kept))).toBe(expected);
  });

  it('what the host writes is the source', () => {
    expect(askMeeting(on(TWO_ENDS, 'either-way', 'sight'))[0].source).toBe('rule book, p. 3');
  });

  it('a route that sets back is run both ways, on a loop too', () => {
    const moves = [{ line: base.line, turned: true }] as unknown as Outing['moves'];
    expect(word({ ...on(LOOP), moves } as Outing)).toBe('limits');
  });

  it('alone it is cleared, whatever it was', () => {
    for (const one of [
      on(TWO_ENDS),
      on(TWO_ENDS, 'either-way'),
      on(TWO_ENDS, 'either-way', 'sight'),
      on(LOOP, 'either-way', 'one-train'),
    ]) {
      const [finding] = askMeeting(one);
      const [family] = gapRemedies[finding.code]?.(one, finding) ?? [];
      expect(word(applyChange(one, family.changes[0]))).toBe('nothing');
    }
  });
});

describe('the sentence', () => {
  const may = {
    verdict: 'limits',
    findings: [],
    cars: [],
    speeds: { gap: [10, 20] },
  } as unknown as Answer;
  const gapOf = (outing: Outing): string =>
    sentenceParts(may, { wording: 'us', system: 'imperial', outing }).gap;

  it('gives no distance behind a train ahead where none may be on the line', () => {
    expect(gapOf(on(TWO_ENDS))).toBe('with no other train on the line');
    expect(gapOf(on(TWO_ENDS, 'none'))).toBe('with no other train on the line');
  });

  it('gives it where trains run one behind the other', () => {
    expect(gapOf(on(LOOP))).toBe('66 ft behind the train ahead');
    expect(gapOf(on(TWO_ENDS, 'same-way'))).toBe('66 ft behind the train ahead');
  });
});

describe('the papers', () => {
  const read = (more: object) => changedExample('two-roads', (paper) => Object.assign(paper, more));
  const following = { after: '5 min', speed: '4 mph' };

  it('refuse a train that follows where there is none', async () => {
    await expect(read({ otherTrains: 'none', following })).rejects.toThrow(/a train that follows/);
    expect((await read({ otherTrains: 'same-way', following })).otherTrains).toBe('same-way');
    expect(await read({ otherTrains: 'none' })).not.toHaveProperty('following');
  });

  it('have none that follows once this one is to be alone', async () => {
    const before = await read({ following });
    const after = applyChange(before, { kind: 'alone' });
    expect(after).not.toHaveProperty('following');
    expect(changedPaper({ following, line: {} }, before, after)).toMatchObject({ otherTrains: 'none' });
    expect(changedPaper({ following, line: {} }, before, after)).not.toHaveProperty('following');
  });
});
