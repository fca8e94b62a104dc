/** What is attacked: each kind of input, made by chance, and what the product does with it. */
import { readFileSync } from 'node:fs';
import { sumUp } from '../../desk/measured/data-sheet.ts';
import { coastFrom, stopFrom } from '../../desk/measured/log.ts';
import { handed, outingIn } from '../../desk/outing-code.ts';
import { readSurvey } from '../../desk/survey.ts';
import { firstAnswer } from '../../engine/answer/answer.ts';
import { inquire } from '../../engine/answer/inquiry.ts';
import type { Answer } from '../../engine/answer/types.ts';
import type { Outing } from '../../engine/outing/types.ts';
import { readSheet, sheetText } from '../../papers/import/data-sheet.ts';
import { importLog } from '../../papers/import/log.ts';
import { type FileProblem, type Read, readOuting, readVehicle } from '../../papers/index.ts';
import { readEverything } from '../../web/parts/everything.ts';
import { merge } from '../../web/state/merge.ts';
import { settingsOf } from '../../web/state/settings.ts';
import { sheetWords } from '../../words/measured/data-sheet.ts';
import { logFault } from '../../words/measured/logs.ts';
import { firstCode } from '../support/first-code.ts';
import { type Chance, changedJson, changedText } from './mutate.ts';
import { type Json, papers, vehicles } from './papers.ts';
import { planted } from './planted.ts';
import { roomsOf } from './rooms.ts';
import { foreign, recordsFile, sqliteStore } from './stores.ts';
import { replies, sum } from './typed.ts';

export interface Outcome {
  readonly end: 'accepted' | 'refused' | 'answered';
  /** What must never be, in words. */
  readonly crash?: string;
  readonly notFinite?: string;
  readonly unsafe?: string;
}

export interface Target {
  readonly name: string;
  /** Share of all inputs. */
  readonly share: number;
  readonly attack: (chance: Chance) => Promise<Outcome>;
}

const nothing = async (): Promise<undefined> => undefined;
const survey = (name: string): string =>
  readFileSync(new URL(`../../examples/surveys/${name}`, import.meta.url), 'utf8');
const [csv, gpx] = [survey('branch.csv'), survey('branch.gpx')];

const steers = /(?![\n\t])[\p{Cc}\u2028-\u202e\u2066-\u2069]/u;

/** A refusal has words, and none that a screen would obey. */
function refused(problems: readonly FileProblem[]): Outcome {
  const poor = problems.find(
    (p) => p.found === '' || p.expected === '' || p.message.length > 5000 || steers.test(p.message),
  );
  if (problems.length === 0) return { end: 'refused', crash: 'refused without a word' };
  return poor ? { end: 'refused', crash: `a poor refusal: ${JSON.stringify(poor)}` } : { end: 'refused' };
}

const read = (got: Read<unknown>): Outcome => (got.ok ? { end: 'accepted' } : refused(got.problems));

/** The first figure that is none; what never comes is infinite by right in maps of stops, in no finding. */
function notFinite(value: unknown, path = '', infinite = false): string | undefined {
  if (typeof value === 'number')
    return Number.isNaN(value) || (!infinite && !Number.isFinite(value)) ? `${path} = ${value}` : undefined;
  if (typeof value !== 'object' || value === null) return undefined;
  for (const [key, part] of Object.entries(value)) {
    const odd = notFinite(part, `${path}.${key}`, infinite);
    if (odd) return odd;
  }
  return undefined;
}

/** What the answer says against itself. */
function unsafe({ verdict, findings }: Answer): string | undefined {
  const worst = findings.some((f) => f.severity === 'forbids')
    ? ['hold']
    : findings.some((f) => f.severity === 'unknown')
      ? ['unknown', 'hold']
      : undefined;
  if (worst && !worst.includes(verdict)) return `${verdict} beside a finding that is worse`;
  const known = ['forbids', 'unknown', 'limits', 'notes', 'assumed'];
  const odd = findings.find((f) => !known.includes(f.severity) || typeof f.code !== 'string');
  if (odd) return `a finding of no weight: ${JSON.stringify(odd)}`;
  const fault = findings.some((f) => f.code === 'question-failed');
  return fault && (verdict === 'go' || verdict === 'limits')
    ? `${verdict} after a question failed`
    : undefined;
}

export function answered(outing: Outing, must?: string): Outcome {
  const answer = firstAnswer(inquire(outing, { step: 4, samples: 40, couplerRuns: 2 }));
  const { findings, ...maps } = answer;
  const figure = notFinite(findings, 'findings') ?? notFinite(maps, 'answer', true);
  const word =
    unsafe(answer) ??
    (must && ['go', 'limits'].includes(answer.verdict) ? `${answer.verdict}: ${must}` : undefined);
  return { end: 'answered', ...(figure ? { notFinite: figure } : {}), ...(word ? { unsafe: word } : {}) };
}

/** Answers cost a hundred times as much as reading: one of so many accepted outings gets one, and is told in every room. */
export const ANSWERED = 30;

async function outing(chance: Chance, content: string): Promise<Outcome> {
  const got = await readOuting({ path: 'x', content }, nothing);
  if (!got.ok || chance.share() * ANSWERED >= 1) return read(got);
  const crash = roomsOf(got.value, JSON.parse(content));
  return { ...answered(got.value), ...(crash === undefined ? {} : { crash }) };
}

const tried = (paper: Json, chance: Chance): Json => ({
  heedway: 'tried',
  version: 1,
  outing: paper,
  changes: [
    chance.one([
      { kind: 'rail-state', state: 'sanded' },
      { kind: 'chains' },
      { kind: 'guard' },
      { kind: 'slower-everywhere', speed: 1 },
      { kind: 'order', order: ['a', 'b'] },
    ]),
  ],
});

const whole = (chance: Chance): Json => {
  const paper = chance.one(papers);
  const one = chance.share() < 0.5 ? tried(paper, chance) : paper;
  return chance.share() < 0.5
    ? one
    : { heedway: 'everything', version: 1, outing: one, vehicles: [chance.one(vehicles)] };
};

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);
const about = { name: 'x', gauge: '7.25 in' };

async function table(content: string, name: string): Promise<Outcome> {
  const { made, problems } = await readSurvey(bytes(content), name, about);
  const odd = made && notFinite(made.json, 'line');
  return made ? { end: 'accepted', ...(odd ? { notFinite: odd } : {}) } : refused(problems);
}

async function code(chance: Chance): Promise<Outcome> {
  const paper = chance.share() < 0.5 ? changedJson(chance.one(papers), chance) : chance.one(papers);
  // One of now costs a hundred times as much as one of before.
  const good =
    chance.share() < 0.02
      ? (handed(paper)?.codes.join('\n') ?? 'HEEDWAY:2:')
      : firstCode(JSON.stringify(paper));
  const got = await outingIn(chance.share() < 0.7 ? changedText(good, chance) : good);
  if ('fault' in got)
    return got.fault === '' ? { end: 'refused', crash: 'refused without a word' } : { end: 'refused' };
  return read(await readEverything(got, 'code'));
}

/** Whatever a browser may have kept: a page and a word come of it, and nothing of it is thrown away unread. */
async function stored(chance: Chance): Promise<Outcome> {
  const now = { units: 'imperial', wording: 'us', theme: 'auto', cautioned: false } as const;
  const kept =
    chance.share() < 0.5 ? changedJson([{ ...now }], chance) : changedJson([chance.one(papers)], chance);
  const [value] = (Array.isArray(kept) ? kept : [kept]) as unknown[];
  const set = settingsOf(now, value);
  const known =
    ['imperial', 'metric'].includes(set.units) &&
    ['us', 'uk'].includes(set.wording) &&
    ['auto', 'light', 'dark'].includes(set.theme);
  if (!known) return { end: 'accepted', crash: `settings ${JSON.stringify(set)}` };
  const from = chance.one(papers);
  const [mine, theirs] = [changedJson(from, chance), value ?? null];
  const both = merge(from, mine, theirs);
  if (!both.clash && JSON.stringify(merge(from, from, theirs).paper) !== JSON.stringify(theirs))
    return { end: 'accepted', crash: 'a change of another tab is gone' };
  return read(await readOuting({ path: 'x', content: JSON.stringify(value ?? null) }, nothing));
}

const sheetOf = sheetText([
  {
    test: 1,
    kind: 'tilt',
    month: '2026-05',
    what: 'centreHeight',
    value: 0.3,
    low: 0.2,
    high: 0.4,
    unit: 'm',
  },
  { test: 2, kind: 'stop-test', month: '2026-05', what: 'stop', value: 9, unit: 'm', speed: 3, careful: 12 },
]);

async function sheet(content: string): Promise<Outcome> {
  const { rows, problems } = readSheet(bytes(content), 'x.csv');
  if (problems.length > 0) return refused(problems);
  const odd = notFinite(rows, 'sheet');
  const told = sheetWords(sumUp([rows]), { system: 'imperial', wording: 'us' }).join();
  // What a sheet itself calls a thing, but for its first letter, is told as it is.
  const ours = rows.reduce((text, { what }) => text.replaceAll(what.slice(1) || what, ''), told);
  return { end: 'accepted', ...(odd || /NaN|undefined/.test(ours) ? { notFinite: odd ?? told } : {}) };
}

const timed = gpx.replaceAll('</trkpt>', '<time>2026-05-17T10:00:00Z</time></trkpt>');
const speeds = `time (s),speed (mph)\n${Array.from({ length: 20 }, (_, i) => `${i},${Math.max(0, 8 - i)}`).join('\n')}\n`;

async function log(chance: Chance): Promise<Outcome> {
  const own = chance.share() < 0.3 ? ([timed, 'x.gpx'] as const) : ([speeds, 'x.csv'] as const);
  const read = importLog(bytes(changedText(own[0], chance)), own[1]);
  if ('problems' in read) return refused(read.problems);
  const made = (chance.share() < 0.5 ? stopFrom : coastFrom)(read.log, {
    from: 50,
    way: 'forward',
    begin: 2,
  });
  if ('fault' in made)
    return logFault(made.fault) === '' ? { end: 'refused', crash: 'no word' } : { end: 'refused' };
  const odd = /NaN|Infinity/.test(JSON.stringify(made));
  return { end: 'accepted', ...(odd ? { notFinite: JSON.stringify(made) } : {}) };
}

export const targets: readonly Target[] = [
  {
    name: 'outing, its parts changed',
    share: 0.19,
    attack: (c) => outing(c, JSON.stringify(changedJson(c.one(papers), c))),
  },
  {
    name: 'outing, its text changed',
    share: 0.1,
    attack: (c) => outing(c, changedText(JSON.stringify(c.one(papers)), c)),
  },
  {
    name: 'vehicle',
    share: 0.11,
    attack: async (c) =>
      read(await readVehicle({ path: 'x', content: JSON.stringify(changedJson(c.one(vehicles), c)) })),
  },
  {
    name: 'everything, or tried',
    share: 0.1,
    attack: async (c) => read(await readEverything(JSON.stringify(changedJson(whole(c), c)), 'x')),
  },
  { name: 'code', share: 0.12, attack: code },
  { name: 'CSV', share: 0.1, attack: (c) => table(changedText(csv, c), 'x.csv') },
  { name: 'GPX', share: 0.08, attack: (c) => table(changedText(gpx, c), 'x.gpx') },
  { name: 'file of records', share: 0.015, attack: recordsFile },
  { name: 'records of another program', share: 0.01, attack: foreign },
  { name: 'store of records', share: 0.005, attack: sqliteStore },
  { name: 'data sheet', share: 0.01, attack: async (c) => sheet(changedText(sheetOf, c)) },
  { name: 'log of a phone', share: 0.01, attack: async (c) => log(c) },
  { name: 'kept by the browser', share: 0.075, attack: stored },
  { name: 'replies about a new train', share: 0.03, attack: replies },
  { name: 'sum', share: 0.02, attack: sum },
  {
    name: 'outing with a fault planted in it',
    share: 0.005,
    attack: async (c) => {
      const { paper, fault } = planted(c);
      const got = await readOuting({ path: 'x', content: JSON.stringify(paper) }, nothing);
      return got.ok ? answered(got.value, fault) : refused(got.problems);
    },
  },
];
