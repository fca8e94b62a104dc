/** What is large and mostly hostile: by a share of its full size, of about eight megabytes. */
import { outingIn } from '../../desk/outing-code.ts';
import { readSurvey } from '../../desk/survey.ts';
import { type FileProblem, readLine, readOuting } from '../../papers/index.ts';
import { firstCode } from './first-code.ts';

export interface Large {
  readonly name: string;
  /** What is told of it; undefined: it is read. */
  readonly words?: RegExp;
  /** What is handed in. @param share of the full size */
  readonly make: (share: number) => string;
  /** Reads it; tells what is wrong with it. */
  readonly read: (content: string) => Promise<string>;
  /** s: it may take no longer at its full size. */
  readonly most: number;
}

const MB = 1_000_000;
const times = (count: number, make: (i: number) => string): string =>
  Array.from({ length: count }, (_, i) => make(i)).join(',');
const outing = (rest: string): string => `{"heedway":"outing","version":1,"name":"x",${rest}}`;
const line = (rest: string): string =>
  `{"heedway":"line","version":1,"name":"x","gauge":"7.25 in","shape":"point-to-point",${rest}}`;
const point = (i: number): string => `{"at":"${i} m","height":"0 m"}`;

const told = (problems: readonly FileProblem[]): string => problems.map((p) => p.message).join('\n');

async function readPaper(content: string): Promise<string> {
  const entry = { path: 'x', content };
  const isLine = content.startsWith('{"heedway":"line"');
  const read = await (isLine ? readLine(entry) : readOuting(entry, async () => undefined));
  return read.ok ? '' : told(read.problems);
}

/** By counts at full size. */
const papers: readonly (readonly [string, number, (n: number) => string, RegExp?])[] = [
  ['words that are no figures', 2 * MB, (n) => `[${'NaN,'.repeat(n)}1]`, /100 faults/],
  ['faults behind many lines', 8 * MB, (n) => `[${'\n'.repeat(n)}${'NaN,'.repeat(200)}1]`, /100 faults/],
  ['lists in lists', 8 * MB, (n) => '['.repeat(n), /at most 64 levels/],
  ['nothing but lines', 8 * MB, (n) => '\n'.repeat(n), /the end of the file/],
  ['a text without an end', 8 * MB, (n) => `"${'a'.repeat(n)}`, /closing/],
  ['values', 3.9 * MB, (n) => outing(`"riders":[${'1,'.repeat(n)}1]`), /more than 250000 values|100 faults/],
  ['fields', 400_000, (n) => outing(times(n, (i) => `"f${i}":1`)), /more than 500 fields/],
  [
    'fields that nobody meant',
    400,
    (n) => outing(times(n, (i) => `"f${i}${'x'.repeat(30)}":1`)),
    /100 faults|unknown field/,
  ],
  ['a field with a long name', 7.9 * MB, (n) => outing(`"${'k'.repeat(n)}":1`), /unknown field/],
  ['a long name', 7.9 * MB, (n) => outing(`"note":"${'k'.repeat(n)}"`), /10000 letters/],
  [
    'riders',
    4004,
    (n) => outing(`"riders":[${times(n, (i) => `{"name":"r${i}"}`)}]`),
    /at most 1000 entries/,
  ],
  ['points', 200_004, (n) => line(`"profile":[${times(n, point)}]`), /at most 50000 entries|250000 values/],
  [
    'points without sense',
    49_000,
    (n) => line(`"profile":[${times(n, () => '{"at":"1","height":"x"}')}]`),
    /100 faults/,
  ],
  [
    'points in one place',
    49_000,
    (n) => line(`"profile":[${times(n, () => '{"at":"0 m","height":"0 m"}')}]`),
    /100 faults/,
  ],
  [
    'a long figure',
    1.5 * MB,
    (n) => line(`"profile":[],"contactWidth":"${'1 ft '.repeat(n)}"`),
    /contactWidth/,
  ],
  ['the points of a good line', 50_000, (n) => line(`"profile":[${times(n, point)}]`)],
];

const surveyed =
  (file: string) =>
  async (content: string): Promise<string> => {
    const bytes = new TextEncoder().encode(content);
    const { problems, made } = await readSurvey(bytes, file, { name: 'x', gauge: '7.25 in' });
    return made ? '' : told(problems);
  };

const head = 'Chainage (ft),Height (ft)\n';
const attributes = (n: number): string => Array.from({ length: n }, (_, i) => `a${i}="1"`).join(' ');
const trackPoint = (i: number, n: number): string =>
  `<trkpt lat="${(51 + (i * 0.8) / n).toFixed(7)}" lon="-1.000000"><ele>${(100 + Math.sin(i / 900)).toFixed(2)}</ele></trkpt>`;

const surveys: readonly (readonly [string, string, number, (n: number) => string, RegExp?])[] = [
  ['commas', 'a.csv', 8 * MB, (n) => ','.repeat(n), /a line of \d+ letters/],
  ['a cell without an end', 'a.csv', 4 * MB, (n) => `${head}"${'a\n'.repeat(n)}`, /more than 200000 lines/],
  ['rows', 'a.csv', 240_000, (n) => head + '1,1\n'.repeat(n), /more than 50000/],
  ['rows of words', 'a.csv', 40_000, (n) => head + 'x,y\n'.repeat(n), /100 faults/],
  ['tags that do not begin', 'a.gpx', 8 * MB, (n) => '<'.repeat(n), /well-formed/],
  ['tags in tags', 'a.gpx', 6 * MB, (n) => '<gpx>'.repeat(n), /at most 64 levels/],
  ['attributes', 'a.gpx', 300_000, (n) => `<gpx ${attributes(n)}`, /more than 64 attributes/],
  [
    'points of a satellite track',
    'a.gpx',
    200_000,
    (n) =>
      `<gpx><trk><trkseg>${Array.from({ length: n }, (_, i) => trackPoint(i, n)).join('\n')}</trkseg></trk></gpx>`,
  ],
];

async function readCode(code: string): Promise<string> {
  const inside = await outingIn(code);
  if ('fault' in inside) return inside.fault;
  return readPaper(new TextDecoder().decode(inside));
}

const codes: readonly (readonly [string, number, (n: number) => string, RegExp])[] = [
  ['a code of nothing but spaces', 8 * MB, (n) => firstCode(' '.repeat(n)), /more than an outing/],
  ['a code of words that are no figures', 200_000, (n) => firstCode(`[${'NaN,'.repeat(n)}1]`), /100 faults/],
];

export const large: readonly Large[] = [
  ...papers.map(([name, full, make, words]) => ({ name, full, make, words, read: readPaper, most: 2 })),
  ...surveys.map(([name, file, full, make, words]) => ({
    name,
    full,
    make,
    words,
    read: surveyed(file),
    most: words ? 2 : 3,
  })),
  ...codes.map(([name, full, make, words]) => ({ name, full, make, words, read: readCode, most: 0.2 })),
].map(({ full, make, words, ...rest }) => ({
  ...rest,
  ...(words && { words }),
  make: (share: number) => make(Math.ceil(full * share)),
}));
