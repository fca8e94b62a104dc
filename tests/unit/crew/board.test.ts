/** The riders' board: the host's words before the example's, its rules in words, and half a minute to read. */
import { describe, expect, it } from 'vitest';
import { cardPdf } from '../../../cli/card-pdf.ts';
import { exampleBriefing } from '../../../data/briefing.ts';
import { asHostRules, publishedHours } from '../../../data/hours-rules.ts';
import { readAloud, ridersBoard, tellAloud } from '../../../desk/board.ts';
import type { HostRules } from '../../../engine/outing/types.ts';
import { readHost } from '../../../papers/index.ts';
import { boardDocument, sizeOf } from '../../../views/board-paper.ts';
import { pdfText } from '../../support/pdf-text.ts';
import { rule } from '../../support/rules.ts';

const board = (briefing: object | undefined, rules: Partial<HostRules> = {}) =>
  ridersBoard(
    { host: { ...(briefing ? { briefing } : {}) } },
    { name: 'Here', ...rules },
    { system: 'imperial' },
  );
const own = { board: ['Sit.', 'Hold on.'], aloud: 'Sit and hold on.', source: 'book, 11' };

describe('the board', () => {
  it('is the example where the host says nothing, and says so', () => {
    const made = board(undefined);
    expect(made.lines).toEqual([...exampleBriefing.board, exampleBriefing.dropped, exampleBriefing.infants]);
    expect([made.example, made.source]).toEqual([true, exampleBriefing.source]);
  });
  it('is the host’s own in its own words, nothing of ours among them', () => {
    expect(board(own)).toMatchObject({ lines: own.board, example: false, source: 'book, 11' });
    expect(board({ ...own, dropped: 'Leave it.', infants: 'None under two.' }).lines).toEqual([
      ...own.board,
      'Leave it.',
      'None under two.',
    ]);
    const { aloud: _aloud, ...silent } = own;
    expect(board(silent).example).toBe(true);
  });
  it('says of the very young what the host rules', () => {
    expect(board(undefined, { youngestRider: rule(3) }).lines).toContain(
      'Children less than 3 years old do not ride.',
    );
    expect(board(undefined, { youngestRider: rule(3) }).lines).not.toContain(exampleBriefing.infants);
    expect(board({ ...own, infants: 'Ask.' }, { youngestRider: rule(3) }).lines).toContain('Ask.');
  });
  it('says weather and night as the host rules them, and nothing where it does not', () => {
    const all = {
      lightningStops: rule(true),
      mostWind: rule(13.42),
      mostHeat: rule(308.15),
      runsAtNight: rule(false),
    };
    expect(board(undefined, all).sky).toHaveLength(4);
    // A limit is never told higher than it is.
    expect(board(undefined, all).sky[1]).toContain('30.0 mph');
    expect(board(undefined, { lightningStops: rule(false), runsAtNight: rule(true) }).sky).toEqual([]);
  });
  it('goes on one side in large type, the more is on it the smaller', () => {
    expect(sizeOf({ lines: ['Sit.'], sky: [] })).toBe(24);
    expect(sizeOf(board(undefined))).toBeGreaterThan(17);
    expect(sizeOf({ lines: Array.from({ length: 60 }, () => 'x'.repeat(90)), sky: [] })).toBe(14);
  });
});

describe('read aloud', () => {
  it('the example takes half a minute: 75 to 80 words', () => {
    const { words, seconds } = readAloud(exampleBriefing.aloud);
    expect(words).toBeGreaterThanOrEqual(75);
    expect(words).toBeLessThanOrEqual(80);
    expect(seconds).toBeLessThanOrEqual(31);
  });
  it('counts words and no dashes, and says what takes longer', () => {
    expect(readAloud('Sit – and hold  on. ').words).toBe(4);
    expect(tellAloud(readAloud('word '.repeat(160)))).toContain('62 seconds: longer');
  });
});

const head = { heedway: 'host', version: 1, name: 'x' };

it('published hours read as a host’s rules, each with its source', async () => {
  expect(publishedHours.map(({ id }) => id)).toEqual([
    'us-passenger-crews',
    'eu-cross-border-crews',
    'uk-after-clapham',
  ]);
  for (const row of publishedHours) {
    const paper = { ...head, ...asHostRules(row) };
    const read = await readHost({ path: 'h.json', content: JSON.stringify(paper) });
    expect(read.ok, JSON.stringify(read)).toBe(true);
    expect(Object.values(asHostRules(row))).toEqual(
      Object.values(row.rules).map((value) => ({ value, source: row.source })),
    );
  }
  const [us] = publishedHours;
  const read = await readHost({ path: 'h.json', content: JSON.stringify({ ...head, ...asHostRules(us) }) });
  expect(read.ok && read.value).toMatchObject({
    mostOnDuty: { value: 43_200 },
    leastRest: { value: 28_800 },
    restAfterFullTurn: { value: 36_000 },
    mostDays: { value: 14 },
  });
});

it('stands on one side with its source at the foot, however long its name; what is read aloud on another', async () => {
  const named = board(undefined, {
    name: 'The long-named invented railway beside the old mill, with what must be in date',
  });
  const pdf = await cardPdf((has) => boardDocument(named, 'letter', has));
  const { pages, text } = pdfText(pdf);
  expect([pages, text.includes('The host’s own words win')]).toEqual([2, true]);
});
